package org.varwright.unbalance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.basis.Source;
import org.varwright.basis.Verdict;
import org.varwright.network.Banks;
import org.varwright.network.Supply;

/** Values from outside. "First principles": worked out independently of this code. */
class UnbalanceReferenceTest {
    /** The unit type of these banks has 4 sections of 10; without a fuse a stage counts as fuseless, so rows of unit-out are picked by name. */
    private static FailureRow row(Unbalance unbalance, String leg, String kind, int count) {
        return unbalance.failures().stream()
                .filter(r -> r.leg().equals(leg) && r.kind().equals(kind) && r.count() == count)
                .findFirst()
                .orElseThrow();
    }

    private static Unbalance table(Banks.Plan plan, double lineVolts) {
        return Unbalance.of(plan.bank(), Map.of(), new Supply.Balanced(lineVolts), Assumptions.USUAL);
    }

    /** UNB-001: 34.5 kV, 2 groups of 10, V_LN 20 000 V, units 9.96 kV: critical step is 2 (first principles). */
    @Test
    void criticalStep() {
        double line = 20000.0 * Math.sqrt(3.0);
        Unbalance unbalance = table(
                Banks.plan(Connection.WYE_UNGROUNDED, 1, 2, 10)
                        .at(line, 60.0)
                        .rated(200e3, 9960.0)
                        .sensing(Banks.sensor(Protection.Senses.NEUTRAL_VOLTAGE, 20000.0, 120.0)),
                line);
        FailureRow one = row(unbalance, "A", "unit-out", 1);
        FailureRow two = row(unbalance, "A", "unit-out", 2);
        assertEquals(357.143, one.effect().orElseThrow().changes().getFirst().magnitude(), 1.8);
        assertEquals(1.07143, one.effect().orElseThrow().highestGroupPerHealthy(), 1e-5);
        assertEquals(1.0757, one.effect().orElseThrow().highestUnitPerRated(), 1e-4);
        assertEquals(RunVerdict.ALARM, one.verdict());
        assertEquals(769.231, two.effect().orElseThrow().changes().getFirst().magnitude(), 3.8);
        assertEquals(1.1585, two.effect().orElseThrow().highestUnitPerRated(), 1e-4);
        assertEquals(RunVerdict.TAKE_OUT, two.verdict());
    }

