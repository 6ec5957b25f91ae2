package org.varwright.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.energize.BusVolts;
import org.varwright.energize.Energize;
import org.varwright.energize.MeasuredValue;
import org.varwright.energize.Uncertainty;
import org.varwright.fit.Fit;
import org.varwright.fit.FitInput;
import org.varwright.fit.FitOptions;
import org.varwright.fit.FitResult;
import org.varwright.network.Capacitances;
import org.varwright.network.Supply;
import org.varwright.plot.Bars;
import org.varwright.plot.Chart;
import org.varwright.plot.Dash;
import org.varwright.plot.Dial;
import org.varwright.plot.Phasor;
import org.varwright.plot.PhasorDiagram;
import org.varwright.plot.Point;
import org.varwright.plot.Width;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Complex;
import org.varwright.survey.Survey;
import org.varwright.survey.UnitSurvey;
import org.varwright.survey.UnitVerdict;
import org.varwright.svg.Box;
import org.varwright.unbalance.Assumptions;
import org.varwright.unbalance.Locate;
import org.varwright.unbalance.Locator;
import org.varwright.unbalance.Sighting;
import org.varwright.unbalance.Unbalance;

/** Pictures of the demonstration banks, whose values are invented: what is drawn is what was computed. */
class PictureTest {
    @ParameterizedTest
    @ValueSource(strings = {"corbel-reach-3", "hallin-moor-2", "lantern-mesa-1"})
    void theMapHasEveryUnitOnceAndNoWordsOverWords(String name) {
        Survey survey = DemoBanks.survey(name);
        for (Width width : Width.values()) {
            SurveyMap.Drawn drawn = SurveyMap.drawn(survey, survey.bank().stages(), width);
            String svg = drawn.svg();
            for (UnitSurvey unit : survey.units()) {
                String start = "<g><title>" + unit.position().name()
                        + unit.serial().map(s -> " (" + s + ")").orElse("") + ": "
                        + unit.verdict().words() + ".";
                int at = svg.indexOf(start);
                assertTrue(at >= 0 && at == svg.lastIndexOf(start), start);
                String cell = svg.substring(at, svg.indexOf("</g>", at));
                assertTrue(cell.contains(">" + VerdictMark.letter(unit.verdict()) + "</text>"), cell);
                assertTrue(
                        cell.contains(">" + Deviation.percent(Deviation.of(unit).orElseThrow()) + "</text>"), cell);
            }
            assertEquals(List.of(), overlaps(drawn), name + " " + width);
        }
    }

    private static List<String> overlaps(SurveyMap.Drawn drawn) {
        List<Box> words = drawn.sheet().words();
        Box sheet = new Box(0.0, 0.0, drawn.width().units(), drawn.height());
        List<String> found = new ArrayList<>();
        for (int i = 0; i < words.size(); i++) {
            Box box = words.get(i).grown(-0.05);
            if (!sheet.holds(box)) {
                found.add(box + " is off the sheet");
            }
            for (int j = i + 1; j < words.size(); j++) {
                if (box.overlaps(words.get(j).grown(-0.05))) {
                    found.add(box + " lies over " + words.get(j));
                }
            }
        }
        return found;
    }

    @Test
    void deviationsInWords() {
        assertEquals("0.00", Deviation.percent(-0.00001));
        assertEquals("+0.42", Deviation.percent(0.00421));
        assertEquals("\u221212.3", Deviation.percent(-0.1234));
        assertEquals("\u00d71000", Deviation.percent(999.0));
        assertEquals("\u2212100.0", Deviation.percent(-1.0));
    }

    /** Every unit with a reading is one bar, in rising order; each verdict has a fill of its own. */
    @ParameterizedTest
    @ValueSource(strings = {"corbel-reach-3", "hallin-moor-2", "lantern-mesa-1"})
    void barsRise(String name) {
        Survey survey = DemoBanks.survey(name);
        Chart chart = RankedDeviations.of(survey);
        List<Point> bars = new ArrayList<>();
        for (Bars some : chart.panels().getFirst().bars()) {
            bars.addAll(some.points());
        }
        bars.sort((a, b) -> Double.compare(a.x(), b.x()));
        assertEquals(
                survey.units().stream().filter(u -> Deviation.of(u).isPresent()).count(), bars.size());
        for (int i = 1; i < bars.size(); i++) {
            assertTrue(bars.get(i).y() >= bars.get(i - 1).y(), "bar " + i);
            assertEquals(i + 1.0, bars.get(i).x());
        }
        for (UnitSurvey unit : survey.with(UnitVerdict.REPLACE)) {
            assertTrue(
                    chart.panels().getFirst().callouts().stream()
                            .anyMatch(c ->
                                    c.text().startsWith("R " + unit.position().name() + " ")),
                    unit.position().name());
        }
    }

