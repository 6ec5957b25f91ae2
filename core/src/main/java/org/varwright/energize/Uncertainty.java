package org.varwright.energize;

import org.varwright.basis.Source;

/**
 * How far instruments may be off, as parts of the value; all at about 95 % (twice the standard uncertainty).
 *
 * @param busVolts voltage transformer and voltmeter together
 * @param ammeter clamp or transformer and ammeter together
 * @param capacitance capacitance meter, where a unit was measured
 * @param sensor transformer and relay together
 * @param source where these come from
 */
public record Uncertainty(double busVolts, double ammeter, double capacitance, double sensor, Source source) {
    /** 1 % voltage, 2 % current, 1 % capacitance, 3 % sensor: common practice for good portable instruments, no source. */
    public static final Uncertainty USUAL =
            new Uncertainty(0.01, 0.02, 0.01, 0.03, Source.commonPractice("good portable instruments"));

    /**
     * The same where units were measured with a meter of these limits of error. A worse meter makes bands wider; a better one does not make them
     * narrower, for units that it did not measure count with what another meter once said.
     *
     * <p>Limits of error are taken whole: of a rectangular distribution 95 % lies within 0.95 of them (JCGM 100:2008, 4.3.7).
     *
     * @param limit limits of error of the capacitance meter, as a part of the reading
     */
    public Uncertainty withMeter(double limit) {
        return new Uncertainty(busVolts, ammeter, Math.max(capacitance, limit), sensor, source);
    }
}
