package org.varwright.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.quantity.Complex;
import org.varwright.quantity.Dimension;
import org.w3c.dom.Document;

class PhasorDiagramTest {
    @Test
    void samplesKeepTheLaws() {
        for (Width width : Width.values()) {
            for (PhasorDiagram diagram : List.of(Samples.displaced(), Samples.lone())) {
                Drawings.check(
                        diagram.title() + " " + width,
                        PhasorPainter.draw(diagram, width),
                        PhasorPainter.draw(diagram, width));
            }
        }
    }

    @Test
    void everyPhasorSaysMagnitudeAndAngle() {
        for (Width width : Width.values()) {
            String words = String.join(
                    " ", Drawings.texts(Drawings.parsed(Samples.displaced().svg(width))));
            for (String part : List.of(
                    "7.967 kV \u22200.0\u00b0", "7.967 kV \u2220\u2212120.0\u00b0", "412 V \u2220178.0\u00b0")) {
                assertTrue(words.contains(part), part + " in " + words);
            }
        }
    }

    /** To the right is zero, up is 90 degrees; a chained one starts where it is told. */
    @Test
    void anglesGrowCounterClockwise() {
        PhasorDiagram diagram = PhasorDiagram.of(
                "",
                List.of(Dial.of("", Dimension.CURRENT)
                        .with(Phasor.of("a", new Complex(10.0, 0.0)))
                        .with(Phasor.of("b", new Complex(0.0, 5.0)).from(new Complex(10.0, 0.0)))));
        Document document = Drawings.parsed(diagram.svg(Width.PAGE));
        double[] a = tip(document, 0);
        double[] b = tip(document, 1);
        assertEquals(a[0], b[0], 0.02);
        assertTrue(b[1] < a[1], "up is smaller y");
    }

    private static double[] tip(Document document, int group) {
        var g = (org.w3c.dom.Element) document.getElementsByTagName("g").item(group);
        String head = ((org.w3c.dom.Element) g.getElementsByTagName("path").item(1)).getAttribute("d");
        List<String> parts = List.of(
                head.substring(1).replace("L", " ").replaceAll(" +", " ").split(" ", -1));
        return new double[] {Double.parseDouble(parts.get(0)), Double.parseDouble(parts.get(1))};
    }

    @Test
    void zeroIsAPointAndSaysSo() {
        PhasorDiagram diagram = PhasorDiagram.of(
                "nothing", List.of(Dial.of("", Dimension.CURRENT).with(Phasor.of("neutral", Complex.ZERO))));
        Drawings.check("zero", PhasorPainter.draw(diagram, Width.PAGE), PhasorPainter.draw(diagram, Width.PAGE));
        assertTrue(diagram.svg(Width.PAGE).contains(">0 A</text>"), diagram.svg(Width.PAGE));
    }

    @Test
    void lawOfWords() {
        long seed = 90_125L;
        Random random = new Random(seed);
        for (int i = 0; i < 300; i++) {
            List<Dial> dials =
                    List.of(random(random), random(random), random(random)).subList(0, 1 + random.nextInt(3));
            PhasorDiagram diagram =
                    PhasorDiagram.of("case " + i, dials).caption("a caption of some length to wrap about");
            String about = "seed " + seed + ", case " + i;
            for (Width width : Width.values()) {
                Drawn drawn = PhasorPainter.draw(diagram, width);
                Drawings.check(about, drawn, PhasorPainter.draw(diagram, width));
                String words = String.join("", Drawings.texts(Drawings.parsed(drawn.svg())))
                        .replace(" ", "");
                for (Dial dial : dials) {
                    dial.phasors().forEach(p -> {
                        assertTrue(words.contains(p.label().replace(" ", "")), about + " lost " + p.label());
                        assertTrue(
                                words.contains(DialPainter.polar(p, dial).replace(" ", "")),
                                about + " lost the value of " + p.label());
                    });
                    dial.circles()
                            .forEach(c -> assertTrue(
                                    words.contains(c.label().replace(" ", "")), about + " lost " + c.label()));
                }
            }
        }
    }

    private static Dial random(Random random) {
        Dial dial = Dial.of("dial of something", Dimension.VOLTAGE);
        int arrows = random.nextInt(13);
        Complex at = Complex.ZERO;
        for (int i = 0; i < arrows; i++) {
            Complex value = Complex.polar(
                    Math.pow(10.0, 3.0 * random.nextDouble()), 30.0 * random.nextInt(12) + random.nextDouble());
            Phasor phasor = Phasor.of(
                            "leg " + i + (random.nextBoolean() ? " with two units out in one group" : ""), value)
                    .with(Dash.inTurn(i));
            dial = dial.with(random.nextBoolean() ? phasor : phasor.from(at));
            at = at.plus(value);
        }
        for (int i = random.nextInt(3); i > 0; i--) {
            dial = dial.with(Circle.limit(500.0 * random.nextDouble(), "alarm number " + i));
        }
        return dial;
    }
}
