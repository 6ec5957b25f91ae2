package org.varwright.duty;

/** Power factor by active and reactive power. */
public final class PowerFactor {
    private PowerFactor() {}

    /**
     * Power factor, 0 to 1 (DUT-9): {@code P/√(P² + Q²)}; 1 where nothing flows.
     *
     * @param watts active power [W]
     * @param vars reactive power, lagging positive [var]
     */
    public static double of(double watts, double vars) {
        double apparent = Math.hypot(watts, vars);
        return apparent == 0.0 ? 1.0 : Math.abs(watts) / apparent;
    }

    /** Reactive power over active power at a power factor: {@code tan φ}. */
    public static double tangent(double powerFactor) {
        return Math.sqrt(1.0 - powerFactor * powerFactor) / powerFactor;
    }

    /**
     * Reactive power that brings a load to a power factor [var]; below 0 where it has too little already (DUT-9).
     *
     * <p><b>Model.</b> {@code Q − P·tan φ_wanted}, which is {@code P·(tan φ_1 − tan φ_2)}. <b>Source.</b> First principles.
     *
     * @param watts of the load [W]
     * @param vars of the load [var]
     * @param wanted power factor, above 0, at most 1
     */
    public static double varsWanted(double watts, double vars, double wanted) {
        return vars - watts * tangent(wanted);
    }
}
