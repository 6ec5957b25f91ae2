package org.varwright.energize;

import org.varwright.basis.BasisJson;
import org.varwright.json.Json;
import org.varwright.network.Failure;

/** {@link Energize} as JSON. */
public final class EnergizeJson {
    private EnergizeJson() {}

    public static Json of(Energize energize) {
        BusVolts bus = energize.bus();
        Uncertainty u = energize.uncertainty();
        return Json.object()
                .put(
                        "bus",
                        Json.object()
                                .put("ab", bus.ab())
                                .put("bc", bus.bc())
                                .put("ca", bus.ca())
                                .put("mean", bus.mean())
                                .build())
                .put(
                        "uncertainty",
                        Json.object()
                                .put("busVolts", u.busVolts())
                                .put("ammeter", u.ammeter())
                                .put("capacitance", u.capacitance())
                                .put("sensor", u.sensor())
                                .put("source", u.source().print())
                                .build())
                .put(
                        "units",
                        Json.of(energize.units().stream()
                                .map(c -> (Json) Json.object()
                                        .put("position", c.position())
                                        .put("from", c.from().words())
                                        .build())
                                .toList()))
                .put(
                        "legs",
                        Json.of(energize.currents().stream()
                                .map(EnergizeJson::current)
                                .toList()))
                .put(
                        "sensors",
                        Json.of(energize.sensors().stream()
                                .map(EnergizeJson::sensor)
                                .toList()))
                .put(
                        "comparison",
                        Json.of(energize.comparison().stream()
                                .map(EnergizeJson::comparison)
                                .toList()))
                .put(
                        "explanations",
                        Json.of(energize.explanations().stream()
                                .map(EnergizeJson::explanation)
                                .toList()))
                .put("checks", BasisJson.of(energize.checks()))
                .put("after15Minutes", Json.strings(energize.after15Minutes()))
                .put("after8Hours", Json.strings(energize.after8Hours()))
                .put("cautions", Json.strings(energize.cautions()))
                .build();
    }

    private static Json current(ExpectedCurrent current) {
        return Json.object()
                .put("leg", current.name())
                .put("line", current.line())
                .put("expectedAmperes", current.amperes().expected())
                .put("low", current.amperes().low())
                .put("high", current.amperes().high())
                .put("ratedAmperes", current.ratedAmperes())
                .put("basis", BasisJson.of(current.basis()))
                .build();
    }

    private static Json sensor(ExpectedSensor sensor) {
        return Json.object()
                .put("name", sensor.name())
                .put("unit", sensor.senses().unit())
                .put("primary", band(sensor.primary()))
                .put("secondary", sensor.secondary().map(EnergizeJson::band).orElse(Json.none()))
                .put("angleDegrees", sensor.degrees())
                .put("basis", BasisJson.of(sensor.basis()))
                .build();
    }

    private static Json band(Band band) {
        return Json.object()
                .put("expected", band.expected())
                .put("low", band.low())
                .put("high", band.high())
                .build();
    }

    private static Json comparison(Comparison comparison) {
        return Json.object()
                .put("leg", comparison.name())
                .put("measured", comparison.measured())
                .put("expected", comparison.band().expected())
                .put("low", comparison.band().low())
                .put("high", comparison.band().high())
                .put("unit", comparison.unit())
                .put("verdict", comparison.verdict().code())
                .put("words", comparison.words())
                .build();
    }

    private static Json explanation(Explanation explanation) {
        return Json.object()
                .put("stage", explanation.stage())
                .put(
                        "failures",
                        Json.of(explanation.best().stream()
                                .map(EnergizeJson::failure)
                                .toList()))
                .put("sentence", explanation.sentence())
                .put("basis", explanation.basis().map(BasisJson::of).orElse(Json.none()))
                .build();
    }

    private static Json failure(Failure failure) {
        return Json.object()
                .put("kind", failure.kind())
                .put("at", failure.where())
                .build();
    }
}
