package org.varwright.plot;

import org.varwright.quantity.Complex;

/**
 * A circle in the plane of complex numbers: a value whose angle is not known, the edge of a band, or a limit.
 *
 * @param radius in the unit of the dial, 0 or more
 * @param label empty for none
 */
public record Circle(Complex centre, double radius, String label, Kind kind) {
    /** What it stands for. */
    public enum Kind {
        LIMIT,
        READING,
        BAND
    }

    /** A setting: every phasor that reaches it counts. */
    public static Circle limit(double radius, String label) {
        return new Circle(Complex.ZERO, radius, label, Kind.LIMIT);
    }

    /** A magnitude without an angle. */
    public static Circle reading(double radius, String label) {
        return new Circle(Complex.ZERO, radius, label, Kind.READING);
    }

    /** How far a phasor may be off. */
    public static Circle band(Complex centre, double radius, String label) {
        return new Circle(centre, radius, label, Kind.BAND);
    }
}