    /**
     * An ungrounded wye that loses leg A altogether: the neutral goes to the middle between B and C, half the phase voltage away from where it was, and
     * the arrows of B and C still end at the terminals. First principles.
     */
    @Test
    void aLostLegMovesTheNeutralByHalfThePhaseVoltage() {
        Bank bank = DemoBanks.bank("corbel-reach-3");
        Supply supply = Supply.nominal(bank.system());
        UnitPosition out = bank.requirePosition("stage 1/A", Place.NOWHERE);
        PhasorDiagram diagram = UnbalancePhasors.of(
                Unbalance.ofOut(bank, Map.of(), supply, List.of(out)), Capacitances.nameplate(bank));
        Dial legs = diagram.dials().getFirst();
        double phase = bank.system().nominalVolts() / Math.sqrt(3.0);
        Phasor neutral = phasor(legs, "neutral");
        assertEquals(phase / 2.0, neutral.value().magnitude(), 1e-6 * phase);
        assertEquals(180.0, Math.abs(neutral.value().degrees()), 1e-6);
        for (String leg : List.of("B", "C")) {
            Complex gap =
                    phasor(legs, leg).end().minus(phasor(legs, leg + " healthy").end());
            // to what the reactor ahead of the stage drops less now
            assertEquals(0.0, gap.magnitude(), 1e-4 * phase);
        }
    }

    private static Phasor phasor(Dial dial, String label) {
        return dial.phasors().stream()
                .filter(p -> p.label().equals(label))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(strings = {"corbel-reach-3", "hallin-moor-2", "lantern-mesa-1"})
    void sensorsAreDrawnAsTheyWereFound(String name) {
        Survey survey = DemoBanks.survey(name);
        FitResult fit = Fit.plan(FitInput.from(survey, survey.bank().spares(), FitOptions.USUAL));
        PhasorDiagram diagram = FitPhasors.of(fit);
        List<Complex> full = new ArrayList<>();
        diagram.dials()
                .forEach(d ->
                        d.phasors().stream().filter(p -> p.dash() == Dash.SOLID).forEach(p -> full.add(p.value())));
        assertEquals(fit.after().sensors().stream().map(s -> s.primary()).toList(), full);
    }

    @Test
    void aMeasuredCurrentIsDrawnAtTheAngleExpectedAndSaysWhetherItIsOutside() {
        Bank bank = DemoBanks.bank("corbel-reach-3");
        Stage stage = bank.stages().getFirst();
        Energize energize = Energize.of(
                bank,
                Map.of(),
                BusVolts.balanced(bank.system().nominalVolts()),
                Uncertainty.USUAL,
                List.of(MeasuredValue.parse(stage.name() + "/A=10 A")));
        Dial lines = EnergizePhasors.of(energize).dials().getFirst();
        Phasor measured = phasor(lines, "A measured, OUTSIDE");
        assertEquals(10.0, measured.value().magnitude(), 1e-12);
        assertEquals(
                phasor(lines, "A expected").value().degrees(), measured.value().degrees(), 1e-9);
        // a capacitor's current leads by a quarter cycle
        assertEquals(90.0, phasor(lines, "A expected").value().degrees(), 0.5);
    }

    @Test
    void whatWasReadStandsBesideWhatWouldBe() {
        Bank bank = DemoBanks.bank("lantern-mesa-1");
        Supply supply = Supply.nominal(bank.system());
        UnitPosition out = bank.requirePosition("rack/A1/g1u1", Place.NOWHERE);
        Unbalance failed = Unbalance.ofOut(bank, Map.of(), supply, List.of(out));
        Complex secondary = failed.failures()
                .getFirst()
                .effect()
                .orElseThrow()
                .sensors()
                .getFirst()
                .secondary()
                .orElseThrow();
        Sighting sighting = Sighting.of("rack neutral-current", secondary.magnitude());
        Locate locate = Locator.locate(bank, Map.of(), supply, Assumptions.USUAL, sighting);
        PhasorDiagram diagram = LocatePhasors.of(locate, Capacitances.known(bank), supply);
        Dial sensor = diagram.dials().getFirst();
        assertEquals(secondary.magnitude(), sensor.circles().getFirst().radius(), 1e-12);
        assertEquals(
                locate.candidates().getFirst().sensor().magnitude() * locate.ratio(),
                sensor.phasors().getFirst().value().magnitude(),
                1e-9);
        assertTrue(
                diagram.caption()
                        .startsWith("1: " + locate.candidates().getFirst().words()),
                diagram.caption());
        assertTrue(diagram.dials().size() == 2, "leg voltages of the most probable");
    }

    @Test
    void theTableOfAStageThatIsNotThereIsRefused() {
        Bank bank = DemoBanks.bank("lantern-mesa-1");
        Unbalance table = Unbalance.of(bank, Map.of(), Supply.nominal(bank.system()), Assumptions.USUAL);
        VarwrightException refused =
                assertThrows(VarwrightException.class, () -> FailureChart.of(table, Optional.of("stage 9")));
        assertTrue(refused.problems().getFirst().text().contains("it has rack"), refused.toString());
        assertEquals(2, FailureChart.of(table, Optional.of("rack")).panels().size());
    }
}
