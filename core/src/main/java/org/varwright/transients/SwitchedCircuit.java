package org.varwright.transients;

import java.util.List;

/**
 * Branches between nodes, some of which may be open.
 *
 * <p>Every loop that can be closed must hold some inductance: a loop of capacitors alone would carry an impulse.
 *
 * @param nodes number of nodes, ground (node 0) included
 * @param branches between them
 * @param radiansPerSecond of every source [rad/s], above 0
 */
public record SwitchedCircuit(int nodes, List<Branch> branches, double radiansPerSecond) {
    public SwitchedCircuit {
        branches = List.copyOf(branches);
    }

    /** Every branch closed. */
    public boolean[] allClosed() {
        boolean[] closed = new boolean[branches.size()];
        java.util.Arrays.fill(closed, true);
        return closed;
    }

    /** Every branch closed but these. */
    public boolean[] allClosedBut(List<Integer> open) {
        boolean[] closed = allClosed();
        open.forEach(b -> closed[b] = false);
        return closed;
    }
}
