package org.varwright.isolation;

import java.util.Comparator;

/**
 * What a state with the doors open leaves to people: conductors that stay live at low voltage, and conductors that no grounding switch grounds.
 *
 * @param lowVoltage bits of conductors
 * @param ungrounded bits of conductors
 */
record Shortfall(long lowVoltage, long ungrounded) {
    static final Shortfall NONE = new Shortfall(0, 0);

    /** Least first: fewest low-voltage conductors, then fewest ungrounded ones, then by the order of the file. */
    static final Comparator<Shortfall> LEAST_FIRST = Comparator.<Shortfall>comparingInt(
                    s -> Long.bitCount(s.lowVoltage))
            .thenComparingInt(s -> Long.bitCount(s.ungrounded))
            .thenComparingLong(s -> s.lowVoltage)
            .thenComparingLong(s -> s.ungrounded);
}
