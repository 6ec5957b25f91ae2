package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;

/** Every reading that can't be right has its name and is not judged as a failure. */
class ImpossibleReadingsTest {
    private static final UnitType TYPE =
            BankSketch.type("U300", 300e3, 7960, 60, new Tolerance(0.0, 0.10), 4, 12, false, Optional.empty());

    private static BankSketch sketch() {
        return new BankSketch().stage("s", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 3), TYPE);
    }

    private static UnitSurvey first(Bank bank, String table) {
        Readings readings = ReadingsFile.read(bank, "r.csv", table.getBytes(StandardCharsets.UTF_8));
        return Survey.of(bank, readings, SurveySettings.of(bank.standard(), 0.01))
                .units()
                .getFirst();
    }

    @ParameterizedTest
    @CsvSource({
        "0.02, leads-open",
        "<0.01, leads-open",
        "OL, over-range",
        "127.1, wrong-range",
        "1.271, wrong-range",
        "12710, wrong-range",
        "0.01271, wrong-range",
        "25.4, neighbour-connected",
        "38.1, neighbour-connected",
        "114.3, neighbour-connected",
        "5.1, fits-nothing"
    })
    void ofAUnit(String cell, String finding) {
        // 12.71 µF by its own earlier value; three in parallel; 0.01271 µF is both a range of 10^3 and as good as open
        // leads
        Bank bank = sketch().known("s/A/u1", "", 12.71e-6).build();
        UnitSurvey unit = first(bank, "position,capacitance\ns/A/u1," + cell + "\n");
        assertEquals(UnitVerdict.MEASURE_AGAIN, unit.verdict(), unit.reason());
        assertEquals(Optional.of(finding), unit.finding(), unit.reason());
        assertEquals(0, unit.sectionsShorted());
    }

    /** Source: independent calculation. A delta of 55.7 µF a leg reads 83.55 (third open) and 111.4 µF (third linked), a wye 0.5 and 2/3 of a leg. */
    @ParameterizedTest
    @CsvSource({
        "DELTA, 83.55, two terminals of a delta with the third open",
        "DELTA, 111.4, one terminal of a delta against the other two joined",
        "WYE_UNGROUNDED, 83.55, two terminals of a wye with the third open",
        "WYE_UNGROUNDED, 111.4, one terminal of a wye against the other two joined"
    })
    void ofAThreePhaseUnitTakenForOneLeg(InternalConnection inside, double micro, String words) {
        UnitType type = BankSketch.type(
                "can", 30e3, 690, 60, new Tolerance(-0.05, 0.1), 0, 0, false, Optional.empty(), Optional.of(inside));
        Bank bank = new BankSketch()
                .system(690, 60, SystemGrounding.SOLID)
                .stage(
                        "s",
                        inside == InternalConnection.DELTA ? Connection.DELTA : Connection.WYE_UNGROUNDED,
                        new LegLayout(1, 1, 1),
                        type)
                .build();
        UnitSurvey unit = first(bank, "position,capacitance\ns," + micro + "\n");
        assertEquals(Optional.of("wrong-terminals"), unit.finding(), unit.reason());
        assertTrue(unit.reason().contains(words), unit.reason());
        // said between which terminals, the same reading is that of a unit in order
        String between = words.contains("third open") ? "A-B third open" : "A-B third linked";
        UnitSurvey told = first(bank, "position,capacitance,terminals\ns," + micro + "," + between + "\n");
        assertEquals(UnitVerdict.HEALTHY, told.verdict(), told.reason());
    }

    /** Units that the file says are deltas and that are wyes: the nameplate gives a third of what they read. */
    @Test
    void aWyeTakenForADeltaByTheFile() {
        UnitType type = BankSketch.type(
                "can",
                30e3,
                690,
                60,
                new Tolerance(-0.05, 0.1),
                0,
                0,
                false,
                Optional.empty(),
                Optional.of(InternalConnection.DELTA));
        Bank bank = new BankSketch()
                .system(690, 60, SystemGrounding.SOLID)
                .stage("s", Connection.DELTA, new LegLayout(1, 1, 5), type)
                .build();
        StringBuilder table = new StringBuilder("position,capacitance\n");
        for (int u = 1; u <= 5; u++) {
            table.append("s/u").append(u).append(",").append(167.1 + 0.1 * u).append("\n");
        }
        Readings readings = ReadingsFile.read(bank, "r.csv", table.toString().getBytes(StandardCharsets.UTF_8));
        Survey survey = Survey.of(bank, readings, SurveySettings.of(bank.standard(), 0.01));
        assertTrue(
                survey.findings().stream().anyMatch(f -> f.contains("a wye taken for a delta")),
                survey.findings().toString());
    }

    @Test
    void aNameplateThatDoesNotFitItsUnits() {
        for (double ratio : new double[] {1.2, 1.0 / 1.2, 3.0, 1.0 / 3.0}) {
            StringBuilder table = new StringBuilder("position,capacitance\n");
            for (String leg : List.of("A", "B", "C")) {
                for (int u = 1; u <= 3; u++) {
                    table.append("s/")
                            .append(leg)
                            .append("/u")
                            .append(u)
                            .append(',')
                            .append(13.1 * ratio)
                            .append('\n');
                }
            }
            Readings readings = ReadingsFile.read(
                    sketch().build(), "r.csv", table.toString().getBytes(StandardCharsets.UTF_8));
            Survey survey = Survey.of(
                    sketch().build(),
                    readings,
                    SurveySettings.of(sketch().build().standard(), 0.01));
            assertTrue(
                    survey.findings().stream().anyMatch(f -> f.contains("nameplate misprint")),
                    ratio + ": " + survey.findings());
            assertEquals(List.of(), survey.with(UnitVerdict.REPLACE), ratio + "");
        }
    }

    @Test
    void twoPositionsSwapped() {
        Bank bank = sketch().known("s/A/u1", "", 12.6e-6)
                .known("s/A/u2", "", 13.6e-6)
                .build();
        UnitSurvey unit = first(bank, "position,capacitance\ns/A/u1,13.6\ns/A/u2,12.6\n");
        assertEquals(Optional.of("positions-swapped"), unit.finding(), unit.reason());
    }
}
