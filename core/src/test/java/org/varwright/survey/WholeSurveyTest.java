package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;
import org.varwright.basis.Verdict;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;

/** Units read together, several instruments, several visits, case temperature, currents. */
class WholeSurveyTest {
    private static final UnitType TYPE =
            BankSketch.type("U300", 300e3, 7960, 60, new Tolerance(0.0, 0.10), 4, 12, false, Optional.empty());

    private static BankSketch sketch(int groups, int units) {
        return new BankSketch().stage("s", Connection.WYE_UNGROUNDED, new LegLayout(1, groups, units), TYPE);
    }

    private static Readings read(Bank bank, String table) {
        return ReadingsFile.read(bank, "r.csv", table.getBytes(StandardCharsets.UTF_8));
    }

    private static Survey survey(Bank bank, String table) {
        return Survey.of(bank, read(bank, table), SurveySettings.of(bank.standard(), 0.01));
    }

    private static UnitSurvey unit(Survey survey, String position) {
        return survey.unit(position).orElseThrow();
    }

    private static double micro(UnitSurvey unit) {
        return 1e6 * unit.capacitanceFarads().orElseThrow();
    }

    // ---- read together
    //
    //   line --+--[u1]--+--[u2]--+--[u3]--+-- neutral end of the leg; three readings of two units each
    @Test
    void threePairsTellThreeUnits() {
        Survey survey =
                survey(sketch(1, 3).build(), "position,capacitance\ns/A/u1+u2,25.4\ns/A/u2+u3,29.6\ns/A/u1+u3,29.6\n");
        assertEquals(12.7, micro(unit(survey, "s/A/u1")), 1e-9);
        assertEquals(12.7, micro(unit(survey, "s/A/u2")), 1e-9);
        assertEquals(16.9, micro(unit(survey, "s/A/u3")), 1e-9);
        assertEquals(UnitVerdict.REPLACE, unit(survey, "s/A/u3").verdict());
        assertEquals(UnitVerdict.HEALTHY, unit(survey, "s/A/u1").verdict());
        assertTrue(survey.groups().stream().allMatch(GroupSurvey::solved));
    }

    @Test
    void whatIsNotDeterminedHasBoundsAndTheFewestReadingsThatSettleIt() {
        Survey survey = survey(sketch(1, 4).build(), "position,capacitance\ns/A,50.8\ns/A/u1,12.7\ns/A/u2+u3,25.4\n");
        assertEquals(12.7, micro(unit(survey, "s/A/u1")), 1e-9);
        assertEquals(12.7, micro(unit(survey, "s/A/u4")), 1e-9);
        assertEquals(UnitVerdict.NOT_MEASURED, unit(survey, "s/A/u2").verdict());
        GroupSurvey group = survey.groups().getFirst();
        assertFalse(group.solved());
        assertEquals(
                List.of("s/A/u2", "s/A/u3"),
                group.bounds().stream().map(GroupSurvey.Bounds::position).toList());
        assertEquals(0.0, group.bounds().getFirst().low());
        assertEquals(25.4e-6, group.bounds().getFirst().high(), 1e-12);
        assertEquals(List.of("s/A/u2"), group.next());
    }

    //   line --[g1: u1 u2]--[g2: u1 u2]-- : the leg and one group tell the other
    @Test
    void aLegInSeriesTellsTheGroupThatWasNotRead() {
        // g1 = 25.4, g2 = 12.7 + 0 µF (u2 open): the leg 1/(1/25.4 + 1/12.7) = 8.46667 µF
        Survey survey =
                survey(sketch(2, 2).build(), "position,capacitance\ns/A,8.466667\ns/A/g1,25.4\ns/A/g2u1,12.7\n");
        UnitSurvey open = unit(survey, "s/A/g2u2");
        assertEquals(0.0, micro(open), 1e-5);
        assertEquals(UnitVerdict.MEASURE_AGAIN, open.verdict());
        assertEquals(Optional.of("leads-open"), open.finding());
    }

