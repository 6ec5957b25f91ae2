package org.varwright.duty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Harmonic;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.limit.ContinuousLimits;
import org.varwright.limit.Stress;
import org.varwright.resonance.BankText;
import org.varwright.resonance.CombinationResult;
import org.varwright.resonance.HarmonicDuty;
import org.varwright.resonance.Resonance;
import org.varwright.resonance.ResonanceQuestion;
import org.varwright.resonance.Spectrum;

/** DUT-1 over voltages and combinations: every stage is judged in the combination that is worst for it. */
class StageDutyStudyTest {
    private static final String STAGES = """
            unit-types:
              - {name: U, rating: 300 kvar, voltage: 7.97 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
              - {name: V, rating: 100 kvar, voltage: 7.97 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
            stages:
              - {name: one, connection: wye-ungrounded, groups: 1, units: 2, unit: U}
              - {name: two, connection: wye-ungrounded, groups: 1, units: 2, unit: U}
              - {name: odd, connection: wye-ungrounded, groups: 1, units: 1, unit: V}
            """;

    private static DutyQuestion measured(OptionalDouble volts, List<Harmonic> measured) {
        return new DutyQuestion(
                volts,
                Optional.empty(),
                measured,
                Optional.empty(),
                Optional.empty(),
                List.of(),
                DutyQuestion.PLAIN.entered());
    }

    private static double use(ContinuousLimits limits, Stress stress) {
        double use = 0.0;
        for (ContinuousLimits.Judged judged : limits.judge(stress)) {
            use = Math.max(use, judged.value() / judged.limit().value());
        }
        return use;
    }

    /** A naive twin: through all combinations and stages, {@code one} and {@code two} stand for each other. */
    @Test
    void theWorstCombinationForEachStage() {
        Bank bank = BankText.bank(
                BankText.system(
                        "13.8",
                        "280",
                        ", maximum-voltage: 14.5 kV, harmonics: [{order: 11, voltage: 2 %}, {order: 13, voltage: 1 %}]"),
                STAGES);
        ContinuousLimits limits = ContinuousLimits.of(bank.standard());
        Duty duty = Duty.of(bank, DutyQuestion.PLAIN);
        int compared = 0;
        for (double volts : new double[] {13.8e3, 14.5e3}) {
            Resonance resonance = Resonance.of(
                    bank, new ResonanceQuestion(OptionalDouble.of(volts), Optional.empty(), Optional.empty()));
            for (String name : List.of("one", "two", "odd")) {
                Set<String> like = name.equals("odd") ? Set.of("odd") : Set.of("one", "two");
                double worst = 0.0;
                double least = Double.MAX_VALUE;
                for (CombinationResult c : resonance.combinations()) {
                    for (HarmonicDuty.StageStress s : c.duty().orElseThrow().stages()) {
                        if (like.contains(s.stage())) {
                            worst = Math.max(worst, use(limits, s.stress()));
                            least = Math.min(least, use(limits, s.stress()));
                        }
                    }
                }
                assertTrue(worst > 1.05 * least, "it matters which stages are on: " + worst + " and " + least);
                StageDuty found = duty.stages().stream()
                        .filter(d -> d.stage().equals(name)
                                && d.at().volts() == volts
                                && d.harmonics().startsWith("worst with"))
                        .findFirst()
                        .orElseThrow();
                assertEquals(worst, use(limits, found.stress()), 1e-9 * worst, name + " at " + volts);
                compared++;
            }
        }
        assertEquals(6, compared);
        assertEquals(12, duty.stages().size(), "each stage at each voltage, without and with harmonics");
        assertTrue(duty.checks().containsAll(duty.stages().getLast().checks()));
    }

