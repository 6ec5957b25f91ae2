package org.varwright.resonance;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Harmonic;

/**
 * What is asked of a bank at harmonics.
 *
 * @param busVolts fundamental at the bus, line to line [V]; empty for the highest sustained voltage, else the nominal one
 * @param harmonics in place of those of the bank file; empty for the bank file's
 * @param stages names of the stages that are on; empty for every combination
 */
public record ResonanceQuestion(
        OptionalDouble busVolts, Optional<List<Harmonic>> harmonics, Optional<List<String>> stages) {
    /** Every combination, with what the bank file says. */
    public static final ResonanceQuestion PLAIN =
            new ResonanceQuestion(OptionalDouble.empty(), Optional.empty(), Optional.empty());

    double volts(Bank bank) {
        return busVolts.orElse(bank.system().maximumVolts().orElse(bank.system().nominalVolts()));
    }

    List<Harmonic> spectrum(Bank bank) {
        return harmonics.orElse(bank.system().harmonics());
    }
}
