package org.varwright.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.varwright.quantity.Dimension;
import org.w3c.dom.Document;

class ChartTest {
    private static final Axis TIME = Axis.linear("time", Dimension.TIME);
    private static final Axis VOLTS = Axis.linear("voltage", Dimension.VOLTAGE);

    @ParameterizedTest
    @EnumSource
    void samplesKeepTheLaws(Width width) {
        for (Chart chart : List.of(Samples.decay(), Samples.inrush(5_000), Samples.fuse(), Samples.scan())) {
            Drawings.check(chart.title(), ChartPainter.draw(chart, width), ChartPainter.draw(chart, width));
        }
    }

    @Test
    void everythingNamedIsWrittenSomewhere() {
        String words =
                String.join(" ", Drawings.texts(Drawings.parsed(Samples.decay().svg(Width.PHONE))));
        for (String part :
                List.of("as rated", "slowest", "IEEE Std 18", "5 min", "tolerances", "permission to touch")) {
            assertTrue(words.contains(part), part + " in " + words);
        }
    }

    @Test
    void textIsEscaped() {
        String evil = "</text><script>alert('x')</script>&amp; \"quoted\" ]]>";
        Chart chart = Chart.of(
                        evil,
                        new Axis(evil, Axis.Scale.LINEAR, TIME.dimension(), "", TIME.from(), TIME.to(), false),
                        Panel.of(Axis.linear(evil, evil))
                                .with(Curve.of(evil, new double[] {0.0, 1.0}, new double[] {0.0, 1.0}))
                                .with(Limit.across(0.5, evil))
                                .with(Band.across(0.1, 0.2, evil))
                                .with(Callout.at(0.5, 0.5, evil)))
                .caption(evil);
        Document document = Drawings.parsed(chart.svg(Width.PAGE));
        assertEquals(0, document.getElementsByTagName("script").getLength());
        assertTrue(String.join("", Drawings.texts(document)).replace(" ", "").contains("<script>alert('x')</script>"));
        assertEquals(evil, document.getElementsByTagName("title").item(0).getTextContent());
    }

    @Test
    void darkScreensGetTheirOwnColoursAndPaperDoesNot() {
        String svg = Samples.scan().svg(Width.PAGE);
        assertTrue(svg.contains("@media screen and (prefers-color-scheme:dark){.vf-paper{fill:"), svg);
        assertTrue(svg.contains("<rect x=\"0\" y=\"0\" width=\"500\""), svg);
    }

    @Test
    void curvesDifferWithoutColour() {
        Panel panel = Panel.of(VOLTS);
        for (int i = 0; i < 12; i++) {
            panel = panel.with(Curve.of("curve " + i, new double[] {0.0, 1.0}, new double[] {i, i + 1.0}));
        }
        List<Styled> styled = Styled.of(Chart.of("", TIME, panel)).getFirst();
        assertEquals(
                12,
                styled.stream()
                        .map(s -> s.dash().pattern() + s.marker())
                        .distinct()
                        .count());
    }

    @Test
    void aNameKeepsItsPatternFromPanelToPanel() {
        List<List<Styled>> styled = Styled.of(Samples.inrush(100));
        assertEquals(
                styled.getFirst().getFirst().dash(), styled.getLast().getFirst().dash());
        assertFalse(styled.getFirst().getFirst().dash()
                == styled.getFirst().getLast().dash());
    }

    @Test
    void gapsStayGaps() {
        double nan = Double.NaN;
        Chart chart = Chart.of(
                "", TIME, Panel.of(VOLTS).with(Curve.of("a", new double[] {0.0, 1.0, 2.0, 3.0, 4.0}, new double[] {
                    0.0, 1.0, nan, 1.0, 0.0
                })));
        Ruler x = Ruler.of(TIME, new Ticks.Ends(0.0, 4.0), 0.0, 400.0);
        Ruler y = Ruler.of(VOLTS, new Ticks.Ends(0.0, 1.0), 100.0, 0.0);
        Trace trace = Trace.of(
                chart.panels().getFirst().curves().getFirst().points(),
                x,
                y,
                new org.varwright.svg.Box(0.0, 0.0, 400.0, 100.0));
        assertEquals(
                List.of(
                        List.of(new Point(0.0, 100.0), new Point(100.0, 0.0)),
                        List.of(new Point(300.0, 0.0), new Point(400.0, 100.0))),
                trace.lines());
    }

    @Test
    void nothingAtAllIsSaidToBeNothing() {
        Chart chart = Chart.of("Empty", Axis.log("current", Dimension.CURRENT), Panel.of(VOLTS));
        Drawings.check("empty", ChartPainter.draw(chart, Width.PAGE), ChartPainter.draw(chart, Width.PAGE));
        assertTrue(Drawings.texts(Drawings.parsed(chart.svg(Width.PAGE))).contains("nothing to show"));
    }

    @Test
    void aLogarithmicAxisRefusesZero() {
        assertThrows(
                IllegalArgumentException.class,
                () -> Axis.log("current", Dimension.CURRENT).from(0.0));
        assertThrows(
                IllegalArgumentException.class,
                () -> Axis.log("current", Dimension.CURRENT).withZero());
        assertThrows(IllegalArgumentException.class, () -> VOLTS.from(2.0).to(1.0));
    }

    @Test
    void aCalloutOffTheAxesIsStillSaid() {
        Chart chart = Chart.of("", TIME.to(1.0).from(0.0), Panel.of(VOLTS).with(Callout.at(5.0, 1.0, "five seconds")));
        assertTrue(Drawings.texts(Drawings.parsed(chart.svg(Width.PAGE))).contains("five seconds (off the chart)"));
    }

    @Test
    void aHundredThousandSamplesMakeASmallFile() {
        String svg = Samples.inrush(100_000).svg(Width.PAGE);
        assertTrue(svg.length() < 40_000, svg.length() + " characters");
    }
}
