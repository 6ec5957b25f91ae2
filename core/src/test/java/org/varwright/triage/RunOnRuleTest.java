package org.varwright.triage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.network.Supply;
import org.varwright.quantity.Complex;
import org.varwright.unbalance.Assumptions;
import org.varwright.unbalance.Candidate;
import org.varwright.unbalance.Locate;
import org.varwright.unbalance.Locator;
import org.varwright.unbalance.Sighting;

/**
 * Whether a bank may run on, as a table. The bank has two groups of eight in a double wye: with one unit out the rest of its group bears 96/89 = 1.079 of healthy, with two
 * 96/82 = 1.171 (closed form 6SP/(6S(P−n)+5n)), against a limit of 1.10 of rated.
 */
class RunOnRuleTest {
    private static final Bank BANK = bank();
    private static final Supply SUPPLY = Supply.nominal(BANK.system());

    private static Bank bank() {
        String file = "demo/lantern-mesa-1.bank.yaml";
        try {
            return BankFile.read(file, Files.readAllBytes(Path.of("../examples").resolve(file)))
                    .requireBank();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Scene scene(Symptom symptom) {
        return Scene.of(BANK, new TriageQuestion(symptom, Optional.empty(), Optional.empty(), OptionalDouble.empty()));
    }

    @Test
    void withoutAReadingEverySymptomHasItsAnswer() {
        Map<RunOn.Answer, List<Symptom>> table = Map.of(
                RunOn.Answer.NO,
                List.of(
                        Symptom.UNBALANCE_TRIP,
                        Symptom.OVERCURRENT_TRIP,
                        Symptom.STAGE_WONT_OPEN,
                        Symptom.BULGED_UNIT,
                        Symptom.LEAKING_UNIT,
                        Symptom.SWITCH_FAULT,
                        Symptom.RESTRIKE),
                RunOn.Answer.UNDECIDED,
                List.of(
                        Symptom.UNBALANCE_ALARM,
                        Symptom.OVERVOLTAGE,
                        Symptom.HOT_UNIT,
                        Symptom.NOISE,
                        Symptom.CONTROL_FUSE,
                        Symptom.CONTROLLER_DARK,
                        Symptom.CONTROL_TRANSFORMER,
                        Symptom.VOLTAGE_TRANSFORMER_FUSE),
                RunOn.Answer.YES_WITH,
                List.of(
                        Symptom.UNDERVOLTAGE,
                        Symptom.LOSS_OF_VOLTAGE,
                        Symptom.BLOWN_FUSE,
                        Symptom.FUSE_INDICATOR,
                        Symptom.STAGE_WONT_CLOSE,
                        Symptom.LOW_POWER_FACTOR,
                        Symptom.HUNTING,
                        Symptom.SELECTOR_IN_MANUAL));
        assertEquals(
                Symptom.values().length,
                table.values().stream().mapToInt(List::size).sum());
        table.forEach((answer, symptoms) -> symptoms.forEach(symptom -> {
            RunOn runOn = new RunOnRule(scene(symptom), SUPPLY, Optional.empty()).of(symptom);
            assertEquals(answer, runOn.answer(), symptom.code());
            assertEquals(answer == RunOn.Answer.YES_WITH, !runOn.conditions().isEmpty(), symptom.code());
        }));
    }

    private static final Candidate.Part ONE_OUT = new Candidate.Part("rack/A1", "unit-out", 1, 2, 16, List.of());
    private static final Candidate.Part TWO_OUT = new Candidate.Part("rack/A1", "unit-out", 2, 2, 16, List.of());
    private static final Candidate.Part OPEN = new Candidate.Part("rack phase A", "phase-open", 1, 1, 1, List.of());

    private static Candidate candidate(double probability, Candidate.Part... parts) {
        return new Candidate(List.of(parts), probability, Complex.ZERO, List.of(0.0, 0.0, 0.0), 0.5);
    }

    /** The answer to an alarm, or to a fuse seen, where these explain the reading. */
    private static RunOn answer(Symptom symptom, boolean explained, List<Candidate> candidates) {
        Locate base =
                Locator.locate(BANK, Map.of(), SUPPLY, Assumptions.USUAL, Sighting.of("rack neutral-current", 1.0));
        Locate located = new Locate(
                base.bank(),
                base.sighting(),
                base.senses(),
                base.ratio(),
                candidates,
                explained,
                base.nextMeasurements(),
                base.notes(),
                base.basis());
        return new RunOnRule(scene(symptom), SUPPLY, Optional.of(located)).of(symptom);
    }

    private static void assertAnswer(RunOn.Answer expected, String why, Candidate... candidates) {
        for (Symptom symptom : List.of(Symptom.UNBALANCE_ALARM, Symptom.BLOWN_FUSE, Symptom.FUSE_INDICATOR)) {
            assertEquals(expected, answer(symptom, true, List.of(candidates)).answer(), symptom.code() + ": " + why);
        }
    }

    @Test
    void theWorstOfWhatExplainsTheReadingCounts() {
        assertAnswer(RunOn.Answer.YES_WITH, "one out", candidate(1.0, ONE_OUT));
        assertAnswer(RunOn.Answer.NO, "two out", candidate(1.0, TWO_OUT));
        assertAnswer(RunOn.Answer.NO, "two out may be", candidate(0.94, ONE_OUT), candidate(0.06, TWO_OUT));
        assertAnswer(
                RunOn.Answer.YES_WITH, "less than one in twenty", candidate(0.97, ONE_OUT), candidate(0.03, TWO_OUT));
        assertAnswer(RunOn.Answer.YES_WITH, "or nothing", candidate(0.6), candidate(0.4, ONE_OUT));
        assertAnswer(RunOn.Answer.NO, "or nothing", candidate(0.6), candidate(0.4, TWO_OUT));
    }

    /** Where only the magnitude was read, the same failure in six legs is six candidates: none of them likely, all together likelier than any other. */
    @Test
    void manyUnlikelyOnesTogetherCount() {
        List<Candidate> six = new ArrayList<>(List.of(candidate(0.76, ONE_OUT)));
        six.addAll(Collections.nCopies(6, candidate(0.04, TWO_OUT)));
        assertEquals(RunOn.Answer.NO, answer(Symptom.UNBALANCE_ALARM, true, six).answer());
    }

    @Test
    void whatIsTooUnlikelyToBeShownButLikelyTogetherLeavesItUndecided() {
        assertAnswer(RunOn.Answer.UNDECIDED, "94 in 100 are known", candidate(0.94, ONE_OUT));
        assertAnswer(RunOn.Answer.YES_WITH, "96 in 100 are known", candidate(0.96, ONE_OUT));
        assertAnswer(RunOn.Answer.NO, "what is known is enough", candidate(0.5, TWO_OUT));
    }

    @Test
    void whatTheTableDoesNotHoldLeavesItUndecided() {
        assertAnswer(RunOn.Answer.UNDECIDED, "two failures", candidate(1.0, ONE_OUT, ONE_OUT));
        assertAnswer(RunOn.Answer.UNDECIDED, "a phase open", candidate(1.0, OPEN));
        assertAnswer(
                RunOn.Answer.UNDECIDED,
                "one out or two failures",
                candidate(0.9, ONE_OUT),
                candidate(0.1, ONE_OUT, OPEN));
        assertAnswer(
                RunOn.Answer.NO, "two out or two failures", candidate(0.9, ONE_OUT, OPEN), candidate(0.1, TWO_OUT));
        assertAnswer(RunOn.Answer.UNDECIDED, "nothing failed: the sensor?", candidate(1.0));
        assertAnswer(RunOn.Answer.UNDECIDED, "nothing at all");
        assertEquals(
                RunOn.Answer.UNDECIDED,
                answer(Symptom.BLOWN_FUSE, false, List.of(candidate(1.0, ONE_OUT)))
                        .answer(),
                "nothing comes near the reading");
    }

    @Test
    void aYesNamesTheTripThatHasToBeInServiceAndThatTheReadingIsReadAgain() {
        RunOn yes = answer(Symptom.UNBALANCE_ALARM, true, List.of(candidate(1.0, ONE_OUT)));
        assertTrue(
                yes.conditions().stream().anyMatch(c -> c.contains("the trip of rack neutral-current is in service")),
                yes.conditions().toString());
        assertTrue(yes.conditions().stream().anyMatch(c -> c.contains("read again")));
        assertTrue(
                yes.basis().getFirst().text().matches(".*: 1\\.0[78]\\d of rated, limit 1\\.10 .*"),
                "1.079 of healthy, and a little more where units are unlike: " + yes.basis());
    }
}
