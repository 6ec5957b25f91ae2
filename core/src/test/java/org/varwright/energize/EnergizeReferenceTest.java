package org.varwright.energize;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.network.Banks;
import org.varwright.network.Failure;

/** Values from outside. "First principles": worked out independently of this code. */
class EnergizeReferenceTest {
    /**
     * Four 200 kvar 7.2 kV units a phase at 12.47 kV (first principles, UNB-006): 111.11 A a phase; with one unit of phase A out 90.91, 106.42, 106.42 A.
     *
     * <pre>
     *   A ─┬─‖─┬─ N
     *      ├─‖─┤      4 in parallel a phase, neutral floating, 8400:120 V
     *      ├─‖─┤
     *      └─/ ┘      one fuse operated
     * </pre>
     */
    @Test
    void oneOfFourOut() {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 4)
                .rated(200e3, 7200.0)
                .sensing(Banks.sensor(Protection.Senses.NEUTRAL_VOLTAGE, 8400.0, 120.0))
                .bank();
        Energize before = Energize.of(bank, readings(bank), BusVolts.balanced(12470.0), Uncertainty.USUAL, List.of());
        assertEquals(3, before.currents().size());
        for (ExpectedCurrent current : before.currents()) {
            assertEquals(111.11, current.amperes().expected(), 0.1111);
        }
        assertTrue(before.isGood());
        Energize after = Energize.of(
                bank,
                readings(bank),
                BusVolts.balanced(12470.0),
                Uncertainty.USUAL,
                List.of(
                        MeasuredValue.parse("F/A=90.91 A"),
                        MeasuredValue.parse("F/B=106.42 A"),
                        MeasuredValue.parse("F/C=106.42 A"),
                        // 654.5 V at the neutral (UNB-006), at the relay × 120/8400.
                        MeasuredValue.parse("F neutral-voltage=9.35 V")));
        assertEquals(Verdict.FAIL, after.comparison().getFirst().verdict());
        Explanation explanation = after.explanations().getFirst();
        Failure.UnitOut out =
                assertInstanceOf(Failure.UnitOut.class, explanation.best().getFirst());
        assertEquals("A", out.at().at().leg());
        assertTrue(explanation.misfit() < 0.1, explanation.toString());
        assertTrue(!after.isGood());
    }

    private static Map<org.varwright.bank.UnitPosition, Double> readings(Bank bank) {
        Map<org.varwright.bank.UnitPosition, Double> readings = new java.util.LinkedHashMap<>();
        bank.positions()
                .forEach(p -> readings.put(p, bank.unitTypes().getFirst().capacitanceFarads()));
        return readings;
    }

    /** One bank fuse open, ungrounded (UNB-010, first principles): the other two phases carry 0.866 of normal. */
    @Test
    void oneFuseOpen() {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 2)
                .rated(300e3, 7960.0)
                .sensing()
                .bank();
        Energize before = Energize.of(bank, readings(bank), BusVolts.balanced(13800.0), Uncertainty.USUAL, List.of());
        double normal = before.currents().getFirst().amperes().expected();
        Energize after = Energize.of(
                bank,
                readings(bank),
                BusVolts.balanced(13800.0),
                Uncertainty.USUAL,
                List.of(
                        new MeasuredValue("f/a", 0.0, org.varwright.quantity.Dimension.CURRENT),
                        new MeasuredValue("F / B", 0.866 * normal, org.varwright.quantity.Dimension.CURRENT),
                        new MeasuredValue("F/C", 0.866 * normal, org.varwright.quantity.Dimension.CURRENT)));
        assertEquals(
                List.of(new Failure.PhaseOpen("F", "A")),
                after.explanations().getFirst().best());
        assertTrue(after.explanations().getFirst().sentence().contains("live all the same"));
    }

    /** 600 kvar at 12.47 kV: 27.78 A (first principles); 7.2 kV delta of 800 kvar a leg: 192.45 A a line, 111.1 A a leg. */
    @Test
    void ratedCurrents() {
        Bank wye = Banks.plan(Connection.WYE_GROUNDED, 1, 1, 1)
                .rated(200e3, 12470.0 / Math.sqrt(3.0))
                .at(12470.0, 60.0)
                .bank();
        ExpectedCurrent a = Energize.of(wye, Map.of(), BusVolts.balanced(12470.0), Uncertainty.USUAL, List.of())
                .currents()
                .getFirst();
        assertEquals(27.78, a.amperes().expected(), 0.01);
        assertEquals(27.78, a.ratedAmperes(), 0.01);
        Bank delta = Banks.plan(Connection.DELTA, 1, 1, 4)
                .rated(200e3, 7200.0)
                .at(7200.0, 60.0)
                .bank();
        List<ExpectedCurrent> currents = Energize.of(
                        delta, Map.of(), BusVolts.balanced(7200.0), Uncertainty.USUAL, List.of())
                .currents();
        assertEquals(192.45, currents.getFirst().amperes().expected(), 0.01);
        assertEquals("F/AB", currents.get(3).name());
        assertEquals(111.11, currents.get(3).amperes().expected(), 0.01);
    }

    /** Units at more than 110 % of rated voltage fail (IEEE Std 18); at exactly 110 % they pass. */
    @ParameterizedTest
    @CsvSource({"1.00, PASS", "1.10, PASS", "1.11, FAIL"})
    void busVoltageAgainstRated(double multiple, Verdict verdict) {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 2, 3).bank();
        Energize energize =
                Energize.of(bank, Map.of(), BusVolts.balanced(13800.0 * multiple), Uncertainty.USUAL, List.of());
        Check check = energize.checks().getFirst();
        assertEquals(multiple, check.value(), 1e-9);
        assertEquals(1.10, check.limit());
        assertEquals(verdict, check.verdict());
    }

    /** Above 135 % of rated current a unit is overloaded (IEEE Std 18); current follows voltage. */
    @ParameterizedTest
    @CsvSource({"1.00, PASS", "1.35, PASS", "1.36, FAIL"})
    void currentOverRated(double multiple, Verdict verdict) {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 2, 3).bank();
        Check check = Energize.of(bank, Map.of(), BusVolts.balanced(13800.0 * multiple), Uncertainty.USUAL, List.of())
                .checks()
                .stream()
                .filter(c -> c.basis().id().equals("ENG-6"))
                .findFirst()
                .orElseThrow();
        assertEquals(multiple, check.value(), 1e-9);
        assertEquals(1.35, check.limit());
        assertEquals(verdict, check.verdict());
    }
}
