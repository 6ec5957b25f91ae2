package org.varwright.duty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.TransformerRatio;
import org.varwright.basis.Check;
import org.varwright.basis.Unanswered;
import org.varwright.basis.Verdict;
import org.varwright.resonance.BankText;
import org.varwright.resonance.Spectrum;

class DutyTest {
    private static final String STAGE = """
            unit-types:
              - {name: U, rating: 300 kvar, voltage: 7.97 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
            stages: [{name: S, connection: wye-ungrounded, groups: 1, units: 2, unit: U}]
            """;

    private static Bank bank(String more) {
        return BankText.bank(BankText.system("13.8", "280", ", x-over-r: 11"), STAGE + more);
    }

    private static DutyQuestion overvoltage(DutyQuestion.Height height, double seconds) {
        return new DutyQuestion(
                OptionalDouble.empty(),
                Optional.empty(),
                List.of(),
                Optional.of(new DutyQuestion.Overvoltage(height, seconds)),
                Optional.empty(),
                List.of(),
                DutyQuestion.PLAIN.entered());
    }

    @Test
    void overvoltageForATime() {
        Bank bank = bank("");
        OvervoltageAnswer within = Duty.of(bank, overvoltage(new DutyQuestion.Height.PerRated(1.4), 10.0))
                .overvoltages()
                .getFirst();
        assertEquals(Verdict.PASS, within.check().verdict());
        assertTrue(within.sentence().contains("is within") && within.sentence().contains("15 s"), within.sentence());
        OvervoltageAnswer outside = Duty.of(bank, overvoltage(new DutyQuestion.Height.PerRated(1.4), 20.0))
                .overvoltages()
                .getFirst();
        assertEquals(Verdict.FAIL, outside.check().verdict());
        assertTrue(
                outside.sentence().contains("is OUTSIDE") && outside.sentence().contains("1.3"), outside.sentence());
        OvervoltageAnswer never = Duty.of(bank, overvoltage(new DutyQuestion.Height.PerRated(2.3), 0.01))
                .overvoltages()
                .getFirst();
        assertEquals(Verdict.FAIL, never.check().verdict());
        // By the bus voltage: 17 kV across 7.97 kV units in wye.
        OvervoltageAnswer bus = Duty.of(bank, overvoltage(new DutyQuestion.Height.Bus(17e3), 60.0))
                .overvoltages()
                .getFirst();
        assertEquals(17e3 / Math.sqrt(3.0) / 7.97e3, bus.multiple(), 1e-9);
        assertEquals("S", bus.stage());
    }

    @Test
    void whatIsMissingIsNamedOneByOne() {
        Bank bank =
                BankText.bank("standard: IEEE\nsystem: {voltage: 13.8 kV, frequency: 60 Hz, grounding: solid}", STAGE);
        Duty duty = Duty.of(bank, DutyQuestion.PLAIN);
        assertTrue(duty.rises().isEmpty());
        List<String> missing =
                duty.unanswered().stream().map(Unanswered::missing).toList();
        for (String path :
                List.of("system.short-circuit", "control", "system.maximum-voltage", "system.harmonics", "load")) {
            assertTrue(missing.contains(path), path + " in " + missing);
        }
        String text = DutyText.of(duty);
        assertTrue(text.contains("NOT ANSWERED"), text);
        assertFalse(text.contains("VOLTAGE RISE"), text);
    }

    @Test
    void aSpareOfTheRightTypeMisleadsNobody() {
        Bank bank = bank("spares: [{serial: \"S-1\", unit: U, capacitance: 12.6 uF}]\n");
        assertTrue(Duty.of(bank, DutyQuestion.PLAIN).wrongSpares().isEmpty());
    }

    /** Harmonics as read at the bus go straight to the limits and to the table of distortion. */
    @Test
    void measuredHarmonics() {
        Bank bank = bank("");
        Duty duty = Duty.of(
                bank,
                new DutyQuestion(
                        OptionalDouble.empty(),
                        Optional.empty(),
                        Spectrum.parse("", List.of("5: 10 %", "7: 5 %")),
                        Optional.empty(),
                        Optional.empty(),
                        List.of(),
                        DutyQuestion.PLAIN.entered()));
        StageDuty stage = duty.stages().getLast();
        double v = 13.8e3 / Math.sqrt(3.0) / 7.97e3;
        assertEquals(v * Math.sqrt(1.0 + 0.01 + 0.0025), stage.stress().voltage(), 1e-9);
        assertEquals(v * 1.15, stage.stress().crest(), 1e-9);
        // Nobody measured the capacitances: current and reactive power count with the upper tolerance.
        assertEquals(1.1 * v * Math.sqrt(1.0 + 0.25 + 0.1225), stage.stress().current(), 1e-9);
        assertEquals(1.1 * v * v * (1.0 + 0.05 + 0.0175), stage.stress().reactivePower(), 1e-9);
        List<Check> distortion = duty.distortion();
        assertEquals(3, distortion.size());
        assertTrue(distortion.stream().allMatch(c -> c.verdict() == Verdict.WARN));
        assertEquals(Math.sqrt(0.0125), distortion.getLast().value(), 1e-12);
    }

