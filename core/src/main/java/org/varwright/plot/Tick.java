package org.varwright.plot;

/**
 * A mark on an axis.
 *
 * @param value in the axis's shown unit
 * @param label empty for a fine line of a logarithmic axis
 */
record Tick(double value, String label) {
    boolean isFine() {
        return label.isEmpty();
    }
}
