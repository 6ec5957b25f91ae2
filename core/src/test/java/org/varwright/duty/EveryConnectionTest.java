package org.varwright.duty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.basis.Verdict;
import org.varwright.network.Banks;

/** DUT-3 and DUT-5 for every connection, two groups of three units a leg, units rated for their share of 13.8 kV. First principles. */
class EveryConnectionTest {
    private static Bank bank(Connection connection) {
        return Banks.plan(connection, 1, 2, 3).bank();
    }

    /** At rated voltage a three-phase load of so many var draws Q/(√3·V) in its lines, however its units are joined; conductors for 135 % of it. */
    @ParameterizedTest
    @EnumSource(Connection.class)
    void ratedLineCurrent(Connection connection) {
        Bank bank = bank(connection);
        ConductorDuty duty = Duty.of(bank, DutyQuestion.PLAIN).conductors().getFirst();
        double amperes = bank.positions().size() * 200e3 / (Math.sqrt(3.0) * 13800.0);
        assertEquals(amperes, duty.ratedAmperes(), 1e-9 * amperes);
        assertEquals(1.35 * amperes, duty.requiredAmperes(), 1e-9 * amperes);
    }

    /** Moved to a bus 5 % higher at 50 Hz, every unit stands at 1.05 of its rated voltage and gives 1.05²·50/60 of its reactive power. */
    @ParameterizedTest
    @EnumSource(Connection.class)
    void movedElsewhere(Connection connection) {
        Bank bank = bank(connection);
        Duty duty = Duty.of(bank, Questions.elsewhere(1.05 * 13800.0, 50.0));
        Relocation moved = duty.relocations().getFirst();
        double vars = bank.positions().size() * 200e3;
        assertEquals(1.05, moved.stress().voltage(), 1e-9);
        assertEquals(1.05 * 50.0 / 60.0, moved.stress().current(), 1e-9);
        assertEquals(vars, moved.ratedVars(), 1e-6 * vars);
        assertEquals(vars, moved.varsHere(), 1e-6 * vars);
        assertEquals(vars * 1.05 * 1.05 * 50.0 / 60.0, moved.varsThere(), 1e-6 * vars);
        assertTrue(duty.checks().containsAll(moved.checks()), "what is found elsewhere is among the checks");
    }

    /** 15 % above rated is over the limit, and one check over its limit makes the whole answer no. */
    @ParameterizedTest
    @EnumSource(Connection.class)
    void oneCheckOverItsLimitIsEnough(Connection connection) {
        assertTrue(Duty.of(bank(connection), Questions.elsewhere(13800.0, 60.0)).isGood());
        Duty high = Duty.of(bank(connection), Questions.elsewhere(1.15 * 13800.0, 60.0));
        assertTrue(
                high.stages().stream().flatMap(s -> s.checks().stream()).noneMatch(c -> c.verdict() == Verdict.FAIL));
        assertFalse(high.isGood());
    }
}
