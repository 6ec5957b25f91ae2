package org.varwright.switching;

/** What the time domain said of a closing. */
public sealed interface Simulation {
    /**
     * The worst that was found.
     *
     * @param together poles closing together, for the largest current
     * @param togetherVolts poles closing together, for the highest voltage
     * @param apart poles up to a quarter cycle apart, for the largest current
     * @param apartVolts poles up to a quarter cycle apart, for the highest voltage
     */
    record Worst(Closing together, Closing togetherVolts, Closing apart, Closing apartVolts) implements Simulation {}

    /** At the angles that were asked for. */
    record Given(Closing closing) implements Simulation {}

    /**
     * Nothing: data are missing.
     *
     * @param why in words
     */
    record NotPossible(String why) implements Simulation {}
}
