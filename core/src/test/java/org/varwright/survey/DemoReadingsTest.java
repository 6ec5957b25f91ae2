package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;

/** The demonstration banks: what was planted in their readings is found, and nothing else is. All values there are invented. */
class DemoReadingsTest {
    private static final Path DEMO = Path.of("..", "examples", "demo");

    private static Bank bank(String name) throws IOException {
        String file = name + ".bank.yaml";
        return BankFile.read(file, Files.readAllBytes(DEMO.resolve(file))).requireBank();
    }

    private static void found(String name, Map<String, String> planted) throws IOException {
        Bank bank = bank(name);
        String file = name + ".readings.csv";
        Readings readings = ReadingsFile.read(bank, file, Files.readAllBytes(DEMO.resolve(file)));
        assertEquals(List.of(), readings.problems());
        Survey survey = Survey.of(bank, readings, SurveySettings.of(bank.standard(), 0.01));
        Map<String, String> said = new TreeMap<>();
        for (UnitSurvey unit : survey.units()) {
            if (unit.verdict() != UnitVerdict.HEALTHY) {
                said.put(
                        unit.position().name(),
                        unit.verdict().code()
                                + unit.finding().map(f -> " " + f).orElse("")
                                + (unit.sectionsShorted() > 0 ? " shorted " + unit.sectionsShorted() : "")
                                + (unit.elementsOut() > 0 ? " out " + unit.elementsOut() : ""));
            }
        }
        assertEquals(new TreeMap<>(planted), said);
    }

    @Test
    void corbelReach() throws IOException {
        found(
                "corbel-reach-3",
                Map.of(
                        "stage 3/B/u2", "replace fuse-open shorted 1",
                        "stage 4/A/u1", "replace resistor-open",
                        "stage 1/C", "watch",
                        "stage 2/C", "measure-again leads-open",
                        "stage 4/C/u1", "measure-again neighbour-connected",
                        "stage 1/B", "measure-again wrong-range"));
    }

    @Test
    void hallinMoor() throws IOException {
        found(
                "hallin-moor-2",
                Map.of(
                        "capacitor/B-ll/u1", "replace out 5",
                        "capacitor/C-ur/u2", "replace out 2",
                        "capacitor/A-lr/u2", "measure-again leads-open",
                        "capacitor/C-ll/u1", "measure-again neighbour-connected",
                        "capacitor/B-ur/u1", "measure-again wrong-range"));
    }

    @Test
    void lanternMesa() throws IOException {
        found(
                "lantern-mesa-1",
                Map.of(
                        "rack/B1/g2u3", "replace shorted 1",
                        "rack/A1/g1u4", "replace fuse-open shorted 2",
                        "rack/C2/g1u2", "watch",
                        "rack/C1/g2u5", "measure-again leads-open",
                        "rack/B2/g1u1", "measure-again neighbour-connected",
                        "rack/A1/g2u2", "measure-again wrong-range",
                        "rack/C2/g2u1", "measure-again positions-swapped",
                        "rack/C2/g2u2", "measure-again positions-swapped"));
    }

    @Test
    void sparesOfEachBankAreReadWithTheOneThatDoesNotFit() throws IOException {
        for (Map.Entry<String, String> other : Map.of(
                        "corbel-reach-3", "V200-13",
                        "hallin-moor-2", "N400-60",
                        "lantern-mesa-1", "R150")
                .entrySet()) {
            Bank bank = bank(other.getKey());
            String file = other.getKey() + ".spares.csv";
            Spares spares = SparesFile.read(bank, file, Files.readAllBytes(DEMO.resolve(file)));
            assertEquals(List.of(), spares.problems());
            assertEquals(
                    List.of(other.getValue()),
                    spares.spares().stream()
                            .map(spare -> spare.unit().name())
                            .filter(type ->
                                    !type.equals(bank.stages().getFirst().unit().name()))
                            .toList());
            // the table of spares and the bank file speak of the same units
            assertEquals(
                    bank.spares().stream()
                            .map(s -> s.serial() + s.capacitanceFarads())
                            .toList(),
                    spares.spares().stream()
                            .map(s -> s.serial() + s.capacitanceFarads())
                            .toList());
        }
    }
}
