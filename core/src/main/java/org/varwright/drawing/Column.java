package org.varwright.drawing;

import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Stage;

/**
 * One column of the drawing, with what hangs there on a conductor of its own. A column also carries the feeders of every conductor whose head it is.
 *
 * @param conductor that the thing hangs on
 * @param hangs the thing
 */
record Column(String conductor, Hangs hangs) {
    /** What hangs on a conductor, other than conductors that it feeds. */
    sealed interface Hangs {
        /** Capacitor legs. */
        record Legs(Stage stage) implements Hangs {}

        /** A device to ground. */
        record ToGround(Device device) implements Hangs {}

        /** A second source of the conductor. */
        record Source(EnergySource source) implements Hangs {}

        /** A piece of conductor inside a compartment that has nothing else. */
        record Visit(Compartment compartment) implements Hangs {}

        /** A device down to a conductor that hangs elsewhere. */
        record Bond(Device device, String to) implements Hangs {}

        /** A device across to a conductor of the same layer. */
        record Tie(Device device, String to) implements Hangs {}

        /** Nothing. */
        record Nothing() implements Hangs {}
    }
}
