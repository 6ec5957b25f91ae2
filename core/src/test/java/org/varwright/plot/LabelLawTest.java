package org.varwright.plot;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.quantity.Dimension;

/** Whatever is drawn: no words over words, nothing off the sheet, and every text is there. */
class LabelLawTest {
    private static final long SEED = 41_125L;
    private static final List<Shape> SHAPES = List.of(Shape.values());
    private static final List<String> WORDS = List.of(
            "stage",
            "unit",
            "at",
            "the",
            "rated",
            "peak",
            "of",
            "fuse",
            "40T",
            "neighbours",
            "<b>",
            "&",
            "\u00b5F",
            "\u2220",
            "11.3",
            "kV");

    @Test
    void noWordsOverWords() {
        Random random = new Random(SEED);
        for (int i = 0; i < 250; i++) {
            Chart chart = random(random);
            String about = "seed " + SEED + ", case " + i;
            for (Width width : Width.values()) {
                Drawn drawn = ChartPainter.draw(chart, width);
                Drawings.check(about, drawn, ChartPainter.draw(chart, width));
                String words = squeezed(String.join("", Drawings.texts(Drawings.parsed(drawn.svg()))));
                for (String text : texts(chart)) {
                    assertTrue(words.contains(squeezed(text)), about + ": lost \"" + text + "\" in " + words);
                }
            }
        }
    }

    private static String squeezed(String text) {
        return text.replace(" ", "");
    }

    private static List<String> texts(Chart chart) {
        List<String> texts = new ArrayList<>();
        texts.add(chart.title());
        for (Panel panel : chart.panels()) {
            panel.callouts().forEach(c -> texts.add(c.text()));
            panel.limits().forEach(l -> texts.add(l.label()));
            panel.bands().forEach(b -> texts.add(b.label()));
            panel.curves().forEach(c -> texts.add(c.label()));
        }
        return texts;
    }

    private static Chart random(Random random) {
        Axis x = random.nextBoolean()
                ? Axis.linear("time after something happened", Dimension.TIME)
                : Axis.log("current", Dimension.CURRENT);
        double xSize = Math.pow(10.0, -4.0 + 8.0 * random.nextDouble());
        Chart chart = Chart.of(text(random, 9), x, panel(random, xSize));
        if (random.nextInt(3) == 0) {
            chart = chart.under(panel(random, xSize));
        }
        return chart.caption(text(random, 20)).shape(SHAPES.get(random.nextInt(3)));
    }

    private static Panel panel(Random random, double xSize) {
        Axis y = random.nextBoolean()
                ? Axis.linear("voltage", Dimension.VOLTAGE)
                : Axis.log("impedance", Dimension.RESISTANCE);
        double ySize = Math.pow(10.0, -3.0 + 8.0 * random.nextDouble());
        Panel panel = Panel.of(y);
        int curves = random.nextInt(7);
        for (int c = 0; c < curves; c++) {
            List<Point> points = new ArrayList<>();
            double value = random.nextDouble();
            for (int i = 1; i <= 60; i++) {
                value = Math.abs(value + 0.2 * (random.nextDouble() - 0.5));
                points.add(new Point(xSize * i / 60.0, ySize * (value + 1e-3)));
            }
            panel = panel.with(Curve.of(text(random, 1 + random.nextInt(6)), points));
        }
        for (int i = random.nextInt(13); i > 0; i--) {
            panel = panel.with(Callout.at(
                    xSize * (0.02 + 0.98 * random.nextDouble()),
                    ySize * (0.02 + random.nextDouble()),
                    text(random, 1 + random.nextInt(8))));
        }
        for (int i = random.nextInt(4); i > 0; i--) {
            panel = panel.with(
                    random.nextBoolean()
                            ? Limit.across(ySize * (0.1 + random.nextDouble()), text(random, 4))
                            : Limit.upright(xSize * (0.1 + random.nextDouble()), text(random, 4)));
        }
        if (random.nextBoolean()) {
            double low = 0.1 + random.nextDouble();
            panel = panel.with(Band.across(ySize * low, ySize * (low + 0.3), text(random, 5)));
        }
        if (curves > 1 && random.nextBoolean()) {
            panel = panel.with(
                    Band.between(panel.curves().get(0), panel.curves().get(1), text(random, 3)));
        }
        return panel;
    }

    private static String text(Random random, int words) {
        List<String> picked = new ArrayList<>();
        for (int i = 0; i < words; i++) {
            picked.add(WORDS.get(random.nextInt(WORDS.size())));
        }
        return String.join(" ", picked);
    }
}
