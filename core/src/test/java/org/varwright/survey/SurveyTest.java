package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.json.Json;

class SurveyTest {
    private static final Tolerance PLUS_TEN = new Tolerance(0.0, 0.10);

    /** 12.56 µF by the nameplate. */
    private static final UnitType TYPE = BankSketch.type(
            "U300", 300e3, 7960, 60, PLUS_TEN, 4, 12, false, Optional.of(new DischargeDevice.Resistor(4.1e6)));

    private static BankSketch sketch(int units) {
        return new BankSketch().stage("s", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, units), TYPE);
    }

    private static Survey survey(Bank bank, String table) {
        Readings readings = ReadingsFile.read(bank, "r.csv", table.getBytes(StandardCharsets.UTF_8));
        return Survey.of(bank, readings, SurveySettings.of(bank.standard(), 0.01));
    }

    private static UnitSurvey unit(Survey survey, String position) {
        return survey.unit(position).orElseThrow();
    }

    @Test
    void aShortedSectionIsFoundByTheUnitsOwnValueByItsMatesAndByTheNameplate() {
        Bank own = sketch(2).known("s/A/u1", "", 12.9e-6).build();
        UnitSurvey byOwn = unit(survey(own, "position,capacitance\ns/A/u1,17.2\n"), "s/A/u1");
        assertEquals(UnitVerdict.REPLACE, byOwn.verdict());
        assertEquals(1, byOwn.sectionsShorted());
        assertEquals(4.0 / 3.0, byOwn.voltagePerHealthy(), 1e-9);
        assertEquals(4.0 / 3.0 * 13800 / Math.sqrt(3.0) / 7960, byOwn.voltagePerRated(), 1e-9);
        assertTrue(byOwn.reason().contains("1 of 4 sections shorted"), byOwn.reason());
        assertTrue(byOwn.reason().contains("1.33× its healthy voltage"), byOwn.reason());
        String mates = "position,capacitance\ns/A/u1,17.2\ns/A/u2,12.9\ns/B/u1,12.8\ns/B/u2,12.95\ns/C/u1,12.85\n";
        UnitSurvey byMates = unit(survey(sketch(2).build(), mates), "s/A/u1");
        assertEquals(UnitVerdict.REPLACE, byMates.verdict());
        assertTrue(byMates.reference().orElseThrow() instanceof Reference.Mates);
        UnitSurvey byNameplate = unit(survey(sketch(2).build(), "position,capacitance\ns/A/u1,17.2\n"), "s/A/u1");
        assertEquals(UnitVerdict.REPLACE, byNameplate.verdict());
        assertTrue(byNameplate.reference().orElseThrow() instanceof Reference.Nameplate);
    }

    @Test
    void everyPositionHasItsPlaceInTheResult() {
        Survey survey = survey(sketch(2).build(), "position,capacitance\ns/A/u1,12.7\n");
        assertEquals(6, survey.units().size());
        assertEquals(5, survey.with(UnitVerdict.NOT_MEASURED).size());
        assertEquals(5, survey.legs().stream().mapToInt(LegSurvey::assumed).sum());
    }

    @Test
    void readingsTakenAgainReplaceImpossibleOnesAndRowsThatDisagreeAreSaid() {
        Bank bank = sketch(2).known("s/A/u1", "", 12.7e-6).build();
        UnitSurvey again = unit(survey(bank, "position,capacitance\ns/A/u1,0.02\ns/A/u1,OL\ns/A/u1,12.72\n"), "s/A/u1");
        assertEquals(UnitVerdict.HEALTHY, again.verdict(), again.reason());
        assertEquals(List.of(2, 3, 4), again.rows());
        assertTrue(
                again.remarks().stream().anyMatch(r -> r.contains("row 2 (0.02), row 3 (OL)") && r.contains("row 4")),
                again.remarks().toString());
        UnitSurvey torn = unit(survey(bank, "position,capacitance\ns/A/u1,12.70\ns/A/u1,16.93\n"), "s/A/u1");
        assertEquals(UnitVerdict.MEASURE_AGAIN, torn.verdict());
        assertEquals(Optional.of("readings-disagree"), torn.finding());
        UnitSurvey twice = unit(survey(bank, "position,capacitance\ns/A/u1,12.70\ns/A/u1,12.74\n"), "s/A/u1");
        assertEquals(12.72e-6, twice.capacitanceFarads().orElseThrow(), 1e-12);
    }

    @Test
    void twiceTheValueIsDoubtedWhereANeighbourMayBeConnected() {
        UnitType two = BankSketch.type("two", 300e3, 7960, 60, PLUS_TEN, 2, 12, false, Optional.empty());
        Bank bank = new BankSketch()
                .stage("s", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2), two)
                .known("s/A/u1", "", 12.7e-6)
                .build();
        UnitSurvey unit = unit(survey(bank, "position,capacitance\ns/A/u1,25.4\n"), "s/A/u1");
        assertEquals(UnitVerdict.MEASURE_AGAIN, unit.verdict());
        assertTrue(unit.reason().contains("2 units were measured together"), unit.reason());
        assertTrue(unit.reason().contains("1 of 2 sections shorted"), unit.reason());
    }

    @Test
    void serialNumbersTellOfSwapsAndOfUnitsFittedSince() {
        Bank bank = sketch(2)
                .known("s/A/u1", "TF-1", 12.6e-6)
                .known("s/A/u2", "TF-2", 13.4e-6)
                .known("s/B/u1", "TF-3", 12.6e-6)
                .known("s/B/u2", "TF-4", 12.6e-6)
                .build();
        Survey swapped = survey(
                bank,
                "position,serial,capacitance\ns/A/u1,tf 2,13.41\ns/A/u2,TF1,12.61\ns/B/u1,TF-3,12.6\ns/B/u2,X-9,13.1\n");
        assertEquals(Optional.of("positions-swapped"), unit(swapped, "s/A/u1").finding());
        assertEquals(Optional.of("positions-swapped"), unit(swapped, "s/A/u2").finding());
        assertEquals(UnitVerdict.HEALTHY, unit(swapped, "s/B/u1").verdict());
        // fitted since: the earlier value of the unit before it does not count
        UnitSurvey since = unit(swapped, "s/B/u2");
        assertTrue(since.reference().orElseThrow() instanceof Reference.Mates, since.reason());
        assertTrue(
                since.remarks().getFirst().contains("a unit fitted since"),
                since.remarks().toString());
        Survey elsewhere = survey(bank, "position,serial,capacitance\ns/A/u1,TF-3,12.6\n");
        assertEquals(Optional.of("wrong-serial"), unit(elsewhere, "s/A/u1").finding());
        Survey twin = survey(bank, "position,serial,capacitance\ns/A/u1,TF-1,12.6\ns/C/u1,TF-1,12.6\n");
        assertEquals(Optional.of("serial-twice"), unit(twin, "s/A/u1").finding());
        assertEquals(Optional.of("serial-twice"), unit(twin, "s/C/u1").finding());
    }

    @Test
    void valuesThatFitEachOthersUnitAreASwap() {
        Bank bank = sketch(2)
                .known("s/A/u1", "", 12.6e-6)
                .known("s/A/u2", "", 13.6e-6)
                .known("s/B/u1", "", 12.6e-6)
                .known("s/B/u2", "", 12.7e-6)
                .build();
        Survey survey = survey(bank, "position,capacitance\ns/A/u1,13.61\ns/A/u2,12.6\ns/B/u1,12.6\ns/B/u2,12.7\n");
        assertEquals(Optional.of("positions-swapped"), unit(survey, "s/A/u1").finding());
        assertEquals(Optional.of("positions-swapped"), unit(survey, "s/A/u2").finding());
        assertEquals(UnitVerdict.HEALTHY, unit(survey, "s/B/u1").verdict());
    }

    @Test
    void aMeterThatIsOffForAllIsTakenOutAndSaid() {
        Bank bank = sketch(2)
                .known("s/A/u1", "", 12.6e-6)
                .known("s/A/u2", "", 12.8e-6)
                .known("s/B/u1", "", 12.7e-6)
                .known("s/B/u2", "", 12.9e-6)
                .build();
        Survey survey =
                survey(bank, "position,capacitance\ns/A/u1,12.852\ns/A/u2,13.056\ns/B/u1,12.954\ns/B/u2,13.158\n");
        assertEquals(4, survey.with(UnitVerdict.HEALTHY).size());
        assertTrue(
                survey.findings().getFirst().contains("2.0 % above"),
                survey.findings().toString());
    }

    @Test
    void aNameplateForTheOtherFrequencyIsNamed() {
        StringBuilder table = new StringBuilder("position,capacitance\n");
        for (String at : List.of("A/u1", "A/u2", "B/u1", "B/u2", "C/u1", "C/u2")) {
            table.append("s/").append(at).append(',').append(15.4).append('\n');
        }
        Survey survey = survey(sketch(2).build(), table.toString());
        assertEquals(6, survey.with(UnitVerdict.HEALTHY).size(), survey.units().toString());
        assertTrue(
                survey.findings().getFirst().contains("as if kvar were for 50 Hz"),
                survey.findings().toString());
    }

    @Test
    void aWholeColumnInTheWrongUnitIsNotTakenForHealthy() {
        Survey survey = survey(
                sketch(2).build(),
                "position,capacitance (nF)\ns/A/u1,12.7\ns/A/u2,12.7\ns/B/u1,12.8\ns/B/u2,12.7\ns/C/u1,12.6\n");
        assertEquals(5, survey.with(UnitVerdict.MEASURE_AGAIN).size());
        assertEquals(Optional.of("wrong-range"), unit(survey, "s/A/u1").finding());
    }

    @Test
    void resistorInsulationAndFuse() {
        Bank bank = sketch(2).known("s/A/u1", "", 12.7e-6).build();
        Survey survey = survey(bank, """
                position,capacitance,resistance,insulation,fuse
                s/A/u1,12.7,4.1,20000,2.0
                s/A/u2,12.7,OL,20000,2.1
                s/B/u1,12.7,0.0000,20000,2.05
                s/B/u2,12.7,4.7,20000,2.5
                s/C/u1,12.7,4.1,1200,OL
                s/C/u2,12.7,90,20000,2.02
                """);
        assertEquals(UnitVerdict.HEALTHY, unit(survey, "s/A/u1").verdict());
        assertEquals(UnitVerdict.REPLACE, unit(survey, "s/A/u2").verdict());
        assertEquals(Optional.of("resistor-open"), unit(survey, "s/A/u2").finding());
        assertTrue(unit(survey, "s/A/u2").reason().contains("treat as charged"));
        assertEquals(Optional.of("resistance-shorted"), unit(survey, "s/B/u1").finding());
        assertEquals(UnitVerdict.MEASURE_AGAIN, unit(survey, "s/B/u1").verdict());
        // 2.5 against a median of 2.05 is 22 % apart; 4.7 MΩ is 15 % above the nameplate and slower than 50 V in 5 min
        assertEquals(UnitVerdict.WATCH, unit(survey, "s/B/u2").verdict());
        assertTrue(unit(survey, "s/B/u2").checks().stream()
                .anyMatch(c -> c.subject().contains("fuse") && c.verdict() == Verdict.WARN));
        assertEquals(UnitVerdict.WATCH, unit(survey, "s/C/u1").verdict());
        assertEquals(Optional.of("fuse-open"), unit(survey, "s/C/u1").finding());
        assertEquals(UnitVerdict.REPLACE, unit(survey, "s/C/u2").verdict());
        for (Check check : survey.checks()) {
            assertTrue(check.basis().id().startsWith("SRV-"), check.toString());
        }
    }

    /** Kilohms written into a column of megohms must not condemn the whole bank. */
    @Test
    void aResistanceInTheWrongUnitIsMeasuredAgain() {
        Survey survey =
                survey(sketch(2).build(), "position,capacitance,resistance\ns/A/u1,12.7,4100\ns/A/u2,12.7,0.0041\n");
        assertEquals(2, survey.with(UnitVerdict.MEASURE_AGAIN).size());
        assertEquals(Optional.of("wrong-range"), unit(survey, "s/A/u1").finding());
        assertTrue(
                unit(survey, "s/A/u1").reason().contains("treat the unit as charged"),
                unit(survey, "s/A/u1").reason());
    }

    @Test
    void aResistanceReadingAloneStillSaysWhatItSays() {
        Survey survey = survey(sketch(2).build(), "position,resistance\ns/A/u1,OL\ns/A/u2,4.1\n");
        assertEquals(UnitVerdict.REPLACE, unit(survey, "s/A/u1").verdict());
        assertEquals(UnitVerdict.NOT_MEASURED, unit(survey, "s/A/u2").verdict());
    }

    /** A delta can with one leg open reads C/2 across it and C across the others. */
    @Test
    void aThreePhaseUnitIsSolvedFromItsThreePairs() {
        UnitType can = BankSketch.type(
                "can", 30e3, 690, 60, PLUS_TEN, 0, 0, false, Optional.empty(), Optional.of(InternalConnection.DELTA));
        Bank bank = new BankSketch()
                .system(690, 60, SystemGrounding.SOLID)
                .stage("s", Connection.DELTA, new LegLayout(1, 1, 2), can)
                .build();
        Survey survey = survey(bank, """
                position,terminals,capacitance
                s/u1,A-B,88.0
                s/u1,B-C,88.1
                s/u1,C-A,87.9
                s/u2,A-B,29.3
                s/u2,B-C,58.6
                s/u2,C-A,58.6
                """);
        assertEquals(
                UnitVerdict.HEALTHY,
                unit(survey, "s/u1").verdict(),
                unit(survey, "s/u1").reason());
        UnitSurvey open = unit(survey, "s/u2");
        assertEquals(UnitVerdict.MEASURE_AGAIN, open.verdict());
        assertEquals(Optional.of("leads-open"), open.finding());
        assertTrue(open.reason().contains("Leg AB"), open.reason());
    }

    @Test
    void legsPutTheirUnitsTogether() {
        Bank bank = new BankSketch()
                .stage("s", Connection.WYE_GROUNDED, new LegLayout(2, 2, 1), TYPE)
                .build();
        Survey survey =
                survey(bank, "position,capacitance\ns/A/s1g1,12.8\ns/A/s1g2,12.8\ns/A/s2g1,12.8\ns/A/s2g2,12.8\n");
        LegSurvey leg = survey.legs().getFirst();
        assertEquals(12.8e-6, leg.capacitanceFarads(), 1e-12);
        assertEquals(0, leg.assumed());
    }

    @Test
    void theTextKeepsToThePageAndSaysEveryVerdict() {
        Bank bank = sketch(2).known("s/A/u1", "TF-1", 12.7e-6).build();
        Survey survey = survey(
                bank,
                "position;capacitance;resistance;odd\ns/A/u1;17,0;4,1;x\ns/A/u2;0,01;4,1;\ns/B/u1;12,8;4,8;\ns/Z;1;1;\n");
        String text = SurveyText.of(survey);
        text.lines().forEach(line -> assertTrue(line.length() <= 100, line));
        for (String word :
                List.of("REPLACE", "MEASURE AGAIN", "WATCH", "NOT USED", "row 5", "LEGS", "COLUMNS", "decimal comma")) {
            assertTrue(text.contains(word), word + " is missing in\n" + text);
        }
        assertTrue(!text.toLowerCase(Locale.ROOT).contains("safe"), text);
    }

    @Test
    void theJsonHasTheFieldsThatOthersRelyOn() {
        Bank bank = sketch(2).known("s/A/u1", "TF-1", 12.7e-6).build();
        Json.Obj json = (Json.Obj) SurveyJson.of(survey(bank, "position,capacitance\ns/A/u1,17.0\n"));
        Json.Obj unit = (Json.Obj) ((Json.Arr) json.get("units")).items().getFirst();
        for (String field : List.of(
                "position",
                "serial",
                "capacitanceFarads",
                "referenceFarads",
                "ratio",
                "verdict",
                "probability",
                "sectionsShorted",
                "elementsOut",
                "reason")) {
            assertTrue(unit.members().containsKey(field), field);
        }
        assertEquals(Json.of("replace"), unit.get("verdict"));
        assertEquals(Json.parse(json.print()), json);
    }
}
