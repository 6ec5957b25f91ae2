package org.varwright.energize;

import org.varwright.basis.Verdict;

/**
 * A measured value against its band.
 *
 * @param name of the line, leg or sensor
 * @param measured [A] or [V]; a sensor's at the relay where its ratio is known
 * @param band in which it should lie
 * @param unit {@code A} or {@code V}
 * @param verdict pass inside, fail outside
 */
public record Comparison(String name, double measured, Band band, String unit, Verdict verdict) {
    /** Such as {@code 18 % below what is expected}. */
    public String words() {
        if (verdict == Verdict.PASS) {
            return "as expected";
        }
        double part = band.expected() > 0.0 ? measured / band.expected() - 1.0 : 0.0;
        String side = measured > band.high() ? "above" : "below";
        return band.expected() > 0.0 && Math.abs(part) < 10.0
                ? Math.round(100.0 * Math.abs(part)) + " % " + side + " what is expected"
                : side + " what is expected";
    }
}
