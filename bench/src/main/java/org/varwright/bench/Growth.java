package org.varwright.bench;

import java.util.List;
import java.util.Locale;
import org.varwright.plot.Curve;
import org.varwright.plot.Marker;
import org.varwright.plot.Point;

/**
 * What one work took as it grew.
 *
 * @param name of the work
 * @param expected how the cost should grow with the size, in words
 * @param points size and processor time [s], by size
 */
record Growth(String name, String expected, List<Point> points) {
    Growth {
        points = List.copyOf(points);
    }

    /** Slope of the straight line through the larger half of the points on logarithmic axes: what the cost grows with, small overheads left behind. */
    double exponent() {
        List<Point> large = points.subList(points.size() / 2, points.size());
        double n = large.size();
        double x = 0.0;
        double y = 0.0;
        double xx = 0.0;
        double xy = 0.0;
        for (Point point : large) {
            double lx = Math.log(point.x());
            double ly = Math.log(point.y());
            x += lx;
            y += ly;
            xx += lx * lx;
            xy += lx * ly;
        }
        return (n * xy - x * y) / (n * xx - x * x);
    }

    /** Largest size over smallest of those that {@link #exponent} takes. */
    String range() {
        return String.format(
                Locale.ROOT,
                "%s to %s",
                grouped(points.get(points.size() / 2).x()),
                grouped(points.getLast().x()));
    }

    Curve curve(Marker marker) {
        return Curve.of(String.format(Locale.ROOT, "%s: %.2f", name, exponent()), points)
                .with(marker);
    }

    String row() {
        return String.format(
                Locale.ROOT,
                "| %s | %s | %s at %s | %s at %s | **%.2f** | %s |",
                name,
                range(),
                Times.seconds(points.getFirst().y()),
                grouped(points.getFirst().x()),
                Times.seconds(points.getLast().y()),
                grouped(points.getLast().x()),
                exponent(),
                expected);
    }

    static String grouped(double size) {
        return String.format(Locale.ROOT, "%,.0f", size).replace(',', ' ');
    }
}