    /**
     * A detuning reactor of 7 % lifts the capacitors to 1/0.93 at the fundamental and leaves them 1/|1 − 25·0.07| = 1.3333 of a fifth harmonic: 4 % at the bus are
     * 0.04·1.3333·0.93 = 4.96 % across the capacitors. At a bus voltage of 1.05 the same 4 % of nominal are less of the fundamental by that factor.
     */
    @Test
    void harmonicsReadAtTheBusBehindADetuningReactor() {
        double omega = 2.0 * Math.PI * 60.0;
        double farads = 2.0 * 300e3 / (omega * 7970.0 * 7970.0);
        double henries = 0.07 / (omega * omega * farads);
        Bank bank = BankText.bank(BankText.system("13.8", "280", ""), """
                unit-types:
                  - {name: U, rating: 300 kvar, voltage: 7.97 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
                stages:
                  - {name: S, connection: wye-ungrounded, groups: 1, units: 2, unit: U,
                     reactor: {inductance: L mH, position: line, purpose: detuning}}
                """.replace("L mH", henries * 1e3 + " mH"));
        double first = 13.8e3 / Math.sqrt(3.0) / 7970.0 / 0.93;
        double fifth = 0.04 / 0.75 * 0.93;
        List<StageDuty> nominal = Duty.of(
                        bank, measured(OptionalDouble.of(1.05 * 13.8e3), Spectrum.parse("", List.of("5: 4 %"))))
                .stages();
        assertEquals(4, nominal.size(), "nominal and as given, without and as measured");
        assertEquals("as measured at the bus", nominal.get(1).harmonics());
        assertEquals(first, nominal.get(0).stress().voltage(), 1e-6);
        assertEquals(first * (1.0 + fifth), nominal.get(1).stress().crest(), 1e-6);
        assertEquals(
                1.05 * first * (1.0 + fifth / 1.05), nominal.get(3).stress().crest(), 1e-6);
        // Put to a system of 13.8 kV and 50 Hz the reactor makes 7 % of 25/36: 1/(1 − 0.04861).
        Relocation there =
                Duty.of(bank, Questions.elsewhere(13.8e3, 50.0)).relocations().getFirst();
        assertEquals(
                13.8e3 / Math.sqrt(3.0) / 7970.0 / (1.0 - 0.07 * 25.0 / 36.0),
                there.stress().voltage(),
                1e-6);
    }

    /** IEEE Std 519 at 13.8 kV: 3 % of a single order and 5 % in all are recommended at most; at the limit is inside. */
    @Test
    void distortionAsMeasured() {
        Bank bank = BankText.bank(BankText.system("13.8", "280", ""), STAGES);
        List<Verdict> inside = Duty.of(
                        bank,
                        measured(OptionalDouble.empty(), Spectrum.parse("", List.of("5: 3 %", "7: 3 %", "11: 2.6 %"))))
                .distortion()
                .stream()
                .map(Check::verdict)
                .toList();
        assertEquals(List.of(Verdict.PASS, Verdict.PASS, Verdict.PASS, Verdict.PASS), inside);
        // √(3² + 3² + 2.7²) = 5.03 %
        List<Verdict> outside = Duty.of(
                        bank,
                        measured(
                                OptionalDouble.empty(), Spectrum.parse("", List.of("5: 3.1 %", "7: 3 %", "11: 2.7 %"))))
                .distortion()
                .stream()
                .map(Check::verdict)
                .toList();
        assertEquals(List.of(Verdict.WARN, Verdict.PASS, Verdict.PASS, Verdict.WARN), outside);
        assertEquals(List.of(), Duty.of(bank, DutyQuestion.PLAIN).distortion());
    }

    /** An overvoltage outside its table alone makes the answer no, and is among the checks; so is a spare that misleads. */
    @Test
    void everySectionIsAmongTheChecks() {
        Bank bank = BankText.bank(
                BankText.system("13.8", "280", ""),
                STAGES.replace(
                        "stages:\n",
                        "  - {name: W, rating: 300 kvar, voltage: 4.8 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}\nstages:\n"));
        DutyQuestion question = new DutyQuestion(
                OptionalDouble.empty(),
                Optional.empty(),
                List.of(),
                Optional.of(new DutyQuestion.Overvoltage(new DutyQuestion.Height.PerRated(1.4), 20.0)),
                Optional.empty(),
                List.of(),
                DutyQuestion.PLAIN.entered());
        Duty duty = Duty.of(bank, question);
        assertEquals(1, duty.wrongSpares().size());
        assertTrue(duty.checks().contains(duty.wrongSpares().getFirst().check()));
        assertTrue(duty.checks().contains(duty.overvoltages().getFirst().check()));
        assertTrue(!duty.isGood(), "40 % for 20 s is too long (IEEE Std 1036: 15 s)");
        assertTrue(Duty.of(bank, DutyQuestion.PLAIN).isGood());
    }
}
