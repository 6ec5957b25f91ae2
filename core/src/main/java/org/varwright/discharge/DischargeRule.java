package org.varwright.discharge;

import org.varwright.bank.Standard;
import org.varwright.basis.Source;
import org.varwright.quantity.Dimension;

/**
 * How far and how fast a standard wants a unit to discharge itself.
 *
 * @param standard IEEE or IEC
 * @param volts voltage to be reached [V]
 * @param seconds time allowed, counted from disconnection at the peak of rated voltage [s]
 * @param source the standard
 */
public record DischargeRule(Standard standard, double volts, double seconds, Source source) {
    /** Earliest that a unit above 600 V may be short-circuited after disconnection, whatever its resistor [s]. */
    public static final double FLOOR_SECONDS = 300.0;

    /** Where {@link #FLOOR_SECONDS} comes from. */
    public static final Source FLOOR_SOURCE = Source.published("29 CFR 1910.269(w)(1)(i)");

    /** From here on the floor holds [V]. */
    public static final double HIGH_VOLTAGE_VOLTS = 600.0;

    /**
     * The rule of a standard for a unit.
     *
     * @param standard IEEE or IEC
     * @param ratedVolts rated voltage of the unit [V]
     */
    public static DischargeRule of(Standard standard, double ratedVolts) {
        return switch (standard) {
            case IEEE ->
                new DischargeRule(
                        standard,
                        50.0,
                        ratedVolts > HIGH_VOLTAGE_VOLTS ? 300.0 : 60.0,
                        Source.published("IEEE Std 18; California Title 8 §2893(a)"));
            case IEC ->
                ratedVolts > 1000.0
                        ? new DischargeRule(standard, 75.0, 600.0, Source.published("IEC 60871-1"))
                        : new DischargeRule(standard, 75.0, 180.0, Source.published("IEC 60831-1"));
        };
    }

    /** Such as {@code 50 V in 5 min}. */
    public String print() {
        return Dimension.VOLTAGE.format(volts) + " in " + (seconds == 60.0 ? "1 min" : Dimension.TIME.format(seconds));
    }
}
