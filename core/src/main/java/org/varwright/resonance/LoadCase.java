package org.varwright.resonance;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Load;
import org.varwright.quantity.Complex;

/**
 * What else is connected to the bus.
 *
 * <p><b>Model.</b> Resistance {@code V²/P} beside reactance {@code h·V²/Q} (RES-4). Motors damp less than their power suggests, so the case without a load
 * is always looked at too, and the worse counts.
 * <p><b>Source.</b> Common practice; no model of a load at harmonics is more than a guess.
 *
 * @param name in words
 * @param watts three-phase [W], 0 or more
 * @param vars three-phase [var], positive where the load draws it
 * @param nominalVolts line to line, at which the load draws this [V]
 */
public record LoadCase(String name, double watts, double vars, double nominalVolts) {
    /** No load, and light and full load where the bank file gives them. */
    public static List<LoadCase> of(Bank bank) {
        double volts = bank.system().nominalVolts();
        List<LoadCase> cases = new ArrayList<>();
        cases.add(new LoadCase("no load", 0.0, 0.0, volts));
        if (bank.load().isPresent()) {
            Load load = bank.load().get();
            if (load.lightWatts().isPresent() && load.lightVars().isPresent()) {
                cases.add(new LoadCase(
                        "light load",
                        load.lightWatts().getAsDouble(),
                        load.lightVars().getAsDouble(),
                        volts));
            }
            cases.add(new LoadCase("full load", load.watts(), load.vars(), volts));
        }
        return List.copyOf(cases);
    }

    /** Admittance at an order [S]. */
    Complex siemens(double order) {
        return new Complex(watts / (nominalVolts * nominalVolts), losslessSiemens(order));
    }

    /** Susceptance at an order [S]: falling with it where inductive, rising where capacitive. */
    double losslessSiemens(double order) {
        double b = -vars / (nominalVolts * nominalVolts);
        return vars > 0.0 ? b / order : b * order;
    }

    boolean isCapacitive() {
        return vars < 0.0;
    }
}
