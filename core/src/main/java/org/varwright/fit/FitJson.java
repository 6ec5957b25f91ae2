package org.varwright.fit;

import java.util.List;
import java.util.OptionalDouble;
import org.varwright.basis.BasisJson;
import org.varwright.json.Json;

/** A fit as JSON, with the field names of the command line's contract. */
public final class FitJson {
    private FitJson() {}

    /** The whole result. */
    public static Json.Obj of(FitResult result) {
        return Json.object()
                .put("outcome", result.outcome().code())
                .put("moves", moves(result.moves()))
                .put("lifts", result.moves().size())
                .put("before", balance(result.before()))
                .put("after", balance(result.after()))
                .put("unbalancePerUnit", result.unbalance())
                .put("provenBest", result.provenBest())
                .put("proof", result.proof())
                .put("provisional", Json.strings(result.provisional()))
                .put("plansExamined", (double) result.plansExamined())
                .put(
                        "alternatives",
                        Json.of(result.alternatives().stream()
                                .map(a -> Json.object()
                                        .put("extraLifts", a.extraLifts())
                                        .put("moves", moves(a.moves()))
                                        .put("after", balance(a.after()))
                                        .put("unbalancePerUnit", a.unbalance())
                                        .build())
                                .toList()))
                .put(
                        "rejected",
                        Json.of(result.rejected().stream()
                                .map(r -> Json.object()
                                        .put("serial", r.serial())
                                        .put("reason", r.reason())
                                        .build())
                                .toList()))
                .put("unused", Json.strings(result.unused()))
                .put(
                        "runOn",
                        Json.of(result.runOn().stream().map(FitJson::runOn).toList()))
                .put("checks", BasisJson.of(result.checks()))
                .put("basis", Json.of(result.bases().stream().map(BasisJson::of).toList()))
                .put("notes", Json.strings(result.notes()))
                .build();
    }

    private static Json moves(List<Move> moves) {
        return Json.of(moves.stream()
                .map(m -> Json.object()
                        .put("n", m.number())
                        .put("serial", m.serial())
                        .put("from", m.from())
                        .put("to", m.to())
                        .put("setDown", m.setDown())
                        .put("why", m.why())
                        .build())
                .toList());
    }

    private static Json balance(Balance balance) {
        return Json.object()
                .put(
                        "sensors",
                        Json.of(balance.sensors().stream()
                                .map(s -> Json.object()
                                        .put("name", s.name())
                                        .put("stage", s.stage())
                                        .put("senses", s.senses().code())
                                        .put("unit", s.senses().unit())
                                        .put("primary", s.primary().magnitude())
                                        .put(
                                                "secondary",
                                                s.secondary()
                                                        .map(c -> Json.of(c.magnitude()))
                                                        .orElse(Json.none()))
                                        .put("angleDegrees", s.primary().degrees())
                                        .put("alarmPrimary", number(s.alarmPrimary()))
                                        .build())
                                .toList()))
                .put(
                        "legs",
                        Json.of(balance.legs().stream()
                                .map(l -> Json.object()
                                        .put("stage", l.stage())
                                        .put("leg", l.leg())
                                        .put("capacitanceFarads", l.capacitanceFarads())
                                        .put("deviation", l.deviation())
                                        .put("amperes", l.amperes())
                                        .build())
                                .toList()))
                .put("highestUnitVoltagePerRated", balance.highestUnitVoltagePerRated())
                .put(
                        "highestUnit",
                        balance.highestUnit().map(p -> Json.of(p.name())).orElse(Json.none()))
                .put("unsolved", Json.strings(balance.unsolved()))
                .build();
    }

    private static Json runOn(RunOn runOn) {
        return Json.object()
                .put("stage", runOn.stage())
                .put("missing", runOn.missing())
                .put("recommended", runOn.recommended())
                .put("search", runOn.search())
                .put(
                        "options",
                        Json.of(runOn.options().stream()
                                .map(o -> Json.object()
                                        .put("title", o.title())
                                        .put("empty", Json.strings(o.empty()))
                                        .put("moves", moves(o.moves()))
                                        .put("varsLost", o.varsLost())
                                        .put("limitsKept", o.limitsKept())
                                        .put("highestUnitVoltagePerRated", o.highestUnitVoltagePerRated())
                                        .put("signal", o.signal())
                                        .put("signalPrimary", o.signalPrimary())
                                        .put(
                                                "settings",
                                                o.settings()
                                                        .map(FitJson::settings)
                                                        .orElse(Json.none()))
                                        .build())
                                .toList()))
                .build();
    }

    private static Json settings(RunOn.Settings settings) {
        return Json.object()
                .put("alarmPrimary", number(settings.alarmPrimary()))
                .put("tripPrimary", number(settings.tripPrimary()))
                .put("alarmSecondary", number(settings.alarmSecondary()))
                .put("tripSecondary", number(settings.tripSecondary()))
                .put("presentAlarmSuits", settings.presentAlarmSuits())
                .put("unseen", Json.strings(settings.unseen()))
                .put("untripped", Json.strings(settings.untripped()))
                .build();
    }

    private static Json number(OptionalDouble value) {
        return value.isPresent() ? Json.of(value.getAsDouble()) : Json.none();
    }
}
