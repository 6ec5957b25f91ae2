package org.varwright.resonance;

/**
 * What a series reactor does to its capacitors.
 *
 * @param factor {@code p}: reactance of the reactor over that of the capacitors at the system's frequency
 */
public record Detuning(double factor) {
    /**
     * By inductance and capacitance of one phase (RES-5): {@code p = ω1²·L·C}.
     *
     * @param henries [H], above 0
     * @param farads [F], above 0
     * @param omega1 angular frequency of the system [rad/s]
     */
    public static Detuning of(double henries, double farads, double omega1) {
        return new Detuning(omega1 * omega1 * henries * farads);
    }

    /** Order to which it is tuned: {@code 1/√p}. */
    public double tunedOrder() {
        return 1.0 / Math.sqrt(factor);
    }

    /** Voltage of the capacitors over what it would be without the reactor: {@code 1/(1 − p)}. */
    public double voltageRise() {
        return 1.0 / (1.0 - factor);
    }

    /** Inductance that makes this factor with a capacitance [H]. */
    public double henries(double farads, double omega1) {
        return factor / (omega1 * omega1 * farads);
    }

    /**
     * Reactive power of capacitor and reactor together at a voltage [var].
     *
     * @param capacitorVars of the capacitors alone at that voltage [var]
     */
    public double netVars(double capacitorVars) {
        return capacitorVars * voltageRise();
    }
}
