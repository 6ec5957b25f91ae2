package org.varwright.switching;

import org.varwright.basis.Basis;

/**
 * Inductance that brings a closing inside its switch's rating.
 *
 * @param stage that closes
 * @param title of the closing
 * @param addedHenries to put into each phase of the stage [H]
 * @param totalHenries of one phase of the stage with it [H]
 * @param peakAmperes largest peak with it, in time, poles together [A]
 * @param hertz its frequency [Hz]
 * @param basis closed form and confirmation
 */
public record Remedy(
        String stage,
        String title,
        double addedHenries,
        double totalHenries,
        double peakAmperes,
        double hertz,
        Basis basis) {}
