package org.varwright.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Stage;
import org.varwright.page.Enumeration;
import org.varwright.switching.Closing;
import org.varwright.switching.Inrush;
import org.varwright.switching.InrushCase;
import org.varwright.switching.InrushRequest;
import org.varwright.waveform.Conduction;
import org.varwright.waveform.Ringing;

/**
 * A recorded inrush beside the simulated one: same closing angles, discharged capacitors (REC-13).
 *
 * @param amperes simulated peak nearest to the recorded one
 * @param hertz its frequency
 * @param isHigher whether the record is more than a quarter above everything simulated
 * @param words for a person
 */
record InrushComparison(double amperes, double hertz, boolean isHigher, String words) {
    private static final double HIGHER = 1.25;

    static Optional<InrushComparison> of(
            Scene scene, Stage stage, List<PoleStory> together, double peak, Ringing.Rang rang) {
        double first =
                together.getFirst().closed().map(Conduction.Run::startSeconds).orElse(0.0);
        Optional<Double> clock = scene.clockDegrees(first);
        if (clock.isEmpty() || together.size() < 2) {
            return Optional.empty();
        }
        double start = ((clock.get() % 360.0) + 360.0) % 360.0;
        List<Double> degrees = new ArrayList<>();
        for (String phase : Role.PHASES) {
            double seconds = together.stream()
                    .filter(p -> p.phase().equals(phase))
                    .findFirst()
                    .flatMap(PoleStory::closed)
                    .map(Conduction.Run::startSeconds)
                    .orElse(first);
            degrees.add(start + 360.0 * scene.cycles().hertz() * (seconds - first));
        }
        Optional<List<String>> on = on(scene, stage, first);
        Inrush inrush = Inrush.of(
                scene.bank(),
                new InrushRequest(
                        Optional.of(stage.name()), on, Map.of(), Optional.of(List.copyOf(degrees)), false, Map.of()));
        List<InrushCase> cases =
                inrush.cases().stream().filter(c -> c.main().isPresent()).toList();
        if (cases.isEmpty()) {
            return Optional.empty();
        }
        // The simulation counts with the highest sustained voltage, the record with what there was.
        double scale = scale(scene, first, inrush.lineVolts());
        List<String> words = new ArrayList<>();
        double nearest = Double.POSITIVE_INFINITY;
        double highest = 0.0;
        double amperes = 0.0;
        double hertz = 0.0;
        for (InrushCase c : cases) {
            Closing closing = c.main().orElseThrow();
            double simulated = closing.peakAmperes() * scale;
            words.add(Say.amperes(simulated) + " at " + Say.hertz(closing.hertz()) + " for " + c.title());
            highest = Math.max(highest, simulated);
            double off = Math.abs(Math.log(simulated / peak)) + Math.abs(Math.log(closing.hertz() / rang.hertz()));
            if (off < nearest) {
                nearest = off;
                amperes = simulated;
                hertz = closing.hertz();
            }
        }
        boolean higher = peak > HIGHER * highest;
        String verdict = higher
                ? " The record is well above that: charge left from before, another way of switching, or data of the bank file"
                        + " that don't hold."
                : nearest < 0.35 ? " That agrees." : "";
        return Optional.of(new InrushComparison(
                amperes,
                hertz,
                higher,
                "Simulated at these closing angles with discharged capacitors: " + Enumeration.of(words, "or") + "."
                        + verdict));
    }

    /** Stages that were on, where the record shows the currents of all others. */
    private static Optional<List<String>> on(Scene scene, Stage stage, double first) {
        List<String> on = new ArrayList<>();
        for (Stage other : scene.bank().stages()) {
            if (other.name().equals(stage.name())) {
                continue;
            }
            List<PoleStory> poles = PoleStory.of(scene, other);
            if (poles.isEmpty()) {
                return Optional.empty();
            }
            if (poles.stream().anyMatch(p -> p.isOn(first - 0.5 * scene.cycleSeconds()))) {
                on.add(other.name());
            }
        }
        return Optional.of(on);
    }

    private static double scale(Scene scene, double first, double lineVolts) {
        return scene.cycles()
                .around(first - 0.6 * scene.cycleSeconds())
                .flatMap(w -> scene.bus("A").flatMap(a -> w.phasor(a.signal())))
                .map(v -> v.magnitude() * Math.sqrt(3.0) / lineVolts)
                .orElse(1.0);
    }
}
