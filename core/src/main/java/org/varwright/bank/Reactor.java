package org.varwright.bank;

/**
 * A series reactor of a stage, one a phase.
 *
 * @param henries inductance [H]
 * @param position where it stands
 * @param purpose what it is for
 */
public record Reactor(double henries, Position position, Purpose purpose) {
    /** Where in the leg. */
    public enum Position {
        LINE,
        NEUTRAL
    }

    /** What it is for. */
    public enum Purpose {
        INRUSH,
        DETUNING,
        FILTER
    }
}
