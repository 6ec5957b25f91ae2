package org.varwright.bankfile;

import org.varwright.bank.Standard;

/**
 * The residual voltage and time that a standard asks of a unit's discharge device.
 *
 * @param volts residual voltage [V]
 * @param seconds within this time [s]
 * @param source standard
 */
record DischargeRule(double volts, double seconds, String source) {
    /**
     * The rule for a unit of this rated voltage.
     *
     * <p><b>Source.</b> IEEE Std 18: 50 V in 5 min above 600 V, in 1 min up to 600 V. IEC 60871-1: 75 V in 10 min above 1 kV; IEC 60831-1: 75 V in 3 min.
     */
    static DischargeRule of(Standard standard, double ratedVolts) {
        return switch (standard) {
            case IEEE -> new DischargeRule(50.0, ratedVolts > 600.0 ? 300.0 : 60.0, "IEEE Std 18");
            case IEC ->
                ratedVolts > 1000.0
                        ? new DischargeRule(75.0, 600.0, "IEC 60871-1")
                        : new DischargeRule(75.0, 180.0, "IEC 60831-1");
        };
    }
}
