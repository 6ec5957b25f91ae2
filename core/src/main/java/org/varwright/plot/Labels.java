package org.varwright.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.svg.Box;
import org.varwright.svg.Segment;

/** Finds room for words: never over other words, marks or curves, and never across a line that leads to other words. */
final class Labels {
    private static final double GAP = 2.0;
    private static final double SHORTEST_LEADER = 7.0;
    private static final int DIRECTIONS = 16;
    private static final double[] DISTANCES = {5.0, 9.0, 15.0, 23.0, 33.0, 46.0, 62.0, 82.0, 108.0, 140.0};
    private static final double SCAN = 9.0;
    /** Distance that a leader across a curve is worth. */
    private static final double CROSSING = 14.0;

    private static final double NARROW = 6.0;

    private static final double LARGEST_MARK = 10.0;
    private static final Box OUT_OF_THE_WAY = new Box(-1e9, -1e9, -1e9, -1e9);

    private final Box room;
    private final List<Box> taken = new ArrayList<>();
    private final List<Segment> curves = new ArrayList<>();
    private final List<Segment> leaders = new ArrayList<>();

    Labels(Box room) {
        this.room = room;
    }

    /** Words at a place, joined to what they are about where they stand off. */
    record Placed(TextBlock text, Box box, Optional<Segment> leader, double cost) {}

    void take(Box box) {
        taken.add(box);
    }

    void avoid(List<Segment> more) {
        curves.addAll(more);
    }

    /** The first of some places that is free; it is taken then. */
    Optional<Box> first(List<Box> places) {
        Optional<Box> free = places.stream().filter(b -> isFree(b, true)).findFirst();
        free.ifPresent(taken::add);
        return free;
    }

    /**
     * Room as near as possible to a point, which is taken then.
     *
     * @param shapes in which the words may stand, the best first
     * @param overCurves whether words may lie over a curve if need be
     */
    Optional<Placed> near(double x, double y, List<TextBlock> shapes, boolean overCurves) {
        Optional<Placed> best = Optional.empty();
        for (TextBlock text : shapes) {
            best = better(best, best(text, around(x, y, text), x, y, true));
        }
        for (TextBlock text : best.isEmpty() ? shapes : List.<TextBlock>of()) {
            best = better(best, best(text, everywhere(text), x, y, true));
        }
        for (TextBlock text : best.isEmpty() && overCurves ? shapes : List.<TextBlock>of()) {
            best = better(best, best(text, around(x, y, text), x, y, false));
        }
        best.ifPresent(placed -> {
            taken.add(placed.box());
            placed.leader().ifPresent(leaders::add);
        });
        return best;
    }

    /** The later one only where it is better by more than a narrow shape costs in looks. */
    private static Optional<Placed> better(Optional<Placed> first, Optional<Placed> second) {
        boolean later = second.isPresent()
                && (first.isEmpty()
                        || second.get().cost() + NARROW < first.get().cost());
        return later ? second : first;
    }

    private static List<Box> around(double x, double y, TextBlock text) {
        double width = text.width();
        double height = text.height();
        List<Box> boxes = new ArrayList<>();
        for (double distance : DISTANCES) {
            for (int i = 0; i < DIRECTIONS; i++) {
                // to the upper right first
                double angle = 2.0 * Math.PI * (i + 2) / DIRECTIONS;
                double cx = x + Math.cos(angle) * (distance + width / 2.0);
                double cy = y - Math.sin(angle) * (distance + height / 2.0);
                boxes.add(new Box(cx - width / 2.0, cy - height / 2.0, cx + width / 2.0, cy + height / 2.0));
            }
        }
        return boxes;
    }

    private List<Box> everywhere(TextBlock text) {
        double width = text.width();
        double height = text.height();
        List<Box> boxes = new ArrayList<>();
        for (double top = room.top() + GAP; top + height <= room.bottom(); top += SCAN) {
            for (double left = room.left() + GAP; left + width <= room.right(); left += SCAN) {
                boxes.add(new Box(left, top, left + width, top + height));
            }
        }
        return boxes;
    }

    private Optional<Placed> best(TextBlock text, List<Box> boxes, double x, double y, boolean offCurves) {
        Optional<Placed> best = Optional.empty();
        double least = Double.POSITIVE_INFINITY;
        for (Box box : boxes) {
            if (!isFree(box, offCurves)) {
                continue;
            }
            Segment leader = leader(box, x, y);
            double cost = leader.length();
            if (cost < least && isClear(leader, x, y)) {
                cost += CROSSING * curves.stream().filter(leader::meets).count();
                if (cost < least - 1e-6) {
                    least = cost;
                    best = Optional.of(new Placed(
                            text,
                            box,
                            leader.length() < SHORTEST_LEADER ? Optional.empty() : Optional.of(leader),
                            cost));
                }
            }
        }
        return best;
    }

    /** From the point to the nearest part of the words. */
    private static Segment leader(Box box, double x, double y) {
        return new Segment(
                x, y, Math.max(box.left(), Math.min(box.right(), x)), Math.max(box.top(), Math.min(box.bottom(), y)));
    }

    private boolean isFree(Box box, boolean offCurves) {
        if (!room.grown(-1.0).holds(box)) {
            return false;
        }
        Box wide = box.grown(GAP);
        return taken.stream().noneMatch(wide::overlaps)
                && leaders.stream().noneMatch(box.grown(1.0)::crossedBy)
                && (!offCurves || curves.stream().noneMatch(box.grown(1.0)::crossedBy));
    }

    /** Whether a leader runs over nothing; out of the mark or bar at its own point it may. */
    private boolean isClear(Segment leader, double x, double y) {
        return taken.stream()
                        .map(b -> b.holds(x, y) ? (isMark(b) ? OUT_OF_THE_WAY : b.grown(-1.0)) : b.grown(0.5))
                        .noneMatch(b -> b.crossedBy(leader))
                && leaders.stream().noneMatch(leader::meets);
    }

    private static boolean isMark(Box box) {
        return box.width() < LARGEST_MARK && box.height() < LARGEST_MARK;
    }
}