    @Test
    void aGroupOffItsReferenceSaysWhatMayBeWrongInIt() {
        BankSketch sketch = sketch(1, 3);
        for (String unit : List.of("s/A/u1", "s/A/u2", "s/A/u3")) {
            sketch.known(unit, "", 12.7e-6);
        }
        // one of three has lost one of four sections: (2 + 4/3)/3 = 1.1111
        GroupSurvey shorted = survey(sketch.build(), "position,capacitance\ns/A,42.33\n")
                .groups()
                .getFirst();
        assertEquals(UnitVerdict.WATCH, shorted.verdict());
        assertTrue(shorted.reason().contains("1 of 4 sections shorted"), shorted.reason());
        assertEquals(2, shorted.next().size());
        GroupSurvey out = survey(sketch.build(), "position,capacitance\ns/A,25.4\n")
                .groups()
                .getFirst();
        assertTrue(out.reason().contains("the fuse had operated"), out.reason());
        GroupSurvey joined = survey(sketch.build(), "position,capacitance\ns/A,114.3\n")
                .groups()
                .getFirst();
        assertEquals(UnitVerdict.MEASURE_AGAIN, joined.verdict());
        assertTrue(joined.reason().contains("all three legs"), joined.reason());
        GroupSurvey healthy = survey(sketch.build(), "position,capacitance\ns/A,38.1\n")
                .groups()
                .getFirst();
        assertEquals(UnitVerdict.HEALTHY, healthy.verdict());
    }

    @Test
    void aClosedDeltaIsNamed() {
        Bank bank = new BankSketch()
                .stage("s", Connection.DELTA, new LegLayout(1, 1, 2), TYPE)
                .known("s/AB/u1", "", 12.7e-6)
                .known("s/AB/u2", "", 12.7e-6)
                .build();
        GroupSurvey group =
                survey(bank, "position,capacitance\ns/AB,38.1\n").groups().getFirst();
        assertEquals(UnitVerdict.MEASURE_AGAIN, group.verdict());
        assertTrue(group.reason().contains("open the delta"), group.reason());
    }

    @Test
    void readingsThatContradictEachOtherSolveNothing() {
        Survey survey = survey(sketch(1, 2).build(), "position,capacitance\ns/A,25.4\ns/A,31.0\ns/A/u1,12.7\n");
        assertEquals(UnitVerdict.NOT_MEASURED, unit(survey, "s/A/u2").verdict());
        assertTrue(survey.groups().stream().allMatch(group -> group.verdict() == UnitVerdict.MEASURE_AGAIN));
        // less than nothing would be left for the other unit
        Survey less = survey(sketch(1, 2).build(), "position,capacitance\ns/A,10.0\ns/A/u1,12.7\n");
        assertEquals(UnitVerdict.NOT_MEASURED, unit(less, "s/A/u2").verdict());
    }

    @Test
    void valuesAtThePlaceTheyDoNotBelongToAreReported() {
        Readings readings = read(
                sketch(1, 2).build(),
                "position,capacitance,resistance,inductance,contact\ns/A,25.4,4.1,,\ns/A/u1,,,60,\ns/A/u1+s/B/u1,25.4,,,\nq/A,,,,40\n");
        assertEquals(1, readings.spots().size());
        assertEquals(
                List.of(
                        Message.CELL_WRONG_PLACE,
                        Message.CELL_WRONG_PLACE,
                        Message.POSITION_UNKNOWN,
                        Message.POSITION_UNKNOWN),
                readings.problems().stream().map(Problem::message).toList());
        assertEquals(
                List.of("row 2", "row 3", "row 4", "row 5"),
                readings.problems().stream().map(p -> p.place().path()).toList());
    }

    // ---- instruments
    @Test
    void twoInstrumentsAreBroughtOntoOneScale() {
        StringBuilder table = new StringBuilder("position,capacitance,instrument\n");
        String[] legs = {"A", "B", "C"};
        for (String leg : legs) {
            table.append("s/").append(leg).append("/u1,12.70,M-1\n");
            table.append("s/").append(leg).append("/u2,12.72,M-1\n");
            table.append("s/").append(leg).append("/u1,12.89,M-2\n");
        }
        table.append("s/A/u3,12.88,M-2\n");
        Survey survey = survey(sketch(1, 3).build(), table.toString());
        assertEquals(12.69, micro(unit(survey, "s/A/u3")), 0.01);
        assertTrue(
                survey.findings().stream().anyMatch(f -> f.startsWith("M-2 reads 1.5 % above M-1, within")),
                survey.findings().toString());
        assertEquals(12.70, micro(unit(survey, "s/B/u1")), 1e-3);
    }

