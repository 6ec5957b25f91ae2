package org.varwright.isolation;

import java.util.List;
import java.util.OptionalInt;
import org.varwright.basis.BasisJson;
import org.varwright.interlock.ConductorState;
import org.varwright.interlock.MoveJson;
import org.varwright.json.Json;

/** A {@link Plan} as JSON. */
public final class IsolationJson {
    private IsolationJson() {}

    /**
     * A plan with the fields of the command {@code isolate}.
     *
     * @param access compartments that were asked for
     */
    public static Json of(List<String> access, Plan plan) {
        return switch (plan) {
            case Plan.Planned planned -> of(planned.order());
            case Plan.Refused refused ->
                none(access)
                        .put(
                                "refused",
                                Json.object()
                                        .put("reason", refused.reason())
                                        .put("harm", refused.harm().isEmpty() ? Json.none() : Json.of(refused.harm()))
                                        .put(
                                                "wayToHarm",
                                                Json.of(refused.wayToHarm().stream()
                                                        .map(MoveJson::of)
                                                        .toList()))
                                        .build())
                        .put("undecided", Json.none())
                        .put(
                                "faults",
                                Json.of(refused.holes().stream()
                                        .map(IsolationJson::fault)
                                        .toList()))
                        .build();
            case Plan.Undecided undecided ->
                none(access)
                        .put("refused", Json.none())
                        .put(
                                "undecided",
                                Json.object()
                                        .put("statesExplored", undecided.limit())
                                        .build())
                        .put("faults", Json.of(List.<Json>of()))
                        .build();
        };
    }

    private static Json.Builder none(List<String> access) {
        return Json.object()
                .put("access", Json.strings(access))
                .put("in", Json.of(List.<Json>of()))
                .put("back", Json.of(List.<Json>of()))
                .put("cautions", Json.strings(List.of()));
    }

    /** An order of work. */
    public static Json of(OrderOfWork order) {
        return Json.object()
                .put("bank", order.bank().name())
                .put("access", Json.strings(order.access()))
                .put("refused", Json.none())
                .put("undecided", Json.none())
                .put("in", Json.of(order.in().stream().map(IsolationJson::step).toList()))
                .put(
                        "back",
                        Json.of(order.back().stream().map(IsolationJson::step).toList()))
                .put(
                        "faults",
                        Json.of(order.faults().stream()
                                .map(IsolationJson::fault)
                                .toList()))
                .put("cautions", Json.strings(order.cautions()))
                .put(
                        "responsibilities",
                        Json.of(order.responsibilities().stream()
                                .map(r -> (Json) Json.object()
                                        .put("property", r.property().isEmpty() ? Json.none() : Json.of(r.property()))
                                        .put("text", r.text())
                                        .build())
                                .toList()))
                .put("start", order.start().json())
                .put(
                        "cost",
                        Json.object()
                                .put("in", order.cost())
                                .put("back", order.costBack())
                                .build())
                .put("statesExplored", order.statesExplored())
                .build();
    }

    private static Json step(OrderStep step) {
        Json.Builder json = Json.object()
                .put("n", step.n())
                .put("kind", step.kind().code())
                .put(
                        "move",
                        step.moves().isEmpty()
                                ? Json.none()
                                : MoveJson.of(step.moves().getFirst()))
                .put("moves", Json.of(step.moves().stream().map(MoveJson::of).toList()))
                .put("text", step.text())
                .put("where", step.where())
                .put(
                        "seconds",
                        step.seconds().isPresent() ? Json.of(step.seconds().getAsDouble()) : Json.none())
                .put("state", state(step))
                .put("enforcedBy", step.enforcedBy().code())
                .put("why", step.why())
                .put(
                        "keys",
                        Json.of(step.keys().stream()
                                .map(k -> (Json) Json.object()
                                        .put("key", k.key())
                                        .put("from", k.from())
                                        .put("to", k.to())
                                        .build())
                                .toList()))
                .put("expected", step.expected())
                .put("ifNot", step.ifNot())
                .put("secondPerson", step.secondPerson())
                .put("holdPoint", step.holdPoint())
                .put("items", Json.strings(step.items()))
                .put("asks", step.asks().map(a -> Json.of(a.code())).orElse(Json.none()));
        json.put(
                "challenge",
                step.challenge()
                        .map(c -> (Json) Json.object()
                                .put("say", c.say())
                                .put("answer", c.answer())
                                .build())
                        .orElse(Json.none()));
        json.put("basis", step.basis().map(BasisJson::of).orElse(Json.none()));
        return json.build();
    }

    /** Conductors by the four words of the format; those live at low voltage only are named beside. */
    private static Json state(OrderStep step) {
        Json.Builder conductors = Json.object();
        step.conductors()
                .forEach((name, is) -> conductors.put(
                        name, is == ConductorState.LIVE_LOW_VOLTAGE ? ConductorState.LIVE.code() : is.code()));
        return Json.object()
                .put("conductors", conductors.build())
                .put(
                        "lowVoltage",
                        Json.strings(step.conductors().entrySet().stream()
                                .filter(e -> e.getValue() == ConductorState.LIVE_LOW_VOLTAGE)
                                .map(java.util.Map.Entry::getKey)
                                .toList()))
                .build();
    }

    private static Json fault(Fault fault) {
        OptionalInt at = fault.caughtAtStep();
        return Json.object()
                .put("fault", fault.text())
                .put("kind", fault.kind().code())
                .put("what", fault.what())
                .put("caughtAtStep", at.isPresent() ? Json.of(at.getAsInt()) : Json.none())
                .put("how", fault.how())
                .put("harms", fault.harms())
                .build();
    }
}
