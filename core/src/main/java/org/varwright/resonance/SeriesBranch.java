package org.varwright.resonance;

import org.varwright.quantity.Complex;

/**
 * Capacitors of one phase with the reactor in series, as seen from the line against the neutral.
 *
 * @param farads capacitance [F], above 0
 * @param henries inductance of the reactor [H], 0 where there is none
 * @param ohms resistance of the reactor [Ω], 0 where there is none or it is not known
 */
public record SeriesBranch(double farads, double henries, double ohms) {
    /** Impedance at an angular frequency [rad/s], in Ω. */
    public Complex ohmsAt(double omega) {
        return new Complex(ohms, omega * henries - 1.0 / (omega * farads));
    }

    /** Susceptance without resistance [S]: {@code ωC/(1 − ω²LC)}. */
    double losslessSiemens(double omega) {
        return omega * farads / (1.0 - omega * omega * henries * farads);
    }

    /**
     * Order at which reactor and capacitors are in resonance (RES-5): {@code 1/(ω1·√(LC))}; infinite without a reactor.
     *
     * @param omega1 angular frequency of the system [rad/s]
     */
    public double tunedOrder(double omega1) {
        return henries == 0.0 ? Double.POSITIVE_INFINITY : 1.0 / (omega1 * Math.sqrt(henries * farads));
    }

    /** Voltage across the capacitors over the voltage across the branch, magnitude. */
    public double capacitorShare(double omega) {
        return 1.0 / (omega * farads) / ohmsAt(omega).magnitude();
    }

    /** The same with the capacitance multiplied. */
    public SeriesBranch scaled(double factor) {
        return new SeriesBranch(farads * factor, henries, ohms);
    }
}
