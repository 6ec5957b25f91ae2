package org.varwright.bankfile;

import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.problem.Problem;

/**
 * What {@code check} answers: faults, and where there are none, the bank in brief.
 *
 * @param file as given
 * @param errors in the order of the file
 * @param warnings likewise
 * @param bank present when there is no error
 * @param stages in the order of the file; empty when there is an error
 */
public record BankCheck(
        String file, List<Problem> errors, List<Problem> warnings, Optional<Bank> bank, List<StageSummary> stages) {
    public BankCheck {
        errors = List.copyOf(errors);
        warnings = List.copyOf(warnings);
        stages = List.copyOf(stages);
    }

    public static BankCheck of(BankReading reading) {
        List<StageSummary> stages = reading.bank().stream()
                .flatMap(bank -> bank.stages().stream().map(s -> StageSummary.of(s, bank.system())))
                .toList();
        return new BankCheck(reading.file(), reading.errors(), reading.warnings(), reading.bank(), stages);
    }

    /** Whether the bank can be worked with. Warnings do not change that. */
    public boolean ok() {
        return errors.isEmpty();
    }

    /** Rated reactive power of the whole bank [var]. */
    public double ratedVars() {
        return stages.stream().mapToDouble(StageSummary::ratedVars).sum();
    }

    /** Reactive power of the whole bank at nominal voltage [var]. */
    public double varsAtNominal() {
        return stages.stream().mapToDouble(StageSummary::varsAtNominal).sum();
    }
}
