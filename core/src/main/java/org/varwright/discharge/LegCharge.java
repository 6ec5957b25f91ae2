package org.varwright.discharge;

import org.varwright.bank.Stage;

/**
 * One leg (of a bridge: one phase) as a discharge stick meets it at worst.
 *
 * @param farads capacitance between its ends [F]
 * @param volts highest voltage between its ends [V]
 * @param joules energy of all its units at that voltage [J]
 */
record LegCharge(double farads, double volts, double joules) {
    static LegCharge of(Stage stage, double unitFarads, Opening opening) {
        String leg = stage.legs().getFirst();
        int parallel = stage.layoutOf(leg).strings() * stage.layoutOf(leg).units();
        // a bridge: two halves in parallel, each of two quarters in series: end to end the capacitance of one quarter
        double farads = parallel * unitFarads / stage.layoutOf(leg).groups();
        double volts = opening.initialVolts() * opening.seriesGroups();
        return new LegCharge(farads, volts, Decay.energyJoules(farads, volts));
    }
}
