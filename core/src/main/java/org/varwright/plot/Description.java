package org.varwright.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.quantity.Dimension;

/** A chart in words, for those who can't see it. */
final class Description {
    private Description() {}

    static String of(Chart chart) {
        List<String> sentences = new ArrayList<>();
        for (Panel panel : chart.panels()) {
            sentences.add(panel.y().title() + " over " + chart.x().title() + ".");
            panel.curves().stream().filter(c -> !c.label().isBlank()).forEach(c -> sentences.add(curve(c, panel.y())));
            panel.limits().stream()
                    .filter(l -> !l.label().isBlank())
                    .forEach(l -> sentences.add("Line: " + l.label() + "."));
            panel.bands().stream()
                    .filter(b -> !b.label().isBlank())
                    .forEach(b -> sentences.add("Shaded: " + b.label() + "."));
            panel.callouts().stream()
                    .filter(c -> !c.text().isBlank())
                    .forEach(c -> sentences.add("Marked: " + c.text() + "."));
        }
        return String.join(" ", sentences);
    }

    private static String curve(Curve curve, Axis y) {
        List<Double> values = curve.points().stream()
                .map(Point::y)
                .filter(v -> Double.isFinite(v))
                .toList();
        if (values.isEmpty()) {
            return "Curve " + curve.label() + ": no values.";
        }
        double low = values.stream().mapToDouble(v -> v).min().orElseThrow();
        double high = values.stream().mapToDouble(v -> v).max().orElseThrow();
        return "Curve " + curve.label() + ": from " + value(low, y.dimension(), y.unit()) + " to "
                + value(high, y.dimension(), y.unit()) + ".";
    }

    private static String value(double value, Optional<Dimension> dimension, String unit) {
        return dimension
                .map(d -> d.format(value))
                .orElseGet(() -> Dimension.digits(value, 4) + (unit.isEmpty() ? "" : " " + unit));
    }
}
