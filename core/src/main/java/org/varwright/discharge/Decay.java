package org.varwright.discharge;

/** The decay of one capacitance through one resistance, as plain functions. */
public final class Decay {
    private Decay() {}

    /**
     * Time after disconnection until the voltage has fallen to {@code targetVolts}.
     *
     * <p><b>Model.</b> One C with one constant R across it, source gone at t = 0: {@code t = R·C·ln(v0/target)} (DIS-1).
     * <p><b>Not modelled.</b> Dielectric absorption, an open resistor, a resistance that depends on voltage or temperature.
     * <p><b>Accuracy.</b> First order: {@code dt/t = dR/R + dC/C}; rounding below 4 ulp while {@code v0/target ≥ 2}.
     * <p><b>Source.</b> First principles.
     *
     * @param capacitanceFarads capacitance [F], above 0
     * @param resistanceOhms resistance across it [Ω], above 0
     * @param initialVolts voltage at t = 0 [V], 0 or more
     * @param targetVolts voltage waited for [V], above 0
     * @return time [s]; 0 where the voltage is there already
     */
    public static double secondsTo(
            double capacitanceFarads, double resistanceOhms, double initialVolts, double targetVolts) {
        require(capacitanceFarads > 0.0 && resistanceOhms > 0.0 && initialVolts >= 0.0 && targetVolts > 0.0);
        return initialVolts <= targetVolts
                ? 0.0
                : resistanceOhms * capacitanceFarads * Math.log(initialVolts / targetVolts);
    }

    /**
     * Voltage that is left after {@code seconds}.
     *
     * <p><b>Model.</b> {@code v = v0·e^(−t/RC)} (DIS-1).
     * <p><b>Not modelled.</b> As for {@link #secondsTo}.
     * <p><b>Source.</b> First principles.
     *
     * @param capacitanceFarads capacitance [F], above 0
     * @param resistanceOhms resistance across it [Ω], above 0
     * @param initialVolts voltage at t = 0 [V], 0 or more
     * @param seconds time since disconnection [s], 0 or more
     * @return voltage [V]
     */
    public static double voltsAfter(
            double capacitanceFarads, double resistanceOhms, double initialVolts, double seconds) {
        require(capacitanceFarads > 0.0 && resistanceOhms > 0.0 && initialVolts >= 0.0 && seconds >= 0.0);
        return initialVolts * Math.exp(-seconds / (resistanceOhms * capacitanceFarads));
    }

    /**
     * The largest resistance that brings the voltage down to {@code targetVolts} within {@code seconds}.
     *
     * <p><b>Model.</b> {@code R = t/(C·ln(v0/target))} (DIS-3).
     * <p><b>Source.</b> First principles; the pair of volts and seconds is data of a standard or of a nameplate.
     *
     * @param capacitanceFarads capacitance [F], above 0
     * @param initialVolts voltage at t = 0 [V], above {@code targetVolts}
     * @param targetVolts voltage to be reached [V], above 0
     * @param seconds time allowed [s], above 0
     * @return resistance [Ω]
     */
    public static double resistanceFor(
            double capacitanceFarads, double initialVolts, double targetVolts, double seconds) {
        require(capacitanceFarads > 0.0 && initialVolts > targetVolts && targetVolts > 0.0 && seconds > 0.0);
        return seconds / (capacitanceFarads * Math.log(initialVolts / targetVolts));
    }

    /**
     * Energy stored in a capacitance.
     *
     * <p><b>Model.</b> {@code E = C·v²/2} (DIS-4).
     * <p><b>Source.</b> First principles.
     *
     * @param capacitanceFarads capacitance [F], 0 or more
     * @param volts voltage across it [V]
     * @return energy [J]
     */
    public static double energyJoules(double capacitanceFarads, double volts) {
        return 0.5 * capacitanceFarads * volts * volts;
    }

    private static void require(boolean inRange) {
        if (!inRange) {
            throw new IllegalArgumentException("decay: a value is outside the range in the Javadoc");
        }
    }
}
