package org.varwright.discharge;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is asked of a discharge beside its waits.
 *
 * @param stick the discharge stick at hand; empty: what is needed is said instead
 * @param readings taken on single units
 * @param afterSeconds a time after opening for which the voltages are wanted [s], 0 or more
 * @param timeConstants a number of time constants that someone would wait, above 0
 */
public record Question(
        Optional<Stick> stick, UnitReadings readings, OptionalDouble afterSeconds, OptionalDouble timeConstants) {
    public static final Question NOTHING_MORE =
            new Question(Optional.empty(), UnitReadings.NONE, OptionalDouble.empty(), OptionalDouble.empty());

    public Question {
        if (afterSeconds.orElse(0.0) < 0.0 || !(timeConstants.orElse(1.0) > 0.0)) {
            throw new IllegalArgumentException("question: a time or a number of time constants is out of range");
        }
    }

    public Question with(Optional<Stick> given) {
        return new Question(given, readings, afterSeconds, timeConstants);
    }

    /** The same with readings of single units. */
    public Question with(UnitReadings taken) {
        return new Question(stick, taken, afterSeconds, timeConstants);
    }

    /** The same for a time after opening [s]. */
    public Question after(double seconds) {
        return new Question(stick, readings, OptionalDouble.of(seconds), timeConstants);
    }

    /** The same for a number of time constants. */
    public Question timeConstants(double count) {
        return new Question(stick, readings, afterSeconds, OptionalDouble.of(count));
    }
}
