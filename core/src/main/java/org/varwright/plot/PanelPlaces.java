package org.varwright.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.svg.Box;
import org.varwright.svg.Segment;

/** Where the things of a panel stand on the paper. */
final class PanelPlaces {
    private static final int MOST_MARKERS = 40;
    private static final int FEW_MARKERS = 12;

    private final Panel panel;
    private final List<Styled> curves;
    private final List<Trace> traces;
    private final Ruler x;
    private final Ruler y;
    private final Box room;

    PanelPlaces(Panel panel, List<Styled> curves, Ruler x, Ruler y, Box room) {
        this.panel = panel;
        this.curves = curves;
        this.traces = curves.stream()
                .map(c -> Trace.of(c.curve().points(), x, y, room))
                .toList();
        this.x = x;
        this.y = y;
        this.room = room;
    }

    Panel panel() {
        return panel;
    }

    List<Styled> curves() {
        return curves;
    }

    /** As many as there are curves. */
    List<Trace> traces() {
        return traces;
    }

    Ruler x() {
        return x;
    }

    Ruler y() {
        return y;
    }

    Box room() {
        return room;
    }

    /** The outline of a band, held to the panel. */
    List<Point> outline(Band band) {
        return switch (band) {
            case Band.Across across -> {
                double top = y.at(y.held(across.high()));
                double bottom = y.at(y.held(across.low()));
                yield List.of(
                        new Point(room.left(), top),
                        new Point(room.right(), top),
                        new Point(room.right(), bottom),
                        new Point(room.left(), bottom));
            }
            case Band.Upright upright -> {
                double left = x.at(x.held(upright.low()));
                double right = x.at(x.held(upright.high()));
                yield List.of(
                        new Point(left, room.top()),
                        new Point(right, room.top()),
                        new Point(right, room.bottom()),
                        new Point(left, room.bottom()));
            }
            case Band.Between between -> {
                List<Point> around = new ArrayList<>(edge(between.high()));
                around.addAll(edge(between.low()).reversed());
                yield around;
            }
        };
    }

    /** An edge of a band, held to the panel. */
    private List<Point> edge(List<Point> points) {
        List<Point> line = new ArrayList<>();
        for (Point p : points) {
            if (x.axis().takes(p.x()) && Double.isFinite(p.y())) {
                line.add(new Point(x.at(x.held(p.x())), y.at(y.held(p.y()))));
            }
        }
        return Trace.thinned(line);
    }

    /** What is seen of a bar. */
    Optional<Box> bar(Bars bars, Point p) {
        if (!x.axis().takes(p.x()) || !Double.isFinite(p.y())) {
            return Optional.empty();
        }
        double foot = y.at(y.held(0.0));
        double tip = y.at(y.held(p.y()));
        double left = x.at(p.x() - bars.width() / 2.0);
        double right = x.at(p.x() + bars.width() / 2.0);
        boolean seen = right > room.left() && left < room.right() && foot != tip;
        return seen
                ? Optional.of(new Box(
                        Math.max(left, room.left()),
                        Math.min(foot, tip),
                        Math.min(right, room.right()),
                        Math.max(foot, tip)))
                : Optional.empty();
    }

    /** The line of a limit. */
    Segment line(Limit limit) {
        return switch (limit) {
            case Limit.Across across ->
                new Segment(room.left(), y.at(across.value()), room.right(), y.at(across.value()));
            case Limit.Upright upright ->
                new Segment(x.at(upright.value()), room.top(), x.at(upright.value()), room.bottom());
        };
    }

    boolean isSeen(Limit limit) {
        return switch (limit) {
            case Limit.Across across -> y.holds(across.value());
            case Limit.Upright upright -> x.holds(upright.value());
        };
    }

    /** Where a curve has its marks: at every point, or at a few where there are too many. */
    List<Point> markers(Styled styled) {
        if (styled.marker() == Marker.NONE) {
            return List.of();
        }
        List<Point> seen = styled.curve().points().stream()
                .filter(p -> x.holds(p.x()) && y.holds(p.y()))
                .map(p -> new Point(x.at(p.x()), y.at(p.y())))
                .toList();
        int every = seen.size() <= MOST_MARKERS ? 1 : seen.size() / FEW_MARKERS;
        List<Point> marks = new ArrayList<>();
        for (int i = every / 2; i < seen.size(); i += every) {
            marks.add(seen.get(i));
        }
        return marks;
    }
}
