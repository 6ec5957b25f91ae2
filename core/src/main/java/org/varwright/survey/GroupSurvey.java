package org.varwright.survey;

import java.util.List;
import org.varwright.basis.Basis;

/**
 * What a reading of units together says.
 *
 * @param name of the place
 * @param row of the table
 * @param units that were read together
 * @param capacitanceFarads as read, corrected [F]; 0 where the meter was over range
 * @param referenceFarads with every unit at its reference [F]
 * @param verdict healthy, watch (a unit among them has failed, which one is not known), or measure again
 * @param probability of the explanation given
 * @param reason one plain sentence
 * @param solved whether the readings determine every unit of it
 * @param bounds of units that are not determined
 * @param next single units whose reading would settle the rest: the fewest that do
 * @param basis how the probability came about
 */
public record GroupSurvey(
        String name,
        int row,
        int units,
        double capacitanceFarads,
        double referenceFarads,
        UnitVerdict verdict,
        double probability,
        String reason,
        boolean solved,
        List<Bounds> bounds,
        List<String> next,
        Basis basis) {
    public GroupSurvey {
        bounds = List.copyOf(bounds);
        next = List.copyOf(next);
    }

    /**
     * What is known of a unit that is not determined.
     *
     * @param position its name
     * @param low at least [F]
     * @param high at most [F]
     */
    public record Bounds(String position, double low, double high) {}
}
