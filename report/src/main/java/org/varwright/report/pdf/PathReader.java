package org.varwright.report.pdf;

import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads path data: moves, lines, curves and circular arcs. */
final class PathReader {
    private static final Pattern TOKEN =
            Pattern.compile("([MLHVCQAZa])|(-?[0-9]*\\.?[0-9]+(?:[eE][-+]?[0-9]+)?)|([^\\s,])");
    /** Arcs are drawn as chords of at most this angle [rad]: too short to be seen. */
    private static final double STEP = Math.PI / 36.0;

    private final Matcher tokens;
    private final Path2D.Double path = new Path2D.Double();
    private boolean more;

    PathReader(String data) {
        tokens = TOKEN.matcher(data);
        more = tokens.find();
    }

    Path2D read() {
        char command = 'M';
        while (more) {
            if (tokens.group(1) != null) {
                command = tokens.group(1).charAt(0);
                next();
                if (command == 'Z') {
                    path.closePath();
                    continue;
                }
            }
            command = step(command);
        }
        return path;
    }

    private char step(char command) {
        switch (command) {
            case 'M' -> {
                path.moveTo(number(), number());
                return 'L';
            }
            case 'L' -> path.lineTo(number(), number());
            case 'H' -> path.lineTo(number(), at().getY());
            case 'V' -> path.lineTo(at().getX(), number());
            case 'C' -> path.curveTo(number(), number(), number(), number(), number(), number());
            case 'Q' -> path.quadTo(number(), number(), number(), number());
            case 'A' -> arc(radius(), number() != 0.0, number() != 0.0, number(), number());
            case 'a' -> {
                Point2D from = at();
                arc(radius(), number() != 0.0, number() != 0.0, from.getX() + number(), from.getY() + number());
            }
            default -> throw new IllegalArgumentException("a path holds no " + command);
        }
        return command;
    }

    private Point2D at() {
        return path.getCurrentPoint();
    }

    /** The radius of a circular arc: twice the same, then a turn that a circle doesn't show. */
    private double radius() {
        double rx = number();
        double ry = number();
        if (Math.abs(rx - ry) > 1e-9) {
            throw new IllegalArgumentException("a path holds circular arcs only");
        }
        number();
        return rx;
    }

    /** A circular arc from where the path is, by its radius and end (the SVG 1.1 specification, F.6, for equal radii). */
    private void arc(double radius, boolean large, boolean sweep, double x, double y) {
        double x0 = at().getX();
        double y0 = at().getY();
        double half = Math.hypot(x - x0, y - y0) / 2.0;
        double r = Math.max(radius, half);
        double toCentre = Math.sqrt(Math.max(0.0, r * r - half * half)) * (large == sweep ? -1.0 : 1.0);
        double ux = half == 0.0 ? 0.0 : (x - x0) / (2.0 * half);
        double uy = half == 0.0 ? 0.0 : (y - y0) / (2.0 * half);
        double cx = (x0 + x) / 2.0 - uy * toCentre;
        double cy = (y0 + y) / 2.0 + ux * toCentre;
        double from = Math.atan2(y0 - cy, x0 - cx);
        double turn = Math.atan2(y - cy, x - cx) - from;
        if (sweep && turn < 0.0) {
            turn += 2.0 * Math.PI;
        } else if (!sweep && turn > 0.0) {
            turn -= 2.0 * Math.PI;
        }
        int steps = Math.max(1, (int) Math.ceil(Math.abs(turn) / STEP));
        for (int i = 1; i < steps; i++) {
            double angle = from + turn * i / steps;
            path.lineTo(cx + r * Math.cos(angle), cy + r * Math.sin(angle));
        }
        path.lineTo(x, y);
    }

    private double number() {
        if (!more || tokens.group(2) == null) {
            throw new IllegalArgumentException("a path lacks a number" + (more ? " at " + tokens.group() : ""));
        }
        double value = Double.parseDouble(tokens.group(2));
        next();
        return value;
    }

    private void next() {
        more = tokens.find();
    }
}
