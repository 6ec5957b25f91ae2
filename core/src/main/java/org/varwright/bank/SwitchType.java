package org.varwright.bank;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A type of switching device by its nameplate.
 *
 * @param name unique among switch types
 * @param ratedVolts rated voltage, line to line [V]
 * @param ratedAmperes continuous rms current [A]
 * @param inrushPeakAmperes peak of the capacitor inrush current that it may make [A]; given together with {@code inrushHertz}
 * @param inrushHertz frequency of that inrush [Hz]
 * @param outrushAmpereHertz largest product of peak and frequency of a current that flows through it out of capacitors into a fault [A·Hz]
 * @param capacitiveAmperes capacitor current that it may switch [A rms]
 * @param note free text
 */
public record SwitchType(
        String name,
        OptionalDouble ratedVolts,
        OptionalDouble ratedAmperes,
        OptionalDouble inrushPeakAmperes,
        OptionalDouble inrushHertz,
        OptionalDouble outrushAmpereHertz,
        OptionalDouble capacitiveAmperes,
        Optional<String> note) {}
