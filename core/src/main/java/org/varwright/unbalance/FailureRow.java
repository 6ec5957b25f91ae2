package org.varwright.unbalance;

import java.util.List;
import java.util.Optional;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Failure;

/**
 * One line of the failure table.
 *
 * @param stage name of the stage
 * @param leg name of the leg; empty where failures stand in several
 * @param positions of the units that failed
 * @param kind {@code unit-out}, {@code sections-shorted}, {@code elements-out}, {@code unit-shorted}
 * @param count units out, sections shorted (in a string without fuses: in the whole string) or elements out
 * @param failures the same for the network
 * @param effect what comes of it; empty where a short circuit stands across the supply
 * @param verdict whether the bank may run on
 * @param reason of the verdict, in words
 */
public record FailureRow(
        String stage,
        String leg,
        List<UnitPosition> positions,
        String kind,
        int count,
        List<Failure> failures,
        Optional<Effect> effect,
        RunVerdict verdict,
        String reason) {
    public FailureRow {
        positions = List.copyOf(positions);
        failures = List.copyOf(failures);
    }
}
