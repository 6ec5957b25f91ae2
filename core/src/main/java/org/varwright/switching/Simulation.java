package org.varwright.switching;

import java.util.List;

/**
 * What the time domain said of a closing.
 *
 * <p>Where a length of bus counts, both ends of its inductance are run and each closing named is the worse of two: with stages of several natural
 * frequencies less inductance doesn't always give the larger peak.
 */
public sealed interface Simulation {
    /**
     * The worst that was found.
     *
     * @param together poles closing together, for the largest current
     * @param togetherVolts poles closing together, for the highest voltage
     * @param apart poles up to a quarter cycle apart, for the largest current
     * @param apartVolts poles up to a quarter cycle apart, for the highest voltage
     * @param lesser the same at the other end of the bus's inductance; empty where no length of bus counts
     */
    record Worst(Closing together, Closing togetherVolts, Closing apart, Closing apartVolts, List<Closing> lesser)
            implements Simulation {
        public Worst {
            lesser = List.copyOf(lesser);
        }
    }

    /**
     * At the angles that were asked for.
     *
     * @param closing with the larger current
     * @param lesser the same at the other end of the bus's inductance; empty where no length of bus counts
     */
    record Given(Closing closing, List<Closing> lesser) implements Simulation {
        public Given {
            lesser = List.copyOf(lesser);
        }
    }

    /**
     * Nothing: data are missing.
     *
     * @param why in words
     */
    record NotPossible(String why) implements Simulation {}
}
