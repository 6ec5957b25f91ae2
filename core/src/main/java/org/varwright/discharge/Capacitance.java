package org.varwright.discharge;

import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;

/**
 * The largest capacitance that a unit of a stage may have.
 *
 * @param farads [F]
 * @param from where it comes from, in words
 */
record Capacitance(double farads, String from) {
    /** Measured where every unit is; else the nameplate's upper tolerance, or a measured value above it. */
    static Capacitance largestOf(Bank bank, Stage stage) {
        double upper = stage.unit().capacitanceFarads()
                * (1.0 + Math.max(0.0, stage.unit().tolerance().high()));
        double largest = 0.0;
        boolean all = true;
        for (UnitPosition position : stage.positions()) {
            OptionalDouble measured =
                    bank.unitAt(position).map(KnownUnit::capacitanceFarads).orElse(OptionalDouble.empty());
            all &= measured.isPresent();
            largest = Math.max(largest, measured.orElse(0.0));
        }
        if (all) {
            return new Capacitance(largest, "largest measured");
        }
        return largest > upper
                ? new Capacitance(largest, "largest measured, above the nameplate's upper tolerance")
                : new Capacitance(upper, "upper tolerance of the nameplate");
    }
}
