package org.varwright.plot;

import org.varwright.quantity.Complex;

/**
 * An arrow in the plane of complex numbers.
 *
 * @param label its name; magnitude and angle are added
 * @param from where it starts; zero for the origin
 * @param value its length and direction, rms
 * @param dash how it is drawn
 */
public record Phasor(String label, Complex from, Complex value, Dash dash) {
    public static Phasor of(String label, Complex value) {
        return new Phasor(label, Complex.ZERO, value, Dash.SOLID);
    }

    public Phasor with(Dash given) {
        return new Phasor(label, from, value, given);
    }

    /** Starting at another point, such as the end of another one. */
    public Phasor from(Complex start) {
        return new Phasor(label, start, value, dash);
    }

    public Complex end() {
        return from.plus(value);
    }
}
