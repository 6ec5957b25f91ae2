package org.varwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.survey.ReadingsFile;
import org.varwright.survey.SparesFile;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveySettings;

/** From files to lifts on the demonstration banks; all values there are invented. */
class FitDemoTest {
    private static final Path DEMO = Path.of("..", "examples", "demo");

    private static FitResult plan(String name) throws IOException {
        Bank bank = BankFile.read(name, Files.readAllBytes(DEMO.resolve(name + ".bank.yaml")))
                .requireBank();
        var readings = ReadingsFile.read(bank, name, Files.readAllBytes(DEMO.resolve(name + ".readings.csv")));
        var spares = SparesFile.read(bank, name, Files.readAllBytes(DEMO.resolve(name + ".spares.csv")));
        Survey survey = Survey.of(bank, readings, SurveySettings.of(bank.standard(), 0.01));
        return Fit.plan(FitInput.from(survey, spares.spares(), FitOptions.USUAL));
    }

    private static void isWhole(FitResult result, String rejected, List<String> outOf) {
        assertEquals(FitResult.Outcome.COMPLETE, result.outcome());
        assertTrue(result.provenBest(), result.proof());
        assertEquals(
                List.of(rejected),
                result.rejected().stream().map(FitResult.Rejected::serial).toList());
        assertEquals(
                outOf,
                result.moves().stream()
                        .filter(m -> m.to().equals(Move.OUT))
                        .map(Move::from)
                        .toList());
        assertTrue(!result.provisional().isEmpty(), "readings that can't be right leave the plan unsettled");
        assertTrue(FitText.of(result).contains("NOT SETTLED YET"), "and the page says so");
    }

    @Test
    void corbelReach() throws IOException {
        isWhole(plan("corbel-reach-3"), "QL08-0007", List.of("stage 3/B/u2", "stage 4/A/u1"));
    }

    /** Two element fuses out are 1.12 of rated on what is left at 36 kV, more than it may: that unit goes out as well. */
    @Test
    void hallinMoor() throws IOException {
        FitResult result = plan("hallin-moor-2");
        isWhole(result, "HM15-0009", List.of("capacitor/B-ll/u1", "capacitor/C-ur/u2"));
        assertEquals(4, result.moves().size());
    }

    @Test
    void lanternMesa() throws IOException {
        isWhole(plan("lantern-mesa-1"), "LM11-0420", List.of("rack/A1/g1u4", "rack/B1/g2u3"));
    }
}
