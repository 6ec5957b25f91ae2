package org.varwright.switching;

import java.util.List;
import java.util.Optional;

/**
 * What all stages that are on send into a fault at the bus.
 *
 * @param stages by closed form, each stage alone
 * @param without stages of which no inductance is known: what they send can't be said
 * @param product sum of peak times frequency [A·Hz]; not the whole where {@code without} names stages
 * @param simulatedPeakAmperes largest peak of their sum in one phase, a fault of all three phases at the worst moment; empty where it could not be simulated
 * @param hertz frequency of the strongest oscillation in it
 */
public record Outrush(
        List<StageOutrush> stages,
        List<String> without,
        double product,
        Optional<Double> simulatedPeakAmperes,
        double hertz) {
    public Outrush {
        stages = List.copyOf(stages);
        without = List.copyOf(without);
    }

    /** One stage alone. */
    public record StageOutrush(String stage, ClosedForm formula) {}
}
