package org.varwright.energize;

import java.util.Optional;
import org.varwright.bank.Protection;
import org.varwright.basis.Basis;

/**
 * The reading to expect of an unbalance sensor.
 *
 * @param name such as {@code stage 4 neutral-voltage}: what a measured value is typed under
 * @param stage name of the stage
 * @param senses what it measures
 * @param primary [V] or [A]
 * @param secondary at the relay; empty where the file gives no ratio
 * @param degrees angle of the expected value against phase A; means nothing where the band reaches 0
 * @param basis how it came about
 */
public record ExpectedSensor(
        String name,
        String stage,
        Protection.Senses senses,
        Band primary,
        Optional<Band> secondary,
        double degrees,
        Basis basis) {
    /** What a person reads: at the relay where the ratio is known, else the primary value. */
    public Band read() {
        return secondary.orElse(primary);
    }
}
