package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.network.Capacitances;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;

/** What the check reckons in a line for itself, against the network solver: line current and unit voltage of every connection (BNK-2). */
class UnitDutyOracleTest {
    @Test
    void theCheckAgreesWithTheNetwork() {
        for (String stage : List.of(
                "connection: delta, groups: 1, units: 2",
                "connection: delta, groups: 2, strings: 2, units: 3",
                "connection: wye-grounded, groups: 1, units: 2",
                "connection: wye-ungrounded, groups: 3, units: 2",
                "connection: wye-ungrounded, groups: 1, units: 2, reactor: {inductance: 120 mH, position: line, purpose: filter}",
                "connection: wye-grounded, groups: 2, units: 2, reactor: {inductance: 200 mH, position: neutral, purpose: filter}",
                "connection: delta, groups: 1, units: 1, reactor: {inductance: 70 mH, position: line, purpose: detuning}",
                "connection: double-wye-grounded, groups: 2, units: 3",
                "connection: double-wye-ungrounded, groups: 2, units: 3, second: {units: 2}",
                "connection: double-wye-ungrounded, groups: 2, units: 2, second: {groups: 1, units: 1}",
                "connection: bridge-ungrounded, groups: 1, units: 2",
                "connection: bridge-grounded, groups: 2, strings: 2, units: 1, reactor: {inductance: 30 mH, position: line, purpose: detuning}")) {
            Bank bank = new LimitBank().stage(stage).read().bank().orElseThrow(() -> new AssertionError(stage));
            Stage s = bank.stages().getFirst();
            Supply supply = Supply.nominal(bank.system());
            Solution.Solved solved = assertInstanceOf(
                    Solution.Solved.class,
                    Network.of(bank, s, Capacitances.known(bank), supply).healthy(),
                    stage);
            double line = solved.line("S", "A").orElseThrow().amperes().magnitude();
            assertEquals(line, UnitDuty.lineAmperes(s, bank.system()), 1e-6 * line, stage);
            double most = solved.units().stream()
                    .mapToDouble(u -> u.volts().magnitude())
                    .max()
                    .orElseThrow();
            assertEquals(most, UnitDuty.unitVolts(s, bank.system()), 1e-6 * most, stage);
        }
    }
}
