package org.varwright.resonance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;

class TuningTest {
    private static Bank bank(String purpose, double order, String unit) {
        // Four units of 300 kvar in parallel a phase, tuned to an order at nameplate capacitance.
        double omega = 2.0 * Math.PI * 60.0;
        double farads = 4.0 * 300e3 / (omega * 8320.0 * 8320.0);
        double henries = 1.0 / (order * omega * order * omega * farads);
        return BankText.bank(
                BankText.system("13.8", "280", ", x-over-r: 11"), """
                unit-types:
                  - {name: U, rating: 300 kvar, voltage: 8.32 kV, frequency: 60 Hz, tolerance: [0 %%, +10 %%]%s}
                stages:
                  - {name: S, connection: wye-ungrounded, groups: 1, units: 4, unit: U, reactor: {inductance: %s mH, position: line, purpose: %s, resistance: 50 mΩ}}
                """.formatted(unit, henries * 1e3, purpose));
    }

    private static StageTuning tuning(Bank bank) {
        return Resonance.of(bank, ResonanceQuestion.PLAIN).tunings().getFirst();
    }

    private static Drift drift(StageTuning tuning, String cause) {
        return tuning.drifts().stream()
                .filter(d -> d.cause().equals(cause))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aFilterDriftsAsUnitsFail() {
        StageTuning tuning = tuning(bank("filter", 4.7, ", sections: 4, elements: 12, element-fuses: internal"));
        assertEquals(5, tuning.aim());
        assertEquals(4.7, tuning.detuning().tunedOrder(), 1e-4);
        // One of four units out: 3/4 of the capacitance, tuned to 4.7·√(4/3).
        assertEquals(
                4.7 * Math.sqrt(4.0 / 3.0),
                drift(tuning, "one unit out, that phase").tunedOrder(),
                1e-3);
        assertEquals(
                4.7 * Math.sqrt(2.0),
                drift(tuning, "two units out of a group, that phase").tunedOrder(),
                1e-3);
        // One of 12 elements in one of 4 sections: 44/45 of the unit, a quarter of the change in the phase.
        double factor = (3.0 + 44.0 / 45.0) / 4.0;
        assertEquals(
                4.7 / Math.sqrt(factor),
                drift(tuning, "one element fuse operated, that phase").tunedOrder(),
                1e-3);
        assertEquals(
                4.7 / Math.sqrt(1.10),
                drift(tuning, "every unit at the upper end of its tolerance").tunedOrder(),
                1e-3);
        // −0.03 % a kelvin over 40 K.
        assertEquals(
                4.7 / Math.sqrt(0.988),
                drift(tuning, "40 K warmer than when measured").tunedOrder(),
                1e-3);
        // As it is it takes the 5th away; with a unit out it stands above the 5th and raises it.
        assertTrue(drift(tuning, "as it is").amplification() < 1.0);
        assertTrue(drift(tuning, "one unit out, that phase").amplification() > 1.0);
        List<Check> checks = tuning.checks();
        assertEquals(Verdict.PASS, checks.getFirst().verdict());
        assertEquals(Verdict.WARN, checks.getLast().verdict());
    }

    @Test
    void aDetunedStageStaysBelowTheLowestHarmonic() {
        StageTuning good = tuning(bank("detuning", 3.78, ""));
        assertEquals(5, good.aim());
        assertEquals(Verdict.PASS, good.checks().getFirst().verdict());
        assertTrue(good.drifts().stream().allMatch(d -> d.amplification() < 1.0 || d.tunedOrder() > 5.0));
        StageTuning bad = tuning(bank("detuning", 5.5, ""));
        assertEquals(Verdict.FAIL, bad.checks().getFirst().verdict());
    }

    @Test
    void anInrushReactorIsNotJudged() {
        StageTuning tuning = tuning(bank("inrush", 90.0, ""));
        assertTrue(tuning.drifts().isEmpty());
        assertTrue(tuning.checks().isEmpty());
    }

    @Test
    void aSectionShortedRaisesTheCapacitance() {
        StageTuning tuning = tuning(bank("detuning", 3.78, ", sections: 4, elements: 12, element-fuses: none"));
        double factor = (3.0 + 4.0 / 3.0) / 4.0;
        assertEquals(
                3.78 / Math.sqrt(factor),
                drift(tuning, "one section shorted, that phase").tunedOrder(),
                1e-3);
    }
}
