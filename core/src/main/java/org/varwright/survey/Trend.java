package org.varwright.survey;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What a unit read over several visits.
 *
 * @param position its name
 * @param points oldest first, the present reading last; each on the present meter's scale
 * @param change since the last earlier visit, as a part of the value then
 * @param matesChange median of the others of its type over the same time, before the common part was taken out
 * @param perYear change a year since that visit; empty where a date is missing or it is less than a month
 * @param drifts whether the change is more than two readings can differ by
 * @param sentence for a person
 */
public record Trend(
        String position,
        List<Point> points,
        double change,
        double matesChange,
        OptionalDouble perYear,
        boolean drifts,
        String sentence) {
    public Trend {
        points = List.copyOf(points);
    }

    /**
     * One value.
     *
     * @param when the visit, in words
     * @param farads on the present meter's scale [F]
     */
    public record Point(String when, double farads) {}
}
