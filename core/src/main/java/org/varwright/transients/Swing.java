package org.varwright.transients;

/**
 * How far a probe went in a run.
 *
 * @param peak the value of largest magnitude, with its sign
 * @param seconds when
 * @param squareSeconds integral of the square over the whole run
 */
public record Swing(double peak, double seconds, double squareSeconds) {
    /** Largest magnitude. */
    public double magnitude() {
        return Math.abs(peak);
    }
}
