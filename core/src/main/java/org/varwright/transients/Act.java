package org.varwright.transients;

/** What a switch pole does. Seconds count from the start of the run. */
public sealed interface Act {
    /** The branch. */
    int branch();

    /** Closes at a time; nothing flows before. */
    record Close(int branch, double seconds) implements Act {}

    /** Its contacts part at a time; it conducts on to the next zero of its current. */
    record Open(int branch, double seconds) implements Act {}

    /** After it has opened, conducts again for good when the voltage across it first reaches {@code volts}, either way round. */
    record Restrike(int branch, double volts) implements Act {}
}
