package org.varwright.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.svg.Box;
import org.varwright.svg.Segment;
import org.varwright.svg.SvgText;

/**
 * A curve on the sheet, as lines of places: thinned to what can be seen there and cut at the edge of its panel.
 *
 * @param lines each without a gap, at least two places long
 */
record Trace(List<List<Point>> lines) {
    /** Width of the strips of which each keeps its first, least, greatest and last place. */
    private static final double STRIP = 0.5;
    /** A place so near to the line between its neighbours is not needed. */
    private static final double STRAIGHT = 0.04;
    /** At most so many places in a row are given to one line. */
    private static final int LONGEST = 60;

    Trace {
        lines = List.copyOf(lines);
    }

    static Trace of(List<Point> points, Ruler x, Ruler y, Box room) {
        List<List<Point>> lines = new ArrayList<>();
        List<Point> line = new ArrayList<>();
        for (Point point : points) {
            if (x.axis().takes(point.x()) && y.axis().takes(point.y())) {
                line.add(new Point(x.at(point.x()), y.at(point.y())));
            } else {
                cut(line, room, lines);
                line = new ArrayList<>();
            }
        }
        cut(line, room, lines);
        return new Trace(lines);
    }

    /** First, least, greatest and last place of every strip, in their order, then without those that lie on a straight line. */
    static List<Point> thinned(List<Point> line) {
        List<Point> kept = new ArrayList<>();
        int from = 0;
        while (from < line.size()) {
            double strip = Math.floor(line.get(from).x() / STRIP);
            int least = from;
            int greatest = from;
            int to = from;
            while (to < line.size() && Math.floor(line.get(to).x() / STRIP) == strip) {
                least = line.get(to).y() < line.get(least).y() ? to : least;
                greatest = line.get(to).y() > line.get(greatest).y() ? to : greatest;
                to++;
            }
            kept.add(line.get(from));
            for (int i : new int[] {Math.min(least, greatest), Math.max(least, greatest), to - 1}) {
                if (!line.get(i).equals(kept.getLast())) {
                    kept.add(line.get(i));
                }
            }
            from = to;
        }
        return straightened(kept);
    }

    private static List<Point> straightened(List<Point> line) {
        if (line.size() < 3) {
            return line;
        }
        List<Point> kept = new ArrayList<>();
        kept.add(line.getFirst());
        int last = 0;
        for (int i = 1; i + 1 < line.size(); i++) {
            if (i - last >= LONGEST || !isStraight(line, last, i + 1)) {
                kept.add(line.get(i));
                last = i;
            }
        }
        kept.add(line.getLast());
        return kept;
    }

    /** Whether all between two places lie on the line that joins them, between its ends. */
    private static boolean isStraight(List<Point> line, int from, int to) {
        Point a = line.get(from);
        Point b = line.get(to);
        double dx = b.x() - a.x();
        double dy = b.y() - a.y();
        double length = Math.hypot(dx, dy);
        for (int i = from + 1; i < to; i++) {
            double px = line.get(i).x() - a.x();
            double py = line.get(i).y() - a.y();
            double along = px * dx + py * dy;
            if (length == 0.0
                    || Math.abs(dx * py - dy * px) > STRAIGHT * length
                    || along < -STRAIGHT * length
                    || along > length * (length + STRAIGHT)) {
                return false;
            }
        }
        return true;
    }

    private static void cut(List<Point> line, Box room, List<List<Point>> lines) {
        List<Point> thin = thinned(line);
        List<Point> part = new ArrayList<>();
        for (int i = 1; i < thin.size(); i++) {
            Point a = thin.get(i - 1);
            Point b = thin.get(i);
            Optional<Segment> inside = new Segment(a.x(), a.y(), b.x(), b.y()).within(room);
            if (inside.isEmpty()) {
                continue;
            }
            Segment s = inside.get();
            Point start = new Point(s.x1(), s.y1());
            if (part.isEmpty() || !part.getLast().equals(start)) {
                keep(part, lines);
                part = new ArrayList<>();
                part.add(start);
            }
            part.add(new Point(s.x2(), s.y2()));
        }
        if (thin.size() == 1 && room.holds(thin.getFirst().x(), thin.getFirst().y())) {
            part.add(thin.getFirst());
            part.add(thin.getFirst());
        }
        keep(part, lines);
    }

    private static void keep(List<Point> part, List<List<Point>> lines) {
        if (part.size() > 1) {
            lines.add(List.copyOf(part));
        }
    }

    /** The last place that is seen. */
    Optional<Point> end() {
        return lines.isEmpty() ? Optional.empty() : Optional.of(lines.getLast().getLast());
    }

    List<Segment> segments() {
        List<Segment> segments = new ArrayList<>();
        for (List<Point> line : lines) {
            for (int i = 1; i < line.size(); i++) {
                segments.add(new Segment(
                        line.get(i - 1).x(),
                        line.get(i - 1).y(),
                        line.get(i).x(),
                        line.get(i).y()));
            }
        }
        return segments;
    }

    String data() {
        StringBuilder data = new StringBuilder();
        for (List<Point> line : lines) {
            char command = 'M';
            for (Point p : line) {
                data.append(command)
                        .append(SvgText.number(Math.rint(p.x() * 10.0) / 10.0))
                        .append(' ')
                        .append(SvgText.number(Math.rint(p.y() * 10.0) / 10.0));
                command = 'L';
            }
        }
        return data.toString();
    }
}
