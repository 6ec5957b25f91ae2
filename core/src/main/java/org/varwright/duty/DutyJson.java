package org.varwright.duty;

import org.varwright.basis.BasisJson;
import org.varwright.json.Json;
import org.varwright.limit.ShortTimeTable;
import org.varwright.resonance.ResonanceJson;

/** {@link Duty} as JSON. */
public final class DutyJson {
    private DutyJson() {}

    public static Json of(Duty duty) {
        return Json.object()
                .put(
                        "stages",
                        Json.of(duty.stages().stream().map(DutyJson::stage).toList()))
                .put(
                        "conductors",
                        Json.of(duty.conductors().stream()
                                .map(c -> Json.object()
                                        .put("stage", c.stage())
                                        .put("ratedAmperes", c.ratedAmperes())
                                        .put("requiredAmperes", c.requiredAmperes())
                                        .build())
                                .toList()))
                .put(
                        "overvoltages",
                        Json.of(duty.overvoltages().stream()
                                .map(DutyJson::overvoltage)
                                .toList()))
                .put(
                        "elsewhere",
                        Json.of(duty.relocations().stream()
                                .map(DutyJson::relocation)
                                .toList()))
                .put(
                        "wrongSpares",
                        Json.of(duty.wrongSpares().stream()
                                .map(DutyJson::wrongSpare)
                                .toList()))
                .put(
                        "voltageRises",
                        Json.of(duty.rises().stream()
                                .map(r -> Json.object()
                                        .put("name", r.name())
                                        .put("vars", r.vars())
                                        .put("byRule", r.byRule())
                                        .put("exact", r.exact())
                                        .build())
                                .toList()))
                .put(
                        "control",
                        Json.object()
                                .put("lines", Json.strings(duty.control().lines()))
                                .put("symptoms", Json.strings(duty.control().symptoms()))
                                .put("checks", BasisJson.of(duty.control().checks()))
                                .build())
                .put("loads", Json.of(duty.loads().stream().map(DutyJson::load).toList()))
                .put("checks", BasisJson.of(duty.checks()))
                .put("unanswered", ResonanceJson.unanswered(duty.unanswered()))
                .build();
    }

    private static Json stage(StageDuty stage) {
        return Json.object()
                .put("stage", stage.stage())
                .put("case", stage.at().name())
                .put("busVolts", stage.at().volts())
                .put("harmonics", stage.harmonics())
                .put("stress", ResonanceJson.stress(stage.stress()))
                .put("unitAmperes", stage.unitAmperes())
                .build();
    }

    private static Json overvoltage(OvervoltageAnswer answer) {
        double allowed = switch (answer.allowance()) {
            case ShortTimeTable.Allowance.ForGood good -> Double.NaN;
            case ShortTimeTable.Allowance.AtMost(double seconds) -> seconds;
            case ShortTimeTable.Allowance.Never never -> 0.0;
        };
        return Json.object()
                .put("stage", answer.stage())
                .put("multiple", answer.multiple())
                .put("seconds", answer.seconds())
                .put("allowedSeconds", allowed)
                .put("forGood", answer.allowance() instanceof ShortTimeTable.Allowance.ForGood)
                .put("highestMultiple", answer.highest())
                .put("verdict", answer.check().verdict().code())
                .put("sentence", answer.sentence())
                .build();
    }

    private static Json relocation(Relocation r) {
        return Json.object()
                .put("stage", r.stage())
                .put("ratedVars", r.ratedVars())
                .put("varsHere", r.varsHere())
                .put("varsThere", r.varsThere())
                .put("stress", ResonanceJson.stress(r.stress()))
                .build();
    }

    private static Json wrongSpare(WrongSpare w) {
        return Json.object()
                .put("serial", w.serial())
                .put("type", w.type())
                .put("stage", w.stage())
                .put("differs", w.differs())
                .put("farads", w.farads())
                .put("wantedFarads", w.wantedFarads())
                .put("vars", w.vars())
                .put("wantedVars", w.wantedVars())
                .put("voltsPerRated", w.voltsPerRated())
                .put("amperesPerRated", w.amperesPerRated())
                .put(
                        "effect",
                        w.effect()
                                .map(e -> (Json) Json.object()
                                        .put("position", e.position())
                                        .put("highestUnitPerRated", e.highestUnitPerRated())
                                        .put("sensors", Json.strings(e.sensors()))
                                        .build())
                                .orElse(Json.none()))
                .build();
    }

    private static Json load(LoadAnswer a) {
        return Json.object()
                .put("load", a.load())
                .put("watts", a.watts())
                .put("vars", a.vars())
                .put("powerFactor", a.powerFactor())
                .put("wantedVars", a.wantedVars().orElse(Double.NaN))
                .put("allOnPowerFactor", a.allOnPowerFactor())
                .put("leading", a.isLeading())
                .put("use", a.use().map(DutyJson::use).orElse(Json.none()))
                .put("clear", a.clear().map(DutyJson::use).orElse(Json.none()))
                .build();
    }

    private static Json use(LoadAnswer.Use use) {
        return Json.object()
                .put("combination", use.combination())
                .put("vars", use.vars())
                .put("powerFactor", use.powerFactor())
                .put("enough", use.isEnough())
                .put("avoid", use.isToAvoid())
                .build();
    }
}
