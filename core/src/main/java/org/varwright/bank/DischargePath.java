package org.varwright.bank;

import java.util.OptionalDouble;

/**
 * Windings that stay joined to a stage when it is switched off, so that its charge flows off through them.
 *
 * @param kind what has the windings
 * @param between where they are joined
 * @param resistanceOhms direct-current resistance of one winding [Ω], above 0
 * @param henries magnetizing inductance of one winding, unsaturated [H]
 */
public record DischargePath(Kind kind, Between between, double resistanceOhms, OptionalDouble henries) {
    /** What has the windings. */
    public enum Kind {
        /** A voltage transformer. */
        TRANSFORMER,
        /** A coil made for discharging. */
        COIL
    }

    /** Where the windings are joined. */
    public enum Between {
        /** One between each two lines. */
        LINES,
        /** One from each line to the stage's neutral, or to ground where that is its neutral. */
        LINE_TO_NEUTRAL
    }
}
