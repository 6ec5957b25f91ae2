package org.varwright.energize;

import java.util.HashMap;
import java.util.Map;
import org.varwright.bank.Bank;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Capacitances;

/**
 * The units as they stand now: where each capacitance comes from.
 *
 * @param capacitances of every unit
 * @param from where each value comes from
 */
record Fitted(Capacitances capacitances, Map<UnitPosition, Origin> from) {
    /**
     * Readings first, then what the bank file knows, then the nameplate.
     *
     * @param readings by position [F]
     */
    static Fitted of(Bank bank, Map<UnitPosition, Double> readings) {
        Map<UnitPosition, Origin> from = new HashMap<>();
        for (UnitPosition position : bank.positions()) {
            boolean known = bank.unitAt(position)
                    .map(KnownUnit::capacitanceFarads)
                    .filter(c -> c.isPresent())
                    .isPresent();
            from.put(
                    position,
                    readings.containsKey(position) ? Origin.READING : known ? Origin.BANK_FILE : Origin.NAMEPLATE);
        }
        return new Fitted(Capacitances.known(bank).with(readings), Map.copyOf(from));
    }

    Origin origin(UnitPosition position) {
        return from.getOrDefault(position, Origin.NAMEPLATE);
    }

    /** Number of units of a stage whose value comes from there. */
    int count(Stage stage, Origin origin) {
        return (int) stage.positions().stream().filter(p -> origin(p) == origin).count();
    }
}
