package org.varwright.transients;

import java.util.List;

/**
 * What happened to a branch in a run.
 *
 * @param kind of change
 * @param branch it happened to
 * @param seconds when, located exactly
 * @param before value of every probe just before
 * @param after value of every probe just after
 */
public record Happening(Kind kind, int branch, double seconds, List<Double> before, List<Double> after) {
    public Happening {
        before = List.copyOf(before);
        after = List.copyOf(after);
    }

    /** Kinds of change. */
    public enum Kind {
        CLOSED,
        OPENED,
        RESTRUCK
    }
}
