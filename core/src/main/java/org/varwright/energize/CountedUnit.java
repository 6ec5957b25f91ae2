package org.varwright.energize;

import java.util.List;
import org.varwright.bank.Bank;

/**
 * A unit with where the capacitance that it counts with comes from.
 *
 * @param position its name
 * @param from whether a reading, the bank file or the nameplate says it
 */
public record CountedUnit(String position, Origin from) {
    /** Whether its own reading counts. */
    public boolean isRead() {
        return from == Origin.READING;
    }

    static List<CountedUnit> all(Bank bank, Fitted fitted) {
        return bank.positions().stream()
                .map(p -> new CountedUnit(p.name(), fitted.origin(p)))
                .toList();
    }
}
