package org.varwright.job;

import org.varwright.json.Json;
import org.varwright.quantity.CalendarDate;

/** Reads the fact of an event from its {@code type} and {@code body}. */
public final class FactReader {
    private final Fields body;

    private FactReader(Fields body) {
        this.body = body;
    }

    /**
     * The fact that a type and a body give.
     *
     * @throws org.varwright.problem.VarwrightException {@code JOB_FIELD} naming the member
     */
    public static Fact read(String type, Json body) {
        return read(type, new Fields("", 0, "", Json.object().put("body", body).build()));
    }

    /** The fact; one of a type that this version doesn't know is {@link Fact.NotUnderstood}. */
    static Fact read(String type, Fields event) {
        return new FactReader(event.object("body")).fact(type, event.json("body"));
    }

    private Fact fact(String type, Json json) {
        return switch (type) {
            case "opened" ->
                new Fact.Opened(
                        body.words("title"),
                        body.text("bank"),
                        body.optionalWords("number"),
                        body.optionalWords("reason"),
                        body.optionalWords("alarm"));
            case "bank-replaced" -> new Fact.BankReplaced(body.text("bank"), body.words("reason"));
            case "order-made" ->
                new Fact.OrderMade(
                        body.texts("access"),
                        origin(),
                        body.optionalWords("replaces"),
                        body.words("reason"),
                        body.optionalWords("bankHash"));
            case "step-confirmed" ->
                new Fact.StepConfirmed(
                        body.words("order"),
                        body.count("step", 1),
                        body.optionalWords("second"),
                        body.optionalWords("reading"),
                        body.optionalWords("label"),
                        body.texts("ticked"),
                        body.optionalWords("photo"));
            case "hold-started" -> new Fact.HoldStarted(body.words("order"), body.count("step", 1));
            case "deviated" -> new Fact.Deviated(body.words("order"), body.count("step", 1), body.words("reason"));
            case "stopped" -> new Fact.Stopped(body.words("reason"));
            case "resumed" -> new Fact.Resumed(body.words("reason"), body.texts("stops"));
            case "signed-on" -> new Fact.SignedOn(body.words("person"), body.optionalWords("lock"));
            case "signed-off" -> new Fact.SignedOff(body.words("person"));
            case "reading-taken" -> new Fact.ReadingTaken(body.words("position"), body.textByName("values"));
            case "readings-imported" -> new Fact.ReadingsImported(body.words("file"), body.text("text"));
            case "spares-imported" -> new Fact.SparesImported(body.words("file"), body.text("text"));
            case "unit-moved" ->
                new Fact.UnitMoved(body.words("serial"), body.optionalWords("from"), body.optionalWords("to"));
            case "measured" -> new Fact.Measured(body.words("place"), body.words("value"));
            case "as-left" -> new Fact.AsLeft(body.words("selector"), body.words("position"));
            case "noted" -> new Fact.Noted(body.words("text"));
            case "attached" ->
                new Fact.Attached(
                        body.words("name"), body.words("mediaType"), body.words("sha256"), body.count("bytes", 0));
            case "record-read" -> new Fact.RecordRead(body.words("name"), body.words("sha256"), body.texts("findings"));
            case "clock-moved" -> new Fact.ClockMoved(body.whole("from"), body.whole("to"));
            case "corrected" -> new Fact.Corrected(body.words("event"), body.words("reason"));
            case "settled" -> new Fact.Settled(body.words("event"), body.words("reason"));
            case "visit-agreed" -> new Fact.VisitAgreed(date("date"), body.words("for"), body.texts("replaces"));
            case "meter-stated" ->
                new Fact.MeterStated(body.optionalWords("instrument"), body.words("limit"), body.texts("replaces"));
            case "signed" -> new Fact.Signed(body.words("role"), body.words("logHash"));
            case "closed" -> new Fact.Closed(body.words("outcome"));
            default -> new Fact.NotUnderstood(type, json);
        };
    }

    private CalendarDate date(String name) {
        return CalendarDate.parse(body.words(name))
                .orElseThrow(() -> body.wrong(name, "a day that the calendar has, such as 2027-05-12"));
    }

    private Fact.Origin origin() {
        Fields origin = body.object("origin");
        return switch (origin.words("kind")) {
            case "after-last-step" -> new Fact.Origin.AfterLastStep(origin.optionalCount("steps"));
            case "as-found" ->
                new Fact.Origin.AsFound(
                        origin.textByName("positions"),
                        origin.texts("openDoors"),
                        origin.countByName("grounds"),
                        origin.countByName("shorts"));
            default -> throw origin.wrong("kind", "\"as-found\" or \"after-last-step\"");
        };
    }
}
