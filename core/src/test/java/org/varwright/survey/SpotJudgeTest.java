package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Tolerance;
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
        // No contact has no resistance: leads that touch are not the best pole.
        List<SpotSurvey> zero = judged("24-C/A,,40,\n24-C/B,,41,\n24-C/C,,0,\n");
        assertEquals(List.of(Verdict.PASS, Verdict.PASS, Verdict.WARN), verdicts(zero));
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

    /** 10 % off is still the reactor of the file; a decimal slip is seen up to 20 % off, and a stage without a reactor has nothing to hold it against. */
    @Test
    void reactorsAtTheirLimit() throws IOException {
        assertEquals(
                List.of(Verdict.PASS, Verdict.WARN, Verdict.WARN),
                verdicts(judged("stage 3/A,65.9,,\nstage 3/B,66.1,,\nstage 3/C,53.9,,\n")));
        assertEquals(
                List.of(Verdict.FAIL, Verdict.WARN, Verdict.FAIL),
                verdicts(judged("stage 3/A,71.9 mH,,\nstage 3/B,72.1 mH,,\nstage 3/C,48.1 mH,,\n")));
    }

    /** Three legs alike: with 20 A in two of them, 4 % above its share is {@code x = 1.04·(40 + x)/3}, 21.2245 A. */
    @Test
    void currentsAtTheirLimit() {
        assertEquals(List.of(Verdict.PASS, Verdict.PASS, Verdict.PASS), currents("20", "20", "21.22"));
        assertEquals(List.of(Verdict.PASS, Verdict.PASS, Verdict.WARN), currents("20", "20", "21.23"));
        assertEquals(List.of(Verdict.WARN, Verdict.WARN), currents("20", "20"), "two legs say little");
        assertEquals(List.of(Verdict.WARN, Verdict.WARN, Verdict.WARN), currents("20", "20", "OL"));
        assertEquals(List.of(Verdict.WARN, Verdict.WARN, Verdict.WARN), currents("20", "20", "0"));
    }

    private static List<Verdict> currents(String... amperes) {
        Bank bank = new BankSketch()
                .stage(
                        "s",
                        Connection.WYE_UNGROUNDED,
                        new LegLayout(1, 1, 3),
                        BankSketch.type(
                                "U", 300e3, 7960, 60, new Tolerance(-0.05, 0.05), 4, 12, false, Optional.empty()))
                .build();
        StringBuilder table = new StringBuilder("position,current (A)\n");
        for (int leg = 0; leg < amperes.length; leg++) {
            table.append("s/")
                    .append("ABC".charAt(leg))
                    .append(',')
                    .append(amperes[leg])
                    .append('\n');
        }
        Readings readings = ReadingsFile.read(bank, "r.csv", table.toString().getBytes(StandardCharsets.UTF_8));
        return verdicts(Survey.of(bank, readings, SurveySettings.of(bank.standard(), 0.01))
                .spots());
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
