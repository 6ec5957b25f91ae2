package org.varwright.resonance;

import java.util.List;
import org.varwright.bank.Harmonic;
import org.varwright.basis.BasisJson;
import org.varwright.basis.Unanswered;
import org.varwright.json.Json;
import org.varwright.limit.Stress;

/** {@link Resonance} as JSON. */
public final class ResonanceJson {
    private ResonanceJson() {}

    public static Json of(Resonance resonance) {
        return Json.object()
                .put("busVolts", resonance.busVolts())
                .put("harmonics", spectrum(resonance.spectrum()))
                .put(
                        "source",
                        resonance
                                .source()
                                .map(s -> (Json) Json.object()
                                        .put("resistanceOhms", s.resistanceOhms())
                                        .put("reactanceOhms", s.reactanceOhms())
                                        .put("damped", s.isDamped())
                                        .build())
                                .orElse(Json.none()))
                .put(
                        "combinations",
                        Json.of(resonance.combinations().stream()
                                .map(ResonanceJson::combination)
                                .toList()))
                .put("avoid", names(resonance.avoid()))
                .put("clear", names(resonance.clear()))
                .put(
                        "tunings",
                        Json.of(resonance.tunings().stream()
                                .map(ResonanceJson::tuning)
                                .toList()))
                .put("checks", BasisJson.of(resonance.checks()))
                .put("unanswered", unanswered(resonance.unanswered()))
                .build();
    }

    /** Harmonics as JSON. */
    public static Json spectrum(List<Harmonic> spectrum) {
        return Json.of(spectrum.stream()
                .map(h -> Json.object()
                        .put("order", h.order())
                        .put("voltageFraction", h.voltageFraction().orElse(Double.NaN))
                        .put("currentAmperes", h.currentAmperes().orElse(Double.NaN))
                        .build())
                .toList());
    }

    /** What can't be said, as JSON. */
    public static Json unanswered(List<Unanswered> all) {
        return Json.of(all.stream()
                .map(u -> Json.object()
                        .put("missing", u.missing())
                        .put("effect", u.effect())
                        .build())
                .toList());
    }

    /** Stress as JSON, multiples of rated. */
    public static Json stress(Stress stress) {
        return Json.object()
                .put("voltage", stress.voltage())
                .put("crest", stress.crest())
                .put("current", stress.current())
                .put("reactivePower", stress.reactivePower())
                .build();
    }

    private static Json names(List<CombinationResult> combinations) {
        return Json.strings(
                combinations.stream().map(c -> c.combination().name()).toList());
    }

    private static Json combination(CombinationResult c) {
        return Json.object()
                .put("name", c.combination().name())
                .put("stages", Json.strings(c.combination().stageNames()))
                .put("vars", c.vars())
                .put("simpleOrder", c.simpleOrder())
                .put(
                        "peaks",
                        Json.of(c.peaks().stream()
                                .map(p -> Json.object()
                                        .put("order", p.order())
                                        .put("ohms", p.ohms())
                                        .put("amplification", p.amplification())
                                        .put("dampedAmplification", p.dampedAmplification())
                                        .build())
                                .toList()))
                .put(
                        "tunedOrders",
                        Json.of(c.tunedOrders().stream().map(Json::of).toList()))
                .put(
                        "amplifications",
                        Json.of(c.amplifications().stream()
                                .map(a -> Json.object()
                                        .put("order", a.order())
                                        .put("factor", a.factor())
                                        .put("load", a.load())
                                        .build())
                                .toList()))
                .put("duty", c.duty().map(ResonanceJson::duty).orElse(Json.none()))
                .put("mildest", c.mildest().map(ResonanceJson::duty).orElse(Json.none()))
                .put("verdict", c.verdict().code())
                .put("reasons", Json.strings(c.reasons()))
                .build();
    }

    private static Json duty(HarmonicDuty duty) {
        return Json.object()
                .put("load", duty.load())
                .put("distortion", duty.distortion())
                .put("distortionWithout", duty.distortionWithout())
                .put(
                        "stages",
                        Json.of(duty.stages().stream()
                                .map(s -> Json.object()
                                        .put("stage", s.stage())
                                        .put("stress", stress(s.stress()))
                                        .put("lineAmperes", s.lineAmperes())
                                        .build())
                                .toList()))
                .put(
                        "orders",
                        Json.of(duty.flow().orders().stream()
                                .map(ResonanceJson::order)
                                .toList()))
                .build();
    }

    private static Json order(HarmonicFlow.Order order) {
        return Json.object()
                .put("order", order.order())
                .put("busVolts", order.busVolts())
                .put("busVoltsWithout", order.busVoltsWithout())
                .put("sourceAmperes", order.sourceAmperes())
                .put("loadAmperes", order.loadAmperes())
                .put(
                        "stages",
                        Json.of(order.stages().stream()
                                .map(s -> Json.object()
                                        .put("stage", s.stage())
                                        .put("amperes", s.amperes())
                                        .put("capacitorVolts", s.capacitorVolts())
                                        .build())
                                .toList()))
                .build();
    }

    private static Json tuning(StageTuning tuning) {
        return Json.object()
                .put("stage", tuning.stage().name())
                .put("purpose", tuning.purpose().name().toLowerCase(java.util.Locale.ROOT))
                .put("factor", tuning.detuning().factor())
                .put("tunedOrder", tuning.detuning().tunedOrder())
                .put("voltageRise", tuning.detuning().voltageRise())
                .put("farads", tuning.farads())
                .put("henries", tuning.henries())
                .put("netVars", tuning.netVars())
                .put("aim", tuning.aim())
                .put(
                        "drifts",
                        Json.of(tuning.drifts().stream()
                                .map(d -> Json.object()
                                        .put("cause", d.cause())
                                        .put("capacitanceFactor", d.capacitanceFactor())
                                        .put("tunedOrder", d.tunedOrder())
                                        .put("amplification", d.amplification())
                                        .build())
                                .toList()))
                .build();
    }
}
