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

    /** A double wye with a reactor at each neutral, tuned to {@code order} with four units of 300 kvar a leg. */
    private static Bank twoReactors(String connection, double order, int second, String more) {
        double omega = 2.0 * Math.PI * 60.0;
        double farads = 4.0 * 300e3 / (omega * 8320.0 * 8320.0);
        double henries = 1.0 / (order * omega * order * omega * farads);
        return BankText.bank(BankText.system("13.8", "280", ", x-over-r: 11"), """
                unit-types:
                  - {name: U, rating: 300 kvar, voltage: 8.32 kV, frequency: 60 Hz, tolerance: [0 %%, 0 %%]}
                stages:
                  - {name: S, connection: %s, groups: 1, units: 4, second: {groups: 1, units: %d}, unit: U, reactor: {inductance: %s mH, %s, resistance: 50 mΩ}}
                """.formatted(
                        connection, second, henries * 1e3, more));
    }

    /**
     * <pre>
     *   bus ─┬─ 4 units ─ L ─┐       first wye tuned to 4.2, the second with half of its capacitance to 4.2·√2 = 5.94:
     *        └─ 2 units ─ L ─┴─ n    above the 5th, which it raises
     * </pre>
     */
    @Test
    void theSmallerOfTwoWyesWithTheirOwnReactorsIsJudged() {
        StageTuning unlike =
                tuning(twoReactors("double-wye-ungrounded", 4.2, 2, "position: neutral, purpose: detuning"));
        assertEquals(4.2 * Math.sqrt(2.0), unlike.detuning().tunedOrder(), 1e-4);
        assertEquals(Verdict.FAIL, unlike.checks().getFirst().verdict());
        // One of its two units out: half of that again, while the other wye stays as it is.
        assertEquals(4.2 * 2.0, drift(unlike, "one unit out, that phase").tunedOrder(), 1e-3);
        StageTuning alike =
                tuning(twoReactors("double-wye-ungrounded", 4.2, 4, "position: neutral, purpose: detuning"));
        assertEquals(4.2, alike.detuning().tunedOrder(), 1e-4);
        assertEquals(Verdict.PASS, alike.checks().getFirst().verdict());
        // The wye that lost a unit swings with its own reactor: 3/4 of four units, not 7/8 of eight.
        Drift out = drift(alike, "one unit out, that phase");
        assertEquals(4.2 * Math.sqrt(4.0 / 3.0), out.tunedOrder(), 1e-3);
        assertEquals(0.75, out.capacitanceFactor(), 1e-12);
    }

    /** With the reactor in the line both wyes stand behind it: of 4 + 2 units one out leaves 5/6, in whichever wye. */
    @Test
    void aReactorInTheLineSeesBothWyes() {
        StageTuning line = tuning(twoReactors("double-wye-grounded", 4.2, 2, "position: line, purpose: filter"));
        assertEquals(4.2 * Math.sqrt(4.0 / 6.0), line.detuning().tunedOrder(), 1e-4);
        assertEquals(5.0 / 6.0, drift(line, "one unit out, that phase").capacitanceFactor(), 1e-12);
        assertEquals(
                4.0 / 6.0, drift(line, "two units out of a group, that phase").capacitanceFactor(), 1e-12);
    }
}
