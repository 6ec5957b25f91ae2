package org.varwright.resonance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

class CombinationTest {
    private static final String UNITS = """
            unit-types:
              - {name: U, rating: 300 kvar, voltage: 7.97 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
            """;

    private static Bank bank(int... unitsOfEachStage) {
        StringBuilder stages = new StringBuilder(UNITS + "stages:\n");
        for (int i = 0; i < unitsOfEachStage.length; i++) {
            stages.append("  - {name: S").append(i + 1).append(", connection: wye-ungrounded, groups: 1, units: ");
            stages.append(unitsOfEachStage[i]).append(", unit: U}\n");
        }
        return BankText.bank(BankText.system("13.8", "280", ""), stages.toString());
    }

    private static ResonanceQuestion question(String... stages) {
        return new ResonanceQuestion(OptionalDouble.empty(), Optional.empty(), Optional.of(List.of(stages)));
    }

    @Test
    void ofStagesBuiltAlikeOnlyTheirNumberCounts() {
        List<Combination> all = Combination.all(StageModel.of(bank(1, 1, 2)));
        assertEquals(
                List.of("1 of (S1, S2)", "S1 + S2", "S3", "1 of (S1, S2) + S3", "S1 + S2 + S3"),
                all.stream().map(Combination::name).toList());
        assertEquals(List.of("S1", "S3"), all.get(3).stageNames());
    }

    /** Every set of stages has a combination that gives what it gives, and no two combinations are alike. */
    @Test
    void everySetOfStagesIsThere() {
        Bank bank = bank(1, 2, 1, 3, 2, 1);
        List<StageModel> models = StageModel.of(bank);
        Set<Long> wanted = new HashSet<>();
        for (int set = 1; set < 1 << models.size(); set++) {
            int bits = set;
            wanted.add(Math.round(IntStream.range(0, models.size())
                            .filter(i -> (bits >> i & 1) == 1)
                            .mapToDouble(i -> models.get(i).farads())
                            .sum()
                    * 1e12));
        }
        List<Combination> all = Combination.all(models);
        assertEquals(4 * 3 * 2 - 1, all.size());
        Set<Long> found = new HashSet<>();
        all.forEach(c -> found.add(
                Math.round(c.stages().stream().mapToDouble(StageModel::farads).sum() * 1e12)));
        assertEquals(wanted, found);
        assertEquals(
                all.size(), new HashSet<>(all.stream().map(Combination::name).toList()).size());
    }

    @Test
    void tooManyAreRefusedWithAWayOn() {
        int[] stages = IntStream.rangeClosed(1, 13).toArray();
        VarwrightException e =
                assertThrows(VarwrightException.class, () -> Combination.all(StageModel.of(bank(stages))));
        assertEquals(Message.COMBINATIONS_TOO_MANY, e.problems().getFirst().message());
    }

    @Test
    void namedStagesAloneAreLookedAt() {
        Bank bank = bank(1, 2, 1);
        Resonance resonance = Resonance.of(bank, question("S3", "S2"));
        assertEquals(
                List.of("S2 + S3"),
                resonance.combinations().stream()
                        .map(c -> c.combination().name())
                        .toList());
        VarwrightException e = assertThrows(VarwrightException.class, () -> Resonance.of(bank, question("S9")));
        assertEquals(Message.RESONANCE_STAGE, e.problems().getFirst().message());
    }

    /** The short-circuit level is what everything hangs on: without it nothing is called clear. */
    @Test
    void withoutTheShortCircuitLevelNothingIsClear() {
        Bank bank = BankText.bank(
                "standard: IEEE\nsystem: {voltage: 13.8 kV, frequency: 60 Hz, grounding: solid}",
                UNITS + "stages: [{name: S, connection: wye-ungrounded, groups: 1, units: 1, unit: U}]");
        Resonance resonance = Resonance.of(bank, ResonanceQuestion.PLAIN);
        assertTrue(resonance.combinations().isEmpty());
        assertTrue(resonance.clear().isEmpty());
        assertEquals("system.short-circuit", resonance.unanswered().getFirst().missing());
        String text = ResonanceText.of(resonance);
        assertTrue(text.contains("Nothing can be said of resonance"), text);
        assertFalse(text.contains("clear"), text);
    }

    /** 5 Mvar at 125 MVA stand in resonance at the 5th: that is said with the numbers, and to be avoided. */
    @Test
    void aResonanceOnAHarmonicIsToBeAvoided() {
        Bank bank = BankText.bank(BankText.system("13.8", "125", ", x-over-r: 12"), """
                unit-types: [{name: U, rating: 1666.667 kvar, voltage: 7.967434 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}]
                stages: [{name: S, connection: wye-ungrounded, groups: 1, units: 1, unit: U}]
                """);
        Resonance resonance = Resonance.of(
                bank,
                new ResonanceQuestion(
                        OptionalDouble.empty(), Optional.of(Spectrum.parse("", List.of("5: 1 %"))), Optional.empty()));
        CombinationResult result = resonance.combinations().getFirst();
        assertTrue(result.isToAvoid());
        assertFalse(resonance.isGood());
        assertTrue(
                result.reasons().getFirst().startsWith("rms voltage")
                        || result.reasons().getFirst().startsWith("crest"),
                result.reasons().toString());
        // At resonance the peak with a resistance that stays is about five times that with one that rises.
        Peak peak = result.peaks().getFirst();
        assertTrue(peak.amplification() > 4.0 * peak.dampedAmplification(), peak.toString());
    }
}
