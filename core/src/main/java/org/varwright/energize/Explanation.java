package org.varwright.energize;

import java.util.List;
import java.util.Optional;
import org.varwright.basis.Basis;
import org.varwright.network.Failure;

/**
 * Why the values measured on a stage lie outside their bands.
 *
 * @param stage name of the stage
 * @param best the single failures that fit alike, best first; empty where none fits
 * @param misfit largest distance of a measured value from what the best failure predicts, in half-widths of its band
 * @param sentence what to think and do
 * @param basis how it came about
 */
public record Explanation(String stage, List<Failure> best, double misfit, String sentence, Optional<Basis> basis) {
    public Explanation {
        best = List.copyOf(best);
    }
}