    /** UNB-002: 1 % of capacitance and 0.5 % of voltage at 20 kV: 66.7 + 33.3 V at the neutral, 28 % of 357 V, no compensation (first principles). */
    @Test
    void errorBudget() {
        double line = 20000.0 * Math.sqrt(3.0);
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 2, 10)
                .at(line, 60.0)
                .rated(200e3, 9960.0)
                .sensing(Banks.sensor(Protection.Senses.NEUTRAL_VOLTAGE, 20000.0, 120.0))
                .bank();
        SettingStudy study = Unbalance.of(bank, Map.of(), new Supply.Balanced(line), Assumptions.USUAL)
                .settings()
                .getFirst();
        assertEquals(66.6667, study.error().bank(), 0.67);
        assertEquals(33.3333, study.error().system(), 0.33);
        assertEquals(100.0, study.error().total(), 1.0);
        assertFalse(study.error().bankIsMeasured());
    }

    /** UNB-004: two units a phase at 7200 V: the first failure is at 1.2 already, so no alarm-only stage exists (first principles). */
    @Test
    void noAlarmStage() {
        Unbalance unbalance =
                table(Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 2).rated(200e3, 7200.0), 12470.77);
        FailureRow one = row(unbalance, "A", "unit-out", 1);
        assertEquals(1.2, one.effect().orElseThrow().highestUnitPerRated(), 1e-4);
        assertEquals(RunVerdict.TAKE_OUT, one.verdict());
    }

    /** UNB-008: double wye, 4 × 100 kvar 7.96 kV a phase and half: 0.656 A at a 50:5 relay; one set for 100:5 reports 13.12 A (first principles). */
    @Test
    void wrongRatio() {
        Unbalance unbalance = table(
                Banks.plan(Connection.DOUBLE_WYE_UNGROUNDED, 1, 1, 4)
                        .rated(100e3, 7960.0)
                        .sensing(Banks.sensor(Protection.Senses.NEUTRAL_CURRENT, 50.0, 5.0)),
                13800.0);
        Effect effect = row(unbalance, "A1", "unit-out", 1).effect().orElseThrow();
        double secondary = effect.sensors().getFirst().secondary().orElseThrow().magnitude();
        assertEquals(0.656063, secondary, 0.0066);
        assertEquals(13.1213, secondary * 100.0 / 5.0, 0.13);
        assertEquals(1.04348, effect.highestGroupPerHealthy(), 1e-5);
    }

    /** Least P for one unit out within 1.10 of rated (first principles; a table of this shape is in IEEE Std 1036, unchecked). */
    @ParameterizedTest
    @CsvSource({
        "WYE_GROUNDED, 2, 6",
        "WYE_GROUNDED, 3, 8",
        "WYE_UNGROUNDED, 1, 4",
        "WYE_UNGROUNDED, 2, 8",
        "WYE_UNGROUNDED, 3, 9",
        "DOUBLE_WYE_UNGROUNDED, 1, 2",
        "DOUBLE_WYE_UNGROUNDED, 2, 7"
    })
    void leastUnitsInParallel(Connection connection, int groups, int least) {
        String leg = connection.isDoubleWye() ? "A1" : "A";
        assertTrue(row(table(Banks.plan(connection, 1, groups, least), 13800.0), leg, "unit-out", 1)
                        .verdict()
                != RunVerdict.TAKE_OUT);
        assertEquals(
                RunVerdict.TAKE_OUT,
                row(table(Banks.plan(connection, 1, groups, least - 1), 13800.0), leg, "unit-out", 1)
                        .verdict());
    }

    /**
     * Fuseless string of N sections, k shorted wherever in it: N/(N−k) on the rest (first principles; 42 sections: 1 gives 1.0244, 4 give 1.1053). Of 11 units of
     * 4 sections, 4 shorted are exactly at 1.10 and 5, which is more than one unit holds, are over it.
     */
    @Test
    void fuselessString() {
        Unbalance unbalance = table(Banks.plan(Connection.WYE_GROUNDED, 3, 11, 1), 13800.0);
        for (int k = 1; k <= 22; k++) {
            FailureRow row = row(unbalance, "A", "sections-shorted", k);
            assertEquals(44.0 / (44.0 - k), row.effect().orElseThrow().highestSectionPerRated(), 1e-9);
            assertEquals((k + 3) / 4, row.positions().size());
            assertEquals(
                    k < 4 ? RunVerdict.RUN_ON : k == 4 ? RunVerdict.ALARM : RunVerdict.TAKE_OUT,
                    row.verdict(),
                    "k " + k);
        }
        SettingStudy study = unbalance.settings().getFirst();
        assertEquals(5, study.forbiddenCount().orElseThrow());
        assertTrue(
                study.remarks().contains("Up to 4 in one string may run on, 5 may not."),
                study.remarks().toString());
    }

    /** UNB-010: one bank fuse open in an ungrounded wye at 12.47 kV: half of 7199.6 V at the neutral (first principles), said with the settings. */
    @Test
    void onePhaseOpen() {
        Unbalance unbalance = table(
                Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 4)
                        .rated(200e3, 7200.0)
                        .sensing(Banks.sensor(Protection.Senses.NEUTRAL_VOLTAGE, 8400.0, 120.0)),
                12470.0);
        List<String> remarks = unbalance.settings().getFirst().remarks();
        assertTrue(
                remarks.contains("One phase open (bank fuse, switch pole, lost phase) shows 3.6 kV."),
                remarks.toString());
        assertTrue(remarks.stream().anyMatch(r -> r.startsWith("The bank file gives no trip")), remarks.toString());
    }

    /** A setting at the relay says nothing while nobody knows the ratio. */
    @Test
    void settingsWithoutRatioAreNotJudged() {
        Unbalance unbalance = table(
                Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 4)
                        .sensing(new Protection(
                                Banks.STAGE,
                                Protection.Senses.NEUTRAL_VOLTAGE,
                                Optional.empty(),
                                OptionalDouble.of(6.0),
                                OptionalDouble.of(15.0),
                                false,
                                OptionalDouble.empty(),
                                Optional.empty())),
                13800.0);
        SettingStudy study = unbalance.settings().getFirst();
        assertEquals(List.of(), study.checks());
        assertTrue(
                study.remarks()
                        .contains("The bank file gives settings at the relay but no ratio: they were not judged."),
                study.remarks().toString());
    }

    /** Small groups: UNB-004's bank with a sensor says plainly that an alarm alone is never enough, and why. */
    @Test
    void smallGroupsHaveNoAlarmStage() {
        Unbalance unbalance = table(
                Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 2)
                        .rated(200e3, 7200.0)
                        .sensing(Banks.sensor(Protection.Senses.NEUTRAL_VOLTAGE, 8400.0, 120.0)),
                12470.77);
        SettingStudy study = unbalance.settings().getFirst();
        // No fuse on file: sections are what the protection is set for, and one of four already gives 4/3 of 3/(2 +
        // 7/6).
        assertTrue(study.alarm().isEmpty());
        assertTrue(
                study.remarks().getFirst().startsWith("There is no stage at which an alarm alone is enough"),
                study.remarks().toString());
        assertTrue(
                study.remarks().getFirst().contains("of rated, limit 1.10"),
                study.remarks().toString());
    }

    /** A unit shorted across a stiff supply has no finite answer and is not shown as one. */
    @Test
    void shortAcrossTheSupply() {
        Unbalance unbalance = table(Banks.plan(Connection.WYE_GROUNDED, 1, 1, 3), 13800.0);
        FailureRow row = row(unbalance, "B", "unit-shorted", 1);
        assertTrue(row.effect().isEmpty());
        assertEquals(RunVerdict.TAKE_OUT, row.verdict());
        Unbalance fed = Unbalance.of(
                Banks.plan(Connection.WYE_GROUNDED, 1, 1, 3).bank(),
                Map.of(),
                new Supply.Thevenin(13800.0, 280e6, 11.0),
                Assumptions.USUAL);
        assertTrue(row(fed, "B", "unit-shorted", 1).effect().isPresent());
    }

    /** Two units of different legs out together: one row, with the voltage of the network. */
    @Test
    void unitsOutTogether() {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 4).bank();
        Unbalance both = Unbalance.ofOut(
                bank,
                Map.of(),
                new Supply.Balanced(13800.0),
                List.of(
                        bank.positions().get(0),
                        bank.positions().get(4),
                        bank.positions().get(8)));
        FailureRow row = both.failures().getFirst();
        // One in every leg: still symmetrical, no signal, nothing higher than before.
        assertEquals(0.0, row.effect().orElseThrow().changes().getFirst().magnitude(), 1e-9);
        assertEquals(1.0, row.effect().orElseThrow().highestGroupPerHealthy(), 1e-9);
        assertEquals(0.75, row.effect().orElseThrow().varsPerHealthy(), 1e-9);
        assertEquals(Verdict.PASS, both.checks().getFirst().verdict());
        assertEquals(
                Source.published("x").standing(),
                VoltageLimit.of(bank.standard()).source().standing());
    }
}
