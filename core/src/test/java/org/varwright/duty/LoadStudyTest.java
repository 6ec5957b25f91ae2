package org.varwright.duty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.resonance.BankText;

/** DUT-9 as a table: which stages to have on for a load. Stages of 300 and 600 kvar at 12.47 kV. First principles. */
class LoadStudyTest {
    private static final String STAGES = """
            unit-types:
              - {name: A, rating: 100 kvar, voltage: 7.2 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
              - {name: B, rating: 200 kvar, voltage: 7.2 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
            stages:
              - {name: small, connection: wye-ungrounded, groups: 1, units: 1, unit: A}
              - {name: large, connection: wye-ungrounded, groups: 1, units: 1, unit: B}
            """;

    /** Nobody knows the source: no resonance speaks against anything. */
    private static Bank bank(String load) {
        return BankText.bank(
                "standard: IEEE\nsystem: {voltage: 12.470765814495916 kV, frequency: 60 Hz, grounding: solid}",
                STAGES + "load: {" + load + "}\n");
    }

    private static LoadAnswer answer(String load) {
        return Duty.of(bank(load), DutyQuestion.PLAIN).loads().getFirst();
    }

    private record Row(int reactiveKilovars, String use, double kilovars, boolean isEnough, boolean isLeading) {}

    /**
     * 2000 kW at 0.97 may draw 2000·tan(acos 0.97) = 501.25 kvar. Wanted is what lies above; the least that is enough and doesn't lead is used, else the most that
     * doesn't lead.
     */
    @Test
    void theLeastThatIsEnoughAndDoesNotLead() {
        for (Row row : List.of(
                new Row(400, "none on", 0.0, true, true),
                new Row(501, "none on", 0.0, true, true),
                new Row(502, "small", 300.0, true, true),
                new Row(801, "small", 300.0, true, true),
                new Row(802, "large", 600.0, true, true),
                new Row(899, "large", 600.0, true, true),
                new Row(901, "large", 600.0, true, false),
                new Row(1101, "large", 600.0, true, false),
                new Row(1102, "small + large", 900.0, true, false),
                new Row(1401, "small + large", 900.0, true, false),
                new Row(1402, "small + large", 900.0, false, false))) {
            LoadAnswer a =
                    answer("power: 2000 kW, reactive: " + row.reactiveKilovars() + " kvar, wanted-power-factor: 0.97");
            LoadAnswer.Use use = a.use().orElseThrow();
            assertEquals(row.use(), use.combination(), row.toString());
            assertEquals(1e3 * row.kilovars(), use.vars(), 1.0, row.toString());
            assertEquals(row.isEnough(), use.isEnough(), row.toString());
            assertEquals(row.isLeading(), a.isLeading(), row.toString());
            assertEquals(1e3 * (row.reactiveKilovars() - 501.25), a.wantedVars().orElseThrow(), 10.0, row.toString());
            assertFalse(use.isToAvoid(), row.toString());
            assertEquals(Optional.empty(), a.clear(), row.toString());
        }
    }

    /** Where even the smallest stage would lead, nothing goes on, and the power factor wanted is not reached; nor does a load that leads by itself get more. */
    @Test
    void nothingGoesOnWhereItWouldLead() {
        LoadAnswer narrow = answer("power: 500 kW, reactive: 200 kvar, wanted-power-factor: 0.99");
        LoadAnswer.Use use = narrow.use().orElseThrow();
        assertEquals("none on", use.combination());
        assertFalse(use.isEnough());
        // 500/√(500² + 200²)
        assertEquals(0.92848, use.powerFactor(), 1e-5);
        assertEquals(0.92848, narrow.powerFactor(), 1e-5);
        // With all 900 kvar: 500/√(500² + 700²), leading.
        assertEquals(0.58124, narrow.allOnPowerFactor(), 1e-5);
        assertTrue(narrow.isLeading());
        LoadAnswer leads = answer("power: 500 kW, reactive: -100 kvar, wanted-power-factor: 0.95");
        assertEquals("none on", leads.use().orElseThrow().combination());
        assertTrue(leads.use().orElseThrow().isEnough(), "no kvar are wanted");
        assertTrue(leads.wantedVars().orElseThrow() < 0.0);
    }

