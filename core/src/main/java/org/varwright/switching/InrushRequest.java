package org.varwright.switching;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which switching is asked about.
 *
 * @param stage the one stage that is switched; empty: every stage
 * @param onto stages that are on already, an empty list for none; empty: alone, and beside all others
 * @param trapped charge on the legs of the stage that closes, multiples of their peak in service; a leg not named holds none
 * @param degrees angles at which poles A, B and C close; empty: the worst is searched
 * @param opening whether the stage is opened instead of closed
 * @param restrikes for each pole named the voltage across it at which it conducts again, in multiples of the peak line to neutral
 */
public record InrushRequest(
        Optional<String> stage,
        Optional<List<String>> onto,
        Map<String, Double> trapped,
        Optional<List<Double>> degrees,
        boolean opening,
        Map<String, Double> restrikes) {
    /** Every stage, alone and beside all others, at the worst angles. */
    public static final InrushRequest EVERYTHING =
            new InrushRequest(Optional.empty(), Optional.empty(), Map.of(), Optional.empty(), false, Map.of());
}
