package org.varwright.fuse;

import java.util.List;
import org.varwright.basis.Source;

/**
 * A standard expulsion fuse link by the table of its standard.
 *
 * @param type fast or slow
 * @param ratedAmperes rated current [A]
 * @param preferred whether the rating is of the preferred series; the others are intermediate
 * @param points longest time first: 300 s (600 s above 100 A), 10 s, 0.1 s
 */
public record Link(LinkType type, int ratedAmperes, boolean preferred, List<Point> points) {
    /** Part of its rating that a type K or T link carries for good. */
    public static final double CARRIES = 1.5;

    public static final Source CARRIES_SOURCE =
            Source.commonPractice("type K and T tin links carry 150 % of their rating");

    public Link {
        points = List.copyOf(points);
    }

    /**
     * One time of the table.
     *
     * @param seconds at which it melts [s]
     * @param leastAmperes smallest current at which any link of this rating melts in that time [A]
     * @param mostAmperes current at which every link of this rating has melted by then [A]
     */
    public record Point(double seconds, double leastAmperes, double mostAmperes) {}

    /** Such as {@code 40T}. */
    public String name() {
        return ratedAmperes + type.name();
    }

    /** Current that it carries for good [A]. */
    public double carriesAmperes() {
        return CARRIES * ratedAmperes;
    }

    /** Current at 0.1 s over that at the longest time, both the least: the speed ratio. */
    public double speedRatio() {
        return points.getLast().leastAmperes() / points.getFirst().leastAmperes();
    }
}
