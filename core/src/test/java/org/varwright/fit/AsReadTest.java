package org.varwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.UnitPosition;
import org.varwright.bankfile.BankFile;
import org.varwright.energize.BusVolts;
import org.varwright.energize.CountedUnit;
import org.varwright.energize.Energize;
import org.varwright.energize.EnergizeText;
import org.varwright.energize.Uncertainty;
import org.varwright.survey.ReadingsFile;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveySettings;

/** Only measured units count as measured: the others count as the bank file has them, and it is said. */
class AsReadTest {
    private static Bank bank(String name) throws IOException {
        return BankFile.read("bank", Files.readAllBytes(Path.of("..", "examples", "demo", name + ".bank.yaml")))
                .requireBank();
    }

    private static AsRead read(Bank bank, String rows) {
        byte[] table = ("position,capacitance,fuse\n" + rows).getBytes(StandardCharsets.UTF_8);
        return AsRead.of(Survey.of(
                bank, ReadingsFile.read(bank, "readings", table), SurveySettings.of(bank.standard(), 0.01), List.of()));
    }

    @Test
    void aMateIsNotMeasuredByItsMates() throws IOException {
        Bank bank = bank("corbel-reach-3");
        AsRead asRead = read(bank, "stage 3/A/u1,10.4 uF,\n");
        assertEquals(
                List.of("stage 3/A/u1"),
                asRead.farads().keySet().stream().map(p -> p.name()).toList());
        assertEquals(10.4e-6, asRead.farads().values().iterator().next(), 1e-9);
        Energize energize = Energize.of(bank, asRead.farads(), BusVolts.balanced(12_470), Uncertainty.USUAL, List.of());
        assertEquals(
                List.of("stage 3/A/u1"),
                energize.units().stream()
                        .filter(CountedUnit::isRead)
                        .map(CountedUnit::position)
                        .toList());
        assertEquals(bank.positions().size(), energize.units().size());
        String text = EnergizeText.of(energize);
        assertTrue(text.contains("1 of " + bank.positions().size() + " units count as measured."), text);
        assertTrue(text.contains("Not measured, counted by "), text);
    }

    @Test
    void aUnitThatConductsNothingIsNotReadAndIsWarnedOf() throws IOException {
        Bank bank = bank("lantern-mesa-1");
        AsRead asRead = read(bank, "rack/A1/g1u1,5.428 uF,3.14 mohm\nrack/A1/g1u4,9.129 uF,OL\n");
        assertEquals(
                List.of("rack/A1/g1u4"),
                asRead.open().stream().map(p -> p.name()).toList());
        assertEquals(
                List.of("rack/A1/g1u1"),
                asRead.farads().keySet().stream().map(p -> p.name()).toList());
        Energize energize = Energize.of(bank, asRead.farads(), BusVolts.balanced(34_500), Uncertainty.USUAL, List.of())
                .warned(asRead.warnings());
        assertTrue(
                energize.cautions().getFirst().startsWith("rack/A1/g1u4 conducts nothing by its reading"),
                energize.cautions().toString());
    }

    /** The same after a plan's lifts: no unit counts as read because its mates were; a spare with its own value does, at its new place. */
    @Test
    void afterLiftsOnlyWhatWasMeasuredCounts() throws IOException {
        Bank bank = bank("corbel-reach-3");
        byte[] table =
                "position,capacitance\nstage 3/A/u1,10.4 uF\nstage 3/B/u2,14.09 uF\n".getBytes(StandardCharsets.UTF_8);
        Survey survey = Survey.of(
                bank, ReadingsFile.read(bank, "readings", table), SurveySettings.of(bank.standard(), 0.01), List.of());
        FitInput input = FitInput.from(survey, bank.spares(), FitOptions.USUAL);
        FitResult plan = Fit.plan(input);
        Move putIn = plan.moves().stream()
                .filter(m -> m.to().equals("stage 3/B/u2"))
                .findFirst()
                .orElseThrow(() -> new AssertionError(plan.moves().toString()));
        double spare = bank.spares().stream()
                .filter(s -> s.serial().equals(putIn.serial()))
                .findFirst()
                .orElseThrow()
                .capacitanceFarads()
                .orElseThrow();
        Map<UnitPosition, Double> fitted = AsFitted.of(input, plan).orElseThrow();
        assertEquals(
                List.of("stage 3/A/u1", "stage 3/B/u2"),
                fitted.keySet().stream().map(p -> p.name()).toList());
        List<Double> farads = List.copyOf(fitted.values());
        assertEquals(10.4e-6, farads.get(0), 1e-12);
        assertEquals(spare, farads.get(1), 1e-12);
    }
}
