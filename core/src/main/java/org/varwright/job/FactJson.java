package org.varwright.job;

import java.util.Map;
import java.util.Optional;
import org.varwright.json.Json;

/** Facts as {@code type} and {@code body} of an event. {@link FactReader} reads them back. */
final class FactJson {
    private FactJson() {}

    static String type(Fact fact) {
        return switch (fact) {
            case Fact.Opened f -> "opened";
            case Fact.BankReplaced f -> "bank-replaced";
            case Fact.OrderMade f -> "order-made";
            case Fact.StepConfirmed f -> "step-confirmed";
            case Fact.HoldStarted f -> "hold-started";
            case Fact.Deviated f -> "deviated";
            case Fact.Stopped f -> "stopped";
            case Fact.Resumed f -> "resumed";
            case Fact.SignedOn f -> "signed-on";
            case Fact.SignedOff f -> "signed-off";
            case Fact.ReadingTaken f -> "reading-taken";
            case Fact.ReadingsImported f -> "readings-imported";
            case Fact.SparesImported f -> "spares-imported";
            case Fact.UnitMoved f -> "unit-moved";
            case Fact.Measured f -> "measured";
            case Fact.AsLeft f -> "as-left";
            case Fact.Noted f -> "noted";
            case Fact.Attached f -> "attached";
            case Fact.RecordRead f -> "record-read";
            case Fact.ClockMoved f -> "clock-moved";
            case Fact.Corrected f -> "corrected";
            case Fact.Settled f -> "settled";
            case Fact.VisitAgreed f -> "visit-agreed";
            case Fact.MeterStated f -> "meter-stated";
            case Fact.Signed f -> "signed";
            case Fact.Closed f -> "closed";
            case Fact.NotUnderstood f -> f.type();
        };
    }

    static Json body(Fact fact) {
        Json.Builder body = Json.object();
        switch (fact) {
            case Fact.Opened f -> {
                body.put("title", f.title()).put("bank", f.bankText());
                put(body, "number", f.number());
                put(body, "reason", f.reason());
                put(body, "alarm", f.alarm());
            }
            case Fact.BankReplaced f -> body.put("bank", f.bankText()).put("reason", f.reason());
            case Fact.OrderMade f -> {
                body.put("access", Json.strings(f.access())).put("origin", origin(f.origin()));
                put(body, "replaces", f.replaces());
                body.put("reason", f.reason());
                put(body, "bankHash", f.bankHash());
            }
            case Fact.StepConfirmed f -> {
                body.put("order", f.order()).put("step", f.step());
                put(body, "second", f.second());
                put(body, "reading", f.reading());
                put(body, "label", f.label());
                body.put("ticked", Json.strings(f.ticked()));
                put(body, "photo", f.photo());
            }
            case Fact.HoldStarted f -> body.put("order", f.order()).put("step", f.step());
            case Fact.Deviated f ->
                body.put("order", f.order()).put("step", f.step()).put("reason", f.reason());
            case Fact.Stopped f -> body.put("reason", f.reason());
            case Fact.Resumed f -> {
                body.put("reason", f.reason());
                if (!f.stops().isEmpty()) {
                    body.put("stops", Json.strings(f.stops()));
                }
            }
            case Fact.SignedOn f -> {
                body.put("person", f.person());
                put(body, "lock", f.lock());
            }
            case Fact.SignedOff f -> body.put("person", f.person());
            case Fact.ReadingTaken f -> body.put("position", f.position()).put("values", texts(f.values()));
            case Fact.ReadingsImported f -> body.put("file", f.fileName()).put("text", f.text());
            case Fact.SparesImported f -> body.put("file", f.fileName()).put("text", f.text());
            case Fact.UnitMoved f -> {
                body.put("serial", f.serial());
                put(body, "from", f.from());
                put(body, "to", f.to());
            }
            case Fact.Measured f -> body.put("place", f.place()).put("value", f.value());
            case Fact.AsLeft f -> body.put("selector", f.selector()).put("position", f.position());
            case Fact.Noted f -> body.put("text", f.text());
            case Fact.Attached f ->
                body.put("name", f.name())
                        .put("mediaType", f.mediaType())
                        .put("sha256", f.sha256())
                        .put("bytes", f.bytes());
            case Fact.RecordRead f ->
                body.put("name", f.name()).put("sha256", f.sha256()).put("findings", Json.strings(f.findings()));
            case Fact.ClockMoved f -> body.put("from", (double) f.fromMillis()).put("to", (double) f.toMillis());
            case Fact.Corrected f -> body.put("event", f.event()).put("reason", f.reason());
            case Fact.Settled f -> body.put("event", f.event()).put("reason", f.reason());
            case Fact.VisitAgreed f ->
                body.put("date", f.date().toString())
                        .put("for", f.purpose())
                        .put("replaces", Json.strings(f.replaces()));
            case Fact.MeterStated f -> {
                put(body, "instrument", f.instrument());
                body.put("limit", f.limit()).put("replaces", Json.strings(f.replaces()));
            }
            case Fact.Signed f -> body.put("role", f.role()).put("logHash", f.logHash());
            case Fact.Closed f -> body.put("outcome", f.outcome());
            case Fact.NotUnderstood f -> {
                return f.body();
            }
        }
        return body.build();
    }

    private static Json origin(Fact.Origin origin) {
        return switch (origin) {
            case Fact.Origin.AfterLastStep after -> {
                Json.Builder json = Json.object().put("kind", "after-last-step");
                after.steps().ifPresent(steps -> json.put("steps", steps));
                yield json.build();
            }
            case Fact.Origin.AsFound found ->
                Json.object()
                        .put("kind", "as-found")
                        .put("positions", texts(found.positions()))
                        .put("openDoors", Json.strings(found.openDoors()))
                        .put("grounds", counts(found.grounds()))
                        .put("shorts", counts(found.shorts()))
                        .build();
        };
    }

    private static Json texts(Map<String, String> map) {
        Json.Builder json = Json.object();
        map.forEach(json::put);
        return json.build();
    }

    private static Json counts(Map<String, Integer> map) {
        Json.Builder json = Json.object();
        map.forEach((name, count) -> json.put(name, count.doubleValue()));
        return json.build();
    }

    private static void put(Json.Builder body, String name, Optional<String> value) {
        value.ifPresent(v -> body.put(name, v));
    }
}
