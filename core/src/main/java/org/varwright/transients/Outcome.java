package org.varwright.transients;

import java.util.List;
import java.util.Optional;

/**
 * What a run gave.
 *
 * @param swings one a probe, in their order
 * @param happenings closings, openings and restrikes as they came
 * @param rings free oscillations that closings and restrikes set off
 * @param stepSeconds longest step
 * @param wave values over time where they were asked for
 */
public record Outcome(
        List<Swing> swings, List<Happening> happenings, List<Ring> rings, double stepSeconds, Optional<Wave> wave) {
    public Outcome {
        swings = List.copyOf(swings);
        happenings = List.copyOf(happenings);
        rings = List.copyOf(rings);
    }

    /**
     * Free oscillations after one change.
     *
     * @param seconds when the change was
     * @param hertz frequency of the strongest in each probe that is a current; 0 where nothing swings
     */
    public record Ring(double seconds, List<Double> hertz) {
        public Ring {
            hertz = List.copyOf(hertz);
        }
    }

    /** Frequency of the strongest free oscillation in a current at its peak [Hz]; 0 where nothing was switched on before. */
    public double hertz(int probe) {
        double found = 0.0;
        for (Ring ring : rings) {
            if (ring.seconds() <= swings.get(probe).seconds()) {
                found = ring.hertz().get(probe);
            }
        }
        return found;
    }
}
