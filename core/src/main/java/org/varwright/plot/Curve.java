package org.varwright.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A curve through points, in their order.
 *
 * @param label at its end; empty for none
 * @param points any number; NaN leaves a gap
 * @param dash empty for the next pattern that is free in the chart
 * @param marker at every point, for curves of few points
 */
public record Curve(String label, List<Point> points, Optional<Dash> dash, Marker marker) {
    public Curve {
        points = List.copyOf(points);
    }

    public static Curve of(String label, List<Point> points) {
        return new Curve(label, points, Optional.empty(), Marker.NONE);
    }

    /** Through {@code (x[i], y[i])}. */
    public static Curve of(String label, double[] x, double[] y) {
        if (x.length != y.length) {
            throw new IllegalArgumentException(label + ": " + x.length + " x values and " + y.length + " y values");
        }
        List<Point> points = new ArrayList<>(x.length);
        for (int i = 0; i < x.length; i++) {
            points.add(new Point(x[i], y[i]));
        }
        return of(label, points);
    }

    /** Samples at even steps from {@code start}. */
    public static Curve sampled(String label, double start, double step, double[] y) {
        List<Point> points = new ArrayList<>(y.length);
        for (int i = 0; i < y.length; i++) {
            points.add(new Point(start + i * step, y[i]));
        }
        return of(label, points);
    }

    /** Marks alone, without a line. */
    public static Curve marks(String label, List<Point> points, Marker marker) {
        return new Curve(label, points, Optional.of(Dash.NONE), marker);
    }

    public Curve with(Dash given) {
        return new Curve(label, points, Optional.of(given), marker);
    }

    public Curve with(Marker given) {
        return new Curve(label, points, dash, given);
    }
}
