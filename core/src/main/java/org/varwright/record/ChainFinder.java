package org.varwright.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Stage;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.quantity.Complex;
import org.varwright.waveform.Signal;

/** What can't be so, and is therefore the measuring chain's: a mean in a capacitor's current, currents at a floating neutral that don't add up. */
final class ChainFinder {
    /** Mean over peak from which an offset is named. */
    private static final double OFFSET = 0.02;

    /** Voltage that the offset would have driven up, over the peak, from which it can't be the capacitor's. */
    private static final double IMPOSSIBLE = 0.5;

    /** Sum of three currents over their mean from which they don't add up. */
    private static final double SUM = 0.05;

    private static final int FEWEST_CYCLES = 3;

    private ChainFinder() {}

    static List<Finding> of(Scene scene, Stage stage, List<PoleStory> poles) {
        List<Finding> findings = new ArrayList<>();
        for (PoleStory pole : poles) {
            offset(scene, stage, pole).ifPresent(findings::add);
        }
        sum(scene, stage, poles).ifPresent(findings::add);
        return findings;
    }

    /**
     * An offset that lasts.
     *
     * <p><b>Model.</b> A mean current {@code I} through {@code C} for a time {@code T} raises its voltage by {@code I·T/C}; with {@code Î = ωCV̂} that is
     * {@code V̂·(I/Î)·ωT} (REC-10).
     */
    private static Optional<Finding> offset(Scene scene, Stage stage, PoleStory pole) {
        for (Steady steady : scene.steadies()) {
            if (steady.windows().size() < FEWEST_CYCLES || !pole.isOn(steady.middleSeconds())) {
                continue;
            }
            double mean = steady.mean(pole.signal());
            double peak = Math.sqrt(2.0) * steady.magnitude(pole.signal());
            double seconds = steady.toSeconds() - steady.fromSeconds();
            double rise = Math.abs(mean) / peak * 2.0 * Math.PI * steady.hertz() * seconds;
            if (peak > 0.0 && Math.abs(mean) > OFFSET * peak && rise > IMPOSSIBLE) {
                return Optional.of(new Finding(
                        "dc-offset",
                        Finding.Weight.LOOK,
                        steady.fromSeconds(),
                        stage.name() + "/" + pole.phase(),
                        "\"" + pole.channel() + "\" shows a mean of " + Say.amperes(mean) + " ("
                                + Say.percent(Math.abs(mean) / peak) + " of its peak) for " + Say.time(seconds)
                                + ". Through the capacitors of " + stage.name() + " that would have added "
                                + Say.times(rise)
                                + " times their peak voltage, which they can't: it is the measuring chain's. Look at the transformer"
                                + " and at the recorder's zero; its readings are to be trusted less.",
                        List.of(pole.evidence(steady.middleSeconds(), mean, "mean over whole cycles")),
                        Say.basis(
                                "REC-10",
                                "ΔV/V̂ = (I/Î)·ωT",
                                Source.FIRST_PRINCIPLES,
                                new Term("I", "mean", mean, "A"),
                                new Term("Î", "peak of the fundamental", peak, "A"),
                                new Term("T", "for how long", seconds, "s"),
                                new Term("ΔV/V̂", "what it would have added", rise, ""))));
            }
        }
        return Optional.empty();
    }

    /** Currents of a stage with a floating neutral add up to nothing (Kirchhoff). */
    private static Optional<Finding> sum(Scene scene, Stage stage, List<PoleStory> poles) {
        if (stage.connection().isGrounded() || poles.size() < 3) {
            return Optional.empty();
        }
        for (Steady steady : scene.steadies()) {
            if (!poles.stream().allMatch(p -> p.isOn(steady.middleSeconds()))) {
                continue;
            }
            Signal reference = poles.getFirst().signal();
            Complex sum = Complex.ZERO;
            double mean = 0.0;
            for (PoleStory pole : poles) {
                Optional<Complex> phasor = steady.phasor(pole.signal(), reference);
                if (phasor.isEmpty()) {
                    return Optional.empty();
                }
                sum = sum.plus(phasor.get());
                mean += phasor.get().magnitude() / 3.0;
            }
            if (mean > 0.0 && sum.magnitude() > SUM * mean) {
                double left = sum.magnitude();
                return Optional.of(new Finding(
                        "currents-dont-add-up",
                        Finding.Weight.LOOK,
                        steady.fromSeconds(),
                        stage.name(),
                        "The three currents of " + stage.name()
                                + " should add up to nothing, as its neutral floats; they leave "
                                + Say.amperes(left) + " (" + Say.percent(left / mean)
                                + "). A ratio or polarity of one channel is wrong, or current flows to "
                                + scene.bank().words().ground() + " behind the switch.",
                        poles.stream()
                                .map(p -> p.evidence(steady.middleSeconds(), steady.magnitude(p.signal()), "rms"))
                                .toList(),
                        Say.basis(
                                "REC-11",
                                "|I_A + I_B + I_C| over their mean",
                                Say.THRESHOLDS,
                                new Term("ΣI", "what is left", left, "A"),
                                new Term("I", "mean", mean, "A"))));
            }
        }
        return Optional.empty();
    }
}
