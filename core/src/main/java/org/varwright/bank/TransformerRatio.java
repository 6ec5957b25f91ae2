package org.varwright.bank;

/**
 * Ratio of a voltage or current transformer.
 *
 * @param primary above 0
 * @param secondary above 0
 */
public record TransformerRatio(double primary, double secondary) {
    /** Secondary over primary. */
    public double factor() {
        return secondary / primary;
    }
}