    /** Stages that give just what the load draws bring it to 1 and don't lead; a thousandth more does, and that is a warning. */
    @Test
    void unityIsNotLeading() {
        Duty exact = Duty.of(bank("power: 1000 kW, reactive: 900 kvar, wanted-power-factor: 1.0"), DutyQuestion.PLAIN);
        assertFalse(exact.loads().getFirst().isLeading());
        LoadAnswer.Use use = exact.loads().getFirst().use().orElseThrow();
        assertEquals("small + large", use.combination());
        assertTrue(use.isEnough());
        assertEquals(1.0, use.powerFactor(), 1e-12);
        assertEquals(
                List.of(Verdict.PASS, Verdict.PASS),
                exact.loadChecks().stream().map(Check::verdict).toList());
        Duty over = Duty.of(bank("power: 1000 kW, reactive: 899.1 kvar, wanted-power-factor: 1.0"), DutyQuestion.PLAIN);
        assertTrue(over.loads().getFirst().isLeading());
        assertEquals("large", over.loads().getFirst().use().orElseThrow().combination());
        // 1000/√(1000² + 299.1²)
        Check factor = over.loadChecks().getLast();
        assertEquals(0.958063, factor.value(), 1e-6);
        assertEquals(1.0, factor.limit());
        assertEquals(Verdict.WARN, factor.verdict());
        Check bank = over.loadChecks().getFirst();
        assertEquals(900e3, bank.value(), 1.0);
        assertEquals(899.1e3, bank.limit(), 1e-6);
        assertEquals(Verdict.WARN, bank.verdict());
        assertTrue(over.checks().containsAll(over.loadChecks()));
        assertTrue(over.isGood(), "a warning is no refusal");
    }

    /** Light load is looked at where it is known; without a power factor wanted nothing is recommended, and leading is still seen. */
    @Test
    void lightLoad() {
        String full = "power: 2000 kW, reactive: 1500 kvar";
        Duty both = Duty.of(
                bank(full + ", light-power: 400 kW, light-reactive: 350 kvar, wanted-power-factor: 0.9"),
                DutyQuestion.PLAIN);
        LoadAnswer light = both.loads().get(1);
        assertEquals("light load", light.load());
        // 350 − 400·0.484322 = 156.27 kvar wanted: 300 kvar; 400/√(400² + 50²).
        assertEquals(156.27e3, light.wantedVars().orElseThrow(), 10.0);
        assertEquals("small", light.use().orElseThrow().combination());
        assertEquals(0.992278, light.use().orElseThrow().powerFactor(), 1e-6);
        assertTrue(light.isLeading(), "900 kvar at 350");
        Duty half = Duty.of(bank(full), DutyQuestion.PLAIN);
        assertEquals(
                List.of("full load"),
                half.loads().stream().map(LoadAnswer::load).toList());
        assertEquals(Optional.empty(), half.loads().getFirst().use());
        assertTrue(half.loads().getFirst().wantedVars().isEmpty());
        assertEquals(1, half.loadChecks().size());
    }

    /**
     * 79.35 MVA behind 600 kvar resonate at √(79350/600) = 11.5: order 11 is made 1/(1 − 11²/11.5²) = 11.8 times higher. With 300 kvar (16.3) or 900 kvar (9.4) no
     * order looked at is made three times higher.
     */
    @Test
    void resonanceSpeaksAgainstACombination() {
        String system = BankText.system("12.470765814495916", "79.35", "");
        // Wanted 498.75 kvar of 1000: 600 would do, but resonates; 900 does, too.
        LoadAnswer round = Duty.of(
                        BankText.bank(
                                system,
                                STAGES + "load: {power: 2000 kW, reactive: 1000 kvar, wanted-power-factor: 0.97}\n"),
                        DutyQuestion.PLAIN)
                .loads()
                .getFirst();
        assertEquals("small + large", round.use().orElseThrow().combination());
        assertFalse(round.use().orElseThrow().isToAvoid());
        assertEquals(Optional.empty(), round.clear());
        // Wanted 348.75 of 850: only 600 is enough. It is named, and beside it the most that nothing speaks against.
        LoadAnswer only = Duty.of(
                        BankText.bank(
                                system,
                                STAGES + "load: {power: 2000 kW, reactive: 850 kvar, wanted-power-factor: 0.97}\n"),
                        DutyQuestion.PLAIN)
                .loads()
                .getFirst();
        assertEquals("large", only.use().orElseThrow().combination());
        assertTrue(only.use().orElseThrow().isToAvoid());
        LoadAnswer.Use clear = only.clear().orElseThrow();
        assertEquals("small", clear.combination());
        assertEquals(300e3, clear.vars(), 1.0);
        // 2000/√(2000² + 550²)
        assertEquals(0.964205, clear.powerFactor(), 1e-6);
        assertFalse(clear.isEnough());
        assertFalse(clear.isToAvoid());
        // Wanted 778.75 of 850: nothing that doesn't lead is enough. The most without resonance, not 600.
        LoadAnswer most = Duty.of(
                        BankText.bank(
                                system,
                                STAGES + "load: {power: 500 kW, reactive: 850 kvar, wanted-power-factor: 0.99}\n"),
                        DutyQuestion.PLAIN)
                .loads()
                .getFirst();
        assertEquals("small", most.use().orElseThrow().combination());
        assertFalse(most.use().orElseThrow().isEnough());
    }
}
