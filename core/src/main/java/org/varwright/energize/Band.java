package org.varwright.energize;

/**
 * A value to expect and the band in which a reading of it may lie.
 *
 * @param expected best estimate
 * @param low lower end, 0 or more
 * @param high upper end
 */
public record Band(double expected, double low, double high) {
    public boolean holds(double reading) {
        return reading >= low && reading <= high;
    }

    /** The band multiplied by a ratio. */
    public Band times(double factor) {
        return new Band(expected * factor, low * factor, high * factor);
    }

    /** Half of the band's width on the side of a reading; never 0, so that it can divide. */
    double reach(double reading) {
        double side = reading >= expected ? high - expected : expected - low;
        return Math.max(side, 1e-9 * Math.max(1.0, Math.abs(expected)));
    }
}