    @Test
    void reactorAndSwitchMustCarryTheCurrent() {
        Bank bank = BankText.bank(BankText.system("13.8", "280", ""), """
                unit-types:
                  - {name: U, rating: 300 kvar, voltage: 7.97 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
                switch-types: [{name: T, current: 100 A}]
                stages: [{name: S, connection: wye-ungrounded, switch: Q, groups: 1, units: 2, unit: U, reactor: {inductance: 50 uH, position: line, purpose: inrush, current: 70 A}}]
                isolation:
                  sources: [{name: feeder, at: line}]
                  devices: [{name: Q, kind: stage-switch, type: T, between: [line, S]}]
                  compartments: [{name: bay, exposes: [line, S]}]
                """);
        List<Check> checks =
                Duty.of(bank, DutyQuestion.PLAIN).conductors().getFirst().checks();
        assertEquals(2, checks.size());
        // 600 kvar a phase at 7.97 kV: 75.3 A; the reactor carries 70 A, the switch must carry 101.6 A and carries 100
        // A.
        assertEquals(75.28, checks.get(0).value(), 0.1);
        assertEquals(Verdict.FAIL, checks.get(0).verdict());
        assertEquals(101.6, checks.get(1).value(), 0.1);
        assertEquals(Verdict.FAIL, checks.get(1).verdict());
    }

    @Test
    void aKvarControlWithAWrongRatio() {
        Bank bank = bank("""
                control: {senses: kvar, current-ratio: "500:5", on: 400 kvar, off: -100 kvar}
                load: {power: 3 MW, reactive: 1.5 Mvar}
                """);
        Duty duty = Duty.of(
                bank,
                new DutyQuestion(
                        OptionalDouble.empty(),
                        Optional.empty(),
                        List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        List.of(),
                        new DutyQuestion.EnteredRatios(
                                Optional.empty(), Optional.of(new TransformerRatio(100.0, 5.0)))));
        // The stage gives 1.8 Mvar, the band is 0.5 Mvar: it hunts.
        assertEquals(Verdict.FAIL, duty.control().checks().getFirst().verdict());
        assertTrue(
                duty.control().lines().getLast().contains("0.2 times"),
                duty.control().lines().toString());
        assertTrue(duty.control().lines().getLast().contains("nothing ever goes on"));
    }

    @Test
    void aCurrentControlAndOneByTheClock() {
        Bank current = bank("""
                control: {senses: current, current-ratio: "300:5", on: 3 A, off: 1.5 A}
                load: {power: 3 MW, reactive: 2 Mvar}
                """);
        assertEquals(1, Duty.of(current, DutyQuestion.PLAIN).control().checks().size());
        Bank clock = bank("control: {senses: time}\n");
        ControlAnswer answer = Duty.of(clock, DutyQuestion.PLAIN).control();
        assertTrue(answer.checks().isEmpty());
        assertTrue(answer.lines().getFirst().contains("clock"));
    }

    @Test
    void theCombinationToUse() {
        Bank bank = BankText.bank(BankText.system("13.8", "280", ", x-over-r: 11"), """
                unit-types:
                  - {name: U, rating: 100 kvar, voltage: 7.9674337 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
                stages:
                  - {name: A, connection: wye-ungrounded, groups: 1, units: 1, unit: U}
                  - {name: B, connection: wye-ungrounded, groups: 1, units: 2, unit: U}
                load: {power: 2 MW, reactive: 1 Mvar, light-power: 1 MW, light-reactive: 0.4 Mvar, wanted-power-factor: 0.97}
                """);
        Duty duty = Duty.of(bank, DutyQuestion.PLAIN);
        // Full: 1000 − 2000·tan(acos 0.97) = 498.7 kvar wanted; light: 400 − 250.6 = 149.4 kvar wanted, at most 400
        // don't lead.
        LoadAnswer full = duty.loads().get(0);
        assertEquals(498.7e3, full.wantedVars().orElseThrow(), 100.0);
        LoadAnswer.Use use = full.use().orElseThrow();
        assertTrue(use.combination().equals("B") || use.combination().equals("A + B"), use.combination());
        assertTrue(use.isEnough());
        assertEquals("A", duty.loads().get(1).use().orElseThrow().combination());
        assertTrue(duty.loads().get(1).isLeading());
    }
}
