package org.varwright.duty;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;

/**
 * A bus voltage that the bank is looked at with.
 *
 * @param name in words
 * @param volts line to line [V]
 */
public record VoltageCase(String name, double volts) {
    /** Nominal, the highest sustained where the bank file gives it, and one that was asked for. */
    static List<VoltageCase> of(Bank bank, OptionalDouble given) {
        List<VoltageCase> cases = new ArrayList<>();
        cases.add(new VoltageCase("nominal", bank.system().nominalVolts()));
        bank.system().maximumVolts().ifPresent(v -> cases.add(new VoltageCase("highest", v)));
        given.ifPresent(v -> cases.add(new VoltageCase("as given", v)));
        return List.copyOf(cases);
    }

    /** Such as {@code highest 13.1 kV}. */
    public String print() {
        return name + " " + org.varwright.quantity.Dimension.VOLTAGE.format(volts);
    }
}