    @Test
    void instrumentsFurtherApartThanTheirLimitsAreNamedAndLeft() {
        StringBuilder table = new StringBuilder("position,capacitance,instrument\n");
        for (String leg : List.of("A", "B", "C")) {
            table.append("s/")
                    .append(leg)
                    .append("/u1,12.70,M-1\ns/")
                    .append(leg)
                    .append("/u2,12.70,M-1\n");
            table.append("s/").append(leg).append("/u1,13.46,M-2\n");
        }
        Survey survey = survey(sketch(1, 2).build(), table.toString());
        assertTrue(
                survey.findings().stream().anyMatch(f -> f.contains("more than their limits of error allow")),
                survey.findings().toString());
        assertEquals(Optional.of("readings-disagree"), unit(survey, "s/A/u1").finding());
    }

    /** Source: JCGM 100:2008, 5.1. Two instruments of ±1 % and ±0.5 %: the weights are 1 to 4. */
    @Test
    void aBetterInstrumentCountsForMore() {
        Bank bank = sketch(1, 1).build();
        Readings readings = read(bank, "position,capacitance,instrument\ns/A,12.60,M-1\ns/A,12.70,M-2\n");
        Survey survey = Survey.of(bank, readings, SurveySettings.of(bank.standard(), 0.01, Map.of("m-2", 0.005)));
        double w1 = 1.0 / Math.pow(0.01 * 12.60, 2.0);
        double w2 = 1.0 / Math.pow(0.005 * 12.70, 2.0);
        assertEquals((w1 * 12.60 + w2 * 12.70) / (w1 + w2), micro(unit(survey, "s/A")), 1e-6);
    }

    // ---- visits
    private static String visit(String day, double factor, double u3) {
        StringBuilder table = new StringBuilder("position,capacitance,taken\n");
        for (String leg : List.of("A", "B", "C")) {
            for (int u = 1; u <= 3; u++) {
                double micro = leg.equals("A") && u == 3 ? u3 : 12.60 + 0.05 * u;
                table.append("s/").append(leg).append("/u").append(u).append(',');
                table.append(Math.round(1e4 * micro * factor) / 1e4)
                        .append(',')
                        .append(day)
                        .append('\n');
            }
        }
        return table.toString();
    }

    @Test
    void anEarlierVisitIsTheBaselineAndDriftBesideTheMatesIsSaid() {
        Bank bank = sketch(1, 3).build();
        SurveySettings settings = SurveySettings.of(bank.standard(), 0.005);
        List<Readings> earlier =
                List.of(read(bank, visit("2022-05-10", 1.0, 12.75)), read(bank, visit("2024-05-10", 1.003, 12.75)));
        // everything reads 0.4 % higher today; one unit 1.2 % on top of it
        Survey survey = Survey.of(bank, read(bank, visit("2026-05-10", 1.004, 12.75 * 1.012)), settings, earlier);
        UnitSurvey drifting = unit(survey, "s/A/u3");
        assertEquals(UnitVerdict.WATCH, drifting.verdict(), drifting.reason());
        assertTrue(drifting.reference().orElseThrow() instanceof Reference.Earlier);
        Trend trend = survey.trends().stream()
                .filter(t -> t.position().equals("s/A/u3"))
                .findFirst()
                .orElseThrow();
        assertTrue(trend.drifts());
        assertEquals(3, trend.points().size());
        assertEquals(0.012, trend.change(), 1e-4);
        assertEquals(0.001, trend.matesChange(), 2e-4);
        assertEquals(0.006, trend.perYear().orElseThrow(), 1e-4);
        assertTrue(trend.sentence().contains("up 1.2 % beside what all units changed"), trend.sentence());
        assertEquals(8, survey.trends().stream().filter(t -> !t.drifts()).count());
        assertTrue(survey.units().stream()
                .filter(u -> !u.position().name().equals("s/A/u3"))
                .allMatch(u -> u.verdict() == UnitVerdict.HEALTHY));
    }

