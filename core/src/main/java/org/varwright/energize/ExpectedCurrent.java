package org.varwright.energize;

import org.varwright.basis.Basis;

/**
 * The current to expect in a line or a leg [A].
 *
 * @param name such as {@code stage 2/A}: what a measured value is typed under
 * @param stage name of the stage
 * @param place phase or leg
 * @param line whether it is a line of the stage; otherwise a leg behind it
 * @param amperes rms
 * @param degrees angle of the expected value against phase A to ground
 * @param ratedAmperes at rated voltage and nameplate capacitance
 * @param basis how it came about
 */
public record ExpectedCurrent(
        String name,
        String stage,
        String place,
        boolean line,
        Band amperes,
        double degrees,
        double ratedAmperes,
        Basis basis) {}
