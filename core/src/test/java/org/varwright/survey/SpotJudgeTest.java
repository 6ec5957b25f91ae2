package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;

/** Reactors, switch poles and currents of the invented bank of the demonstration (60 µH a phase, switch 24-C). */
class SpotJudgeTest {
    private static List<SpotSurvey> judged(String rows) throws IOException {
        Path file = Path.of("..", "examples", "demo", "corbel-reach-3.bank.yaml");
        Bank bank = BankFile.read("corbel-reach-3", Files.readAllBytes(file)).requireBank();
        String table = "position,inductance (uH),contact resistance (uohm),current (A)\n" + rows;
        Readings readings = ReadingsFile.read(bank, "r.csv", table.getBytes(StandardCharsets.UTF_8));
        assertEquals(List.of(), readings.problems());
        return Survey.of(bank, readings, SurveySettings.of(bank.standard(), 0.01))
                .spots();
    }

    private static List<Verdict> verdicts(List<SpotSurvey> spots) {
        return spots.stream().map(SpotSurvey::verdict).toList();
    }

    /** Source: ANSI/NETA MTS: within the maker's range, else not over 150 % of the lowest pole. */
    @Test
    void contactsOfOneSwitch() throws IOException {
        List<SpotSurvey> spots = judged("24-C/A,,40,\n24-C/B,,60,\n24-C/C,,61,\n24-D/A,,90,\n");
        assertEquals(List.of(Verdict.PASS, Verdict.PASS, Verdict.WARN, Verdict.WARN), verdicts(spots));
        Check check = spots.get(2).checks().getFirst();
        assertEquals(61.0 / 40.0, check.value(), 1e-12);
        assertEquals(1.5, check.limit());
        assertTrue(
                spots.get(3).reason().contains("alone says little"),
                spots.get(3).reason());
        assertEquals(List.of(Verdict.FAIL), verdicts(judged("24-C/A,,OL,\n")));
    }

    @Test
    void reactorsAgainstTheirNameplate() throws IOException {
        List<SpotSurvey> spots = judged("stage 3/A,60.8,,\nstage 3/B,49,,\nstage 3/C,60 mH,,\nstage 1/A,OL,,\n");
        assertEquals(List.of(Verdict.PASS, Verdict.WARN, Verdict.FAIL, Verdict.FAIL), verdicts(spots));
        assertTrue(spots.get(1).reason().contains("turns shorted"), spots.get(1).reason());
        assertTrue(
                spots.get(2).reason().contains("10^3 times its nameplate"),
                spots.get(2).reason());
    }

    @Test
    void oneLegThatDrawsLessThanItsShare() throws IOException {
        List<SpotSurvey> spots = judged("""
                stage 1/A,,,8.6
                stage 1/B,,,8.6
                stage 1/C,,,8.6
                stage 3/A,,,17.2
                stage 3/B,,,17.3
                stage 3/C,,,15.0
                """);
        assertEquals(
                List.of(Verdict.PASS, Verdict.PASS, Verdict.PASS, Verdict.WARN, Verdict.WARN, Verdict.WARN),
                verdicts(spots));
        assertTrue(
                spots.get(5).reason().contains("below its share"), spots.get(5).reason());
    }
}
