package org.varwright.duty;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Harmonic;
import org.varwright.bank.Spare;
import org.varwright.bank.TransformerRatio;

/**
 * What is asked about a bank's duty.
 *
 * @param busVolts one more voltage to look at, line to line [V]
 * @param harmonics background and injected, in place of those of the bank file
 * @param measured harmonics of the voltage as read at the bus with the bank on; only voltages
 * @param overvoltage a short-time overvoltage
 * @param elsewhere another system that the bank's units might be put to
 * @param moreSpares spares besides those of the bank file
 * @param entered ratios set in the control where they differ from the transformers fitted
 */
public record DutyQuestion(
        OptionalDouble busVolts,
        Optional<List<Harmonic>> harmonics,
        List<Harmonic> measured,
        Optional<Overvoltage> overvoltage,
        Optional<Elsewhere> elsewhere,
        List<Spare> moreSpares,
        EnteredRatios entered) {
    /** What the bank file alone asks. */
    public static final DutyQuestion PLAIN = new DutyQuestion(
            OptionalDouble.empty(),
            Optional.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            new EnteredRatios(Optional.empty(), Optional.empty()));

    public DutyQuestion {
        measured = List.copyOf(measured);
        moreSpares = List.copyOf(moreSpares);
    }

    /**
     * A voltage for a time.
     *
     * @param height how high
     * @param seconds how long [s], above 0
     */
    public record Overvoltage(Height height, double seconds) {}

    /** How high an overvoltage is. */
    public sealed interface Height {
        /** Rms voltage across the units over their rated voltage. */
        record PerRated(double multiple) implements Height {}

        /** Bus voltage, line to line [V]. */
        record Bus(double volts) implements Height {}
    }

    /**
     * Another system.
     *
     * @param volts line to line [V]
     * @param hertz frequency [Hz]
     */
    public record Elsewhere(double volts, double hertz) {}

    /**
     * Ratios entered in the control.
     *
     * @param voltage of the voltage transformer
     * @param current of the current transformer
     */
    public record EnteredRatios(Optional<TransformerRatio> voltage, Optional<TransformerRatio> current) {}
}
