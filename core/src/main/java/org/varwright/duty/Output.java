package org.varwright.duty;

/** Reactive power and current of capacitors away from their rating. */
public final class Output {
    private Output() {}

    /**
     * Reactive power at another voltage and frequency [var].
     *
     * <p><b>Model.</b> {@code Q = Q_r·(V/V_r)²·f/f_r} (DUT-3).
     * <p><b>Not modelled.</b> Harmonics, a reactor in series.
     * <p><b>Source.</b> First principles.
     *
     * @param ratedVars at rated voltage and frequency [var]
     * @param voltageFactor voltage over rated
     * @param frequencyFactor frequency over rated
     */
    public static double vars(double ratedVars, double voltageFactor, double frequencyFactor) {
        return ratedVars * voltageFactor * voltageFactor * frequencyFactor;
    }

    /**
     * Largest current of a unit [A].
     *
     * <p><b>Model.</b> {@code I = Q_r/V_r·(V/V_r)·(f/f_r)·(1 + tolerance)} (DUT-3). <b>Source.</b> First principles.
     *
     * @param ratedAmperes {@code Q_r/V_r} [A]
     * @param voltageFactor voltage over rated
     * @param frequencyFactor frequency over rated
     * @param capacitanceFactor capacitance over rated, such as 1.10 at the upper tolerance
     */
    public static double amperes(
            double ratedAmperes, double voltageFactor, double frequencyFactor, double capacitanceFactor) {
        return ratedAmperes * voltageFactor * frequencyFactor * capacitanceFactor;
    }
}
