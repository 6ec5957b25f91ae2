package org.varwright.bank;

import java.util.OptionalDouble;

/**
 * A series reactor of a stage, one a phase.
 *
 * @param henries inductance [H]
 * @param position where it stands
 * @param purpose what it is for
 * @param resistanceOhms of one phase at the system's frequency [Ω]
 * @param ratedAmperes continuous rms current [A]
 * @param peakAmperes peak current that it withstands mechanically [A]
 */
public record Reactor(
        double henries,
        Position position,
        Purpose purpose,
        OptionalDouble resistanceOhms,
        OptionalDouble ratedAmperes,
        OptionalDouble peakAmperes) {

    /** A reactor of which nothing but the inductance is known. */
    public Reactor(double henries, Position position, Purpose purpose) {
        this(henries, position, purpose, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    }

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
