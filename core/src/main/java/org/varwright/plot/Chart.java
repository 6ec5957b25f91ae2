package org.varwright.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * One or two panels over a shared x axis.
 *
 * @param title in a few words
 * @param panels from the top; a second one is lower
 * @param caption under it; empty for none
 */
public record Chart(String title, Axis x, List<Panel> panels, String caption, Shape shape) {
    public Chart {
        panels = List.copyOf(panels);
        if (panels.isEmpty()) {
            throw new IllegalArgumentException(title + ": a chart has at least one panel");
        }
    }

    public static Chart of(String title, Axis x, Panel panel) {
        return new Chart(title, x, List.of(panel), "", Shape.WIDE);
    }

    /** With another panel below. */
    public Chart under(Panel panel) {
        List<Panel> all = new ArrayList<>(panels);
        all.add(panel);
        return new Chart(title, x, all, caption, shape);
    }

    public Chart caption(String text) {
        return new Chart(title, x, panels, text, shape);
    }

    public Chart shape(Shape given) {
        return new Chart(title, x, panels, caption, given);
    }

    /** The text of an SVG file. */
    public String svg(Width width) {
        return ChartPainter.draw(this, width).svg();
    }
}
