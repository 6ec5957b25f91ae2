package org.varwright.limit;

import org.varwright.basis.Source;

/**
 * Voltage distortion that is recommended not to be exceeded where a customer meets the network.
 *
 * @param single highest part of one harmonic
 * @param total highest total distortion
 * @param source table and edition
 */
public record DistortionLimits(double single, double total, Source source) {
    private static final String TABLE = "IEEE Std 519-2014 table 1, at the point of common coupling";

    /** The row for a nominal line voltage [V]. */
    public static DistortionLimits of(double nominalVolts) {
        if (nominalVolts <= 1e3) {
            return new DistortionLimits(0.05, 0.08, Source.published(TABLE));
        }
        if (nominalVolts <= 69e3) {
            return new DistortionLimits(0.03, 0.05, Source.published(TABLE));
        }
        return nominalVolts <= 161e3
                ? new DistortionLimits(0.015, 0.025, Source.published(TABLE))
                : new DistortionLimits(0.010, 0.015, Source.unchecked(TABLE));
    }
}
