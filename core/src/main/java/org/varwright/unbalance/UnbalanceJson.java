package org.varwright.unbalance;

import java.util.List;
import java.util.OptionalDouble;
import org.varwright.bank.TransformerRatio;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.BasisJson;
import org.varwright.json.Json;
import org.varwright.network.Solution;
import org.varwright.quantity.Complex;

/** {@link Unbalance} as JSON. */
public final class UnbalanceJson {
    private UnbalanceJson() {}

    public static Json of(Unbalance unbalance) {
        return Json.object()
                .put(
                        "healthy",
                        Json.object()
                                .put("sensors", sensors(unbalance.healthy()))
                                .build())
                .put(
                        "failures",
                        Json.of(unbalance.failures().stream()
                                .map(UnbalanceJson::row)
                                .toList()))
                .put(
                        "settings",
                        Json.of(unbalance.settings().stream()
                                .map(UnbalanceJson::study)
                                .toList()))
                .put("checks", BasisJson.of(unbalance.checks()))
                .build();
    }

    private static Json sensors(List<Solution.SensorValue> sensors) {
        return Json.of(sensors.stream().map(UnbalanceJson::sensor).toList());
    }

    static Json sensor(Solution.SensorValue sensor) {
        return Json.object()
                .put("name", sensor.name())
                .put("unit", sensor.senses().unit())
                .put("primary", sensor.primary().magnitude())
                .put(
                        "secondary",
                        sensor.secondary().map(Complex::magnitude).map(Json::of).orElse(Json.none()))
                .put(
                        "angleDegrees",
                        sensor.primary().magnitude() < 1e-9
                                ? 0.0
                                : sensor.primary().degrees())
                .build();
    }

    private static Json row(FailureRow row) {
        Json.Builder json = Json.object()
                .put("stage", row.stage())
                .put("leg", row.leg())
                .put(
                        "positions",
                        Json.strings(
                                row.positions().stream().map(UnitPosition::name).toList()))
                .put("kind", row.kind())
                .put("count", row.count());
        if (row.effect().isPresent()) {
            Effect e = row.effect().get();
            json.put("sensors", sensors(e.sensors()))
                    .put("highestUnitVoltagePerRated", e.highestUnitPerRated())
                    .put("highestSectionVoltagePerRated", e.highestSectionPerRated())
                    .put("highestGroupVoltagePerHealthy", e.highestGroupPerHealthy())
                    .put("varsPerHealthy", e.varsPerHealthy());
        } else {
            json.put("sensors", Json.of(List.of()))
                    .put("highestUnitVoltagePerRated", Json.none())
                    .put("highestSectionVoltagePerRated", Json.none())
                    .put("highestGroupVoltagePerHealthy", Json.none())
                    .put("varsPerHealthy", Json.none());
        }
        return json.put("verdict", row.verdict().words())
                .put("reason", row.reason())
                .build();
    }

    private static Json study(SettingStudy study) {
        double factor = study.protection().ratio().map(TransformerRatio::factor).orElse(Double.NaN);
        return Json.object()
                .put("sensor", study.name())
                .put("unit", study.protection().senses().unit())
                .put("kind", study.kind())
                .put("alarm", number(study.alarm(), factor))
                .put("trip", number(study.trip(), factor))
                .put("alarmPrimary", number(study.alarm(), 1.0))
                .put("tripPrimary", number(study.trip(), 1.0))
                .put("firstSignalPrimary", study.firstSignal())
                .put("lastAllowedPrimary", number(study.lastAllowed(), 1.0))
                .put("firstForbiddenPrimary", number(study.firstForbidden(), 1.0))
                .put(
                        "forbiddenCount",
                        study.forbiddenCount().isPresent()
                                ? Json.of(study.forbiddenCount().getAsInt())
                                : Json.none())
                .put("errorBankPrimary", study.error().bank())
                .put("errorSystemPrimary", study.error().system())
                .put("compensationNeeded", study.compensated())
                .put("remarks", Json.strings(study.remarks()))
                .put(
                        "basis",
                        Json.of(List.of(
                                BasisJson.of(study.alarmBasis()),
                                BasisJson.of(study.tripBasis()),
                                BasisJson.of(study.error().basis()))))
                .build();
    }

    private static Json number(OptionalDouble value, double factor) {
        return value.isPresent() ? Json.of(value.getAsDouble() * factor) : Json.none();
    }
}
