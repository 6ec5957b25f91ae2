package org.varwright.discharge;

import java.util.List;

/**
 * The opening of a stage in time: which pole cleared when, and what is then held.
 *
 * @param firstPole the pole that cleared first
 * @param clearings in the order of time
 * @param legs voltage held by each leg
 * @param potentials of the conductors against ground right after the last pole cleared; how long they last depends on leakage to ground
 */
public record PoleOpening(String firstPole, List<Clearing> clearings, List<LegHold> legs, List<Potential> potentials) {
    public PoleOpening {
        clearings = List.copyOf(clearings);
        legs = List.copyOf(legs);
        potentials = List.copyOf(potentials);
    }

    /**
     * Poles that cleared at one moment because they carried one current, or one alone.
     *
     * @param poles names of the phases
     * @param seconds after the first pole cleared [s]
     */
    public record Clearing(List<String> poles, double seconds) {
        public Clearing {
            poles = List.copyOf(poles);
        }
    }

    /**
     * What one leg holds.
     *
     * @param leg name
     * @param volts across it [V], counted from the line towards the neutral, of a delta from the first phase to the second
     * @param perPeak the same as a multiple of the peak of a healthy leg in service
     */
    public record LegHold(String leg, double volts, double perPeak) {}

    /**
     * What a conductor stands at.
     *
     * @param conductor {@code A}, {@code neutral} and the like
     * @param volts against ground [V]
     * @param perPeak as a multiple of the peak of line to neutral in service
     */
    public record Potential(String conductor, double volts, double perPeak) {}

    /** The highest voltage held by a leg, as a multiple of its peak. */
    public double highestPerPeak() {
        return legs.stream().mapToDouble(l -> Math.abs(l.perPeak())).max().orElse(0.0);
    }
}
