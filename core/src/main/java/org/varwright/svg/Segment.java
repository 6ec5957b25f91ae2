package org.varwright.svg;

import java.util.Optional;

/** A straight line between two points. */
public record Segment(double x1, double y1, double x2, double y2) {
    public double length() {
        return Math.hypot(x2 - x1, y2 - y1);
    }

    /** The part that lies in a box, its edge included (Liang and Barsky: the parameter's range is narrowed by each edge in turn). */
    public Optional<Segment> within(Box box) {
        double dx = x2 - x1;
        double dy = y2 - y1;
        double[] p = {-dx, dx, -dy, dy};
        double[] q = {x1 - box.left(), box.right() - x1, y1 - box.top(), box.bottom() - y1};
        double from = 0.0;
        double to = 1.0;
        for (int i = 0; i < p.length; i++) {
            if (p[i] == 0.0) {
                if (q[i] < 0.0) {
                    return Optional.empty();
                }
            } else {
                double t = q[i] / p[i];
                if (p[i] < 0.0) {
                    from = Math.max(from, t);
                } else {
                    to = Math.min(to, t);
                }
                if (from > to) {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(new Segment(
                from == 0.0 ? x1 : x1 + from * dx,
                from == 0.0 ? y1 : y1 + from * dy,
                to == 1.0 ? x2 : x1 + to * dx,
                to == 1.0 ? y2 : y1 + to * dy));
    }

    /** Whether the two have a point in common. */
    public boolean meets(Segment o) {
        double a = side(o.x1, o.y1);
        double b = side(o.x2, o.y2);
        double c = o.side(x1, y1);
        double d = o.side(x2, y2);
        return a * b <= 0.0
                && c * d <= 0.0
                && Math.min(x1, x2) <= Math.max(o.x1, o.x2)
                && Math.min(o.x1, o.x2) <= Math.max(x1, x2)
                && Math.min(y1, y2) <= Math.max(o.y1, o.y2)
                && Math.min(o.y1, o.y2) <= Math.max(y1, y2);
    }

    private double side(double x, double y) {
        return (x2 - x1) * (y - y1) - (y2 - y1) * (x - x1);
    }
}
