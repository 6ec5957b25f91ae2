package org.varwright.plot;

import java.util.List;

/**
 * Upright bars from zero, one at each x.
 *
 * @param width of a bar in the unit of the x axis
 */
public record Bars(List<Point> points, double width, Fill fill) {
    public Bars {
        points = List.copyOf(points);
    }
}