    @Test
    void anotherUnitAtThePlaceHasNoPast() {
        Bank bank = sketch(1, 1).build();
        SurveySettings settings = SurveySettings.of(bank.standard(), 0.01);
        Readings before = read(bank, "position,serial,capacitance\ns/A,X-1,12.6\n");
        Readings now = read(bank, "position,serial,capacitance\ns/A,X-2,13.2\n");
        Survey survey = Survey.of(bank, now, settings, List.of(before));
        assertEquals(List.of(), survey.trends());
        assertFalse(unit(survey, "s/A").reference().orElseThrow().isOwn());
    }

    @Test
    void daysAreCountedByTheCalendar() {
        assertEquals(
                1, Days.of("2024-03-01").orElseThrow() - Days.of("2024-02-29").orElseThrow());
        assertEquals(
                1,
                Days.of("2026-03-01").orElseThrow()
                        - Days.of("2026-02-28T10:00").orElseThrow());
        assertEquals(
                366, Days.of("2025-01-01").orElseThrow() - Days.of("2024-01-01").orElseThrow());
        assertEquals(
                36524,
                Days.of("2000-03-01").orElseThrow() - Days.of("1900-03-01").orElseThrow() - 1);
        assertTrue(Days.of("10.5.2026").isEmpty());
    }

    // ---- in service
    /** Source: TM 5-683 / MO-116 (1995), ch. 2: investigate above 55 °C, never above 65 °C. */
    @Test
    void caseTemperatures() {
        Survey survey = survey(sketch(1, 3).build(), "position,case temperature\ns/A/u1,55\ns/A/u2,56\ns/A/u3,66\n");
        List<Verdict> verdicts = new ArrayList<>();
        for (String name : List.of("s/A/u1", "s/A/u2", "s/A/u3")) {
            verdicts.add(unit(survey, name).checks().getFirst().verdict());
        }
        assertEquals(List.of(Verdict.PASS, Verdict.WARN, Verdict.FAIL), verdicts);
        assertTrue(unit(survey, "s/A/u3").reason().contains("never reach"));
        assertFalse(survey.isGood());
    }

    @Test
    void currentsShareAsTheCapacitancesDo() {
        String table = "position,current\ns/A,30.0\ns/B,30.1\ns/C,26.0\n";
        List<Verdict> verdicts = survey(sketch(1, 3).build(), table).spots().stream()
                .map(SpotSurvey::verdict)
                .toList();
        assertEquals(List.of(Verdict.WARN, Verdict.WARN, Verdict.WARN), verdicts);
        // C has one unit less by the readings: its current is what it should be
        String out = """
                position,capacitance,current
                s/A,38.1,30
                s/B,38.1,30.1
                s/C,25.4,20.0
                s/A/u1,12.7,
                s/A/u2,12.7,
                s/B/u1,12.7,
                s/B/u2,12.7,
                s/C/u1,12.7,
                s/C/u2,12.7,
                """;
        assertEquals(3, survey(sketch(1, 3).build(), out).spots().size());
        assertEquals(
                Verdict.WARN,
                survey(sketch(1, 3).build(), "position,current\ns/A,30.0\n")
                        .spots()
                        .getFirst()
                        .verdict());
    }

    /** Source: IEC 60871-1 (from memory, unchecked): phases within 1.08. */
    @Test
    void theStageInNumbers() {
        Survey survey = survey(sketch(1, 1).build(), "position,capacitance\ns/A,12.6\ns/B,13.7\ns/C,12.6\n");
        StageSurvey stage = survey.stages().getFirst();
        assertEquals(13.7 / 12.6, stage.spread(), 1e-9);
        assertEquals(Verdict.WARN, stage.check().verdict());
        double omega = 2.0 * Math.PI * 60.0;
        assertEquals(omega * 38.9e-6 * Math.pow(13.8e3, 2.0) / 3.0, stage.vars(), 1.0);
    }
}
