package org.varwright.energize;

import org.varwright.network.Supply;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;

/**
 * The bus voltage as measured with the stage on: three line-to-line values [V].
 *
 * @param ab line A to B
 * @param bc line B to C
 * @param ca line C to A
 */
public record BusVolts(double ab, double bc, double ca) {
    /**
     * The same line voltage three times.
     *
     * @throws VarwrightException {@code BUS_VOLTS} where it is not above 0
     */
    public static BusVolts balanced(double volts) {
        return of(volts, volts, volts);
    }

    /**
     * Three line voltages.
     *
     * @throws VarwrightException {@code BUS_VOLTS} where one is not above 0, {@code SUPPLY_TRIANGLE} where they close no triangle
     */
    public static BusVolts of(double ab, double bc, double ca) {
        for (double volts : new double[] {ab, bc, ca}) {
            if (!(volts > 0.0) || !Double.isFinite(volts)) {
                throw new VarwrightException(Message.BUS_VOLTS, Place.NOWHERE, Dimension.VOLTAGE.format(volts));
            }
        }
        Supply.ofLineVolts(ab, bc, ca);
        return new BusVolts(ab, bc, ca);
    }

    /** Mean of the three [V]. */
    public double mean() {
        return (ab + bc + ca) / 3.0;
    }

    /** Highest of the three [V]. */
    public double highest() {
        return Math.max(ab, Math.max(bc, ca));
    }

    Supply supply() {
        return Supply.ofLineVolts(ab, bc, ca);
    }

    /** The same with one of the three multiplied by {@code factor}. */
    BusVolts scaled(int which, double factor) {
        return new BusVolts(
                which == 0 ? ab * factor : ab, which == 1 ? bc * factor : bc, which == 2 ? ca * factor : ca);
    }
}
