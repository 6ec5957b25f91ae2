package org.varwright.report.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.BasicStroke;
import java.awt.geom.Rectangle2D;
import org.junit.jupiter.api.Test;
import org.varwright.plot.Axis;
import org.varwright.plot.Chart;
import org.varwright.plot.Curve;
import org.varwright.plot.Dash;
import org.varwright.plot.Panel;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;
import org.varwright.report.pdf.Picture.Mark;
import org.varwright.svg.Box;
import org.varwright.svg.Pen;
import org.varwright.svg.Sheet;
import org.varwright.svg.Tone;

/** Drawings: what is read, and what is refused. */
class PictureReaderTest {
    @Test
    void wordsAndLinesComeWithTheirPlace() {
        Picture picture = read(
                "<g transform=\"translate(10 20) scale(2)\"><line x1=\"0\" y1=\"0\" x2=\"30\" y2=\"40\" stroke=\"#123456\""
                        + " stroke-dasharray=\"4 2\"/><text x=\"1\" y=\"2\" font-size=\"8\" font-weight=\"bold\">bus &lt;1&gt;</text></g>");
        Mark.Outline line = assertInstanceOf(Mark.Outline.class, picture.marks().get(0));
        Rectangle2D box = line.place().createTransformedShape(line.shape()).getBounds2D();
        assertEquals(60.0, box.getWidth(), 1e-9);
        assertEquals(80.0, box.getHeight(), 1e-9);
        assertEquals(0x123456, line.pen().orElseThrow().colour().getRGB() & 0xffffff);
        assertEquals(2, line.pen().orElseThrow().dashes().size());
        Mark.Words words = assertInstanceOf(Mark.Words.class, picture.marks().get(1));
        assertEquals("bus <1>", words.text());
        assertTrue(words.bold());
    }

    @Test
    void aHalfCircleBulgesToTheSideOfItsSweep() {
        // half circle of radius 10 about (0, 0) from (0, -10) to (0, 10); sweep 1 turns clockwise on paper, so it
        // bulges to +x
        Rectangle2D right = new PathReader("M0 -10 A10 10 0 0 1 0 10").read().getBounds2D();
        Rectangle2D left = new PathReader("M0 -10 A10 10 0 0 0 0 10").read().getBounds2D();
        Rectangle2D relative = new PathReader("M0 -10 a10 10 0 0 1 0 20").read().getBounds2D();
        assertEquals(10.0, right.getMaxX(), 0.01);
        assertEquals(0.0, right.getMinX(), 0.01);
        assertEquals(-10.0, left.getMinX(), 0.01);
        assertEquals(right, relative);
    }

    @Test
    void theWhiteEdgeIsTrimmed() {
        Picture picture = read("<rect x=\"0\" y=\"0\" width=\"400\" height=\"300\" fill=\"#ffffff\"/>"
                + "<rect x=\"100\" y=\"100\" width=\"50\" height=\"20\" fill=\"#000000\"/>");
        assertEquals(54.0, picture.width(), 1e-9);
        assertEquals(24.0, picture.height(), 1e-9);
    }

    @Test
    void chartsAreReadWithTheirDashesCornersAndWords() {
        Curve curve = Curve.of("stage 2", new double[] {1.0, 10.0, 100.0}, new double[] {0.1, 0.3, 0.2});
        Chart chart = Chart.of(
                "Waveform",
                Axis.log("time", Dimension.TIME),
                Panel.of(Axis.linear("current", Dimension.CURRENT)).with(curve.with(Dash.DASHED)));
        Picture picture = PictureReader.read(chart.svg(Width.PAGE));
        assertTrue(picture.marks().stream()
                .anyMatch(m -> m instanceof Mark.Words words && words.text().equals("stage 2")));
        Mark.Outline line = picture.marks().stream()
                .filter(Mark.Outline.class::isInstance)
                .map(Mark.Outline.class::cast)
                .filter(o -> o.pen().isPresent() && !o.pen().get().dashes().isEmpty())
                .findFirst()
                .orElseThrow();
        assertTrue(line.pen().orElseThrow().round());
        assertEquals(BasicStroke.JOIN_ROUND, line.pen().orElseThrow().stroke().getLineJoin());
    }

    @Test
    void everyToneIsRead() {
        Sheet sheet = new Sheet();
        for (Tone tone : Tone.values()) {
            sheet.fill(new Box(1.0, 1.0, 9.0, 9.0), tone);
            sheet.frame(new Box(1.0, 1.0, 9.0, 9.0), Pen.full(tone, 1.0));
        }
        Picture picture = PictureReader.read(sheet.svg(10.0, 10.0, 50.0, "tones", ""));
        assertEquals(2 * Tone.values().length, picture.marks().size());
    }

    @Test
    void aChartIsNotBlownUpAndASheetMayBe() {
        String svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%s\" viewBox=\"0 0 400 300\">"
                + "<rect width=\"9\" height=\"9\"/></svg>";
        assertEquals(0.425, PictureReader.read(svg.formatted("170mm")).largest(), 1e-12);
        assertEquals(
                Double.POSITIVE_INFINITY,
                PictureReader.read(svg.formatted("297mm")).largest(),
                0.0);
        assertEquals(
                Double.POSITIVE_INFINITY, PictureReader.read(svg.formatted("")).largest(), 0.0);
    }

    @Test
    void onlyTheRuleOfDarkScreensIsLetThrough() {
        String dark = "@media screen and (prefers-color-scheme:dark){.vf-ink{fill:#f2f2f2}}";
        assertEquals(
                1,
                read("<style>" + dark + "</style><rect width=\"5\" height=\"5\"/>")
                        .marks()
                        .size());
        for (String style : new String[] {
            "rect{fill:url(http://example.org/x)}", "@import \"x\";" + dark, dark + ".vf-ink{fill:#000000}", ""
        }) {
            assertThrows(IllegalArgumentException.class, () -> read("<style>" + style + "</style>"), style);
        }
    }

    @Test
    void whatRunsLoadsOrLinksIsRefused() {
        for (String element : new String[] {"script", "image", "foreignObject", "a", "use", "animate", "style"}) {
            assertThrows(IllegalArgumentException.class, () -> read("<" + element + "/>"), element);
        }
        assertThrows(
                IllegalArgumentException.class,
                () -> PictureReader.read("<!DOCTYPE svg [<!ENTITY x \"y\">]><svg xmlns=\"http://www.w3.org/2000/svg\""
                        + " viewBox=\"0 0 1 1\">&x;</svg>"));
        assertThrows(IllegalArgumentException.class, () -> PictureReader.read("not a drawing"));
    }

    private static Picture read(String inside) {
        return PictureReader.read(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 400 300\">" + inside + "</svg>");
    }
}
