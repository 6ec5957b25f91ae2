package org.varwright.discharge;

import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;

/**
 * One leg as a discharge stick across its ends meets it at worst: with everything that stands between the same two conductors.
 *
 * @param farads capacitance between its ends [F]
 * @param volts highest voltage between its ends [V]
 * @param joules that flow off when its ends are joined [J]
 */
record LegCharge(double farads, double volts, double joules) {
    static LegCharge of(Stage stage, double unitFarads, Opening opening) {
        // a bridge: two halves in parallel, each of two quarters in series: end to end the capacitance of one quarter
        double leg = unitFarads * unitsPerGroup(stage.layout());
        double farads;
        if (stage.isDelta()) {
            // the two other legs stand in series beside it
            farads = 1.5 * leg;
        } else if (stage.connection().isDoubleWye()) {
            farads = leg + unitFarads * unitsPerGroup(stage.second().orElse(stage.layout()));
        } else {
            farads = leg;
        }
        double volts = opening.initialVolts() * opening.seriesGroups();
        return new LegCharge(farads, volts, Decay.energyJoules(farads, volts));
    }

    /** Capacitance of a leg as a multiple of that of one of its units. */
    private static double unitsPerGroup(LegLayout layout) {
        return (double) layout.strings() * layout.units() / layout.groups();
    }
}
