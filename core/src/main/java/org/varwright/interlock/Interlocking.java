package org.varwright.interlock;

import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;

/**
 * What the locks of a bank enforce, what they don't, and what is wrong with them by design.
 *
 * @param bank the bank
 * @param scheme its locks, compiled
 * @param verification what came of every property
 * @param faults design faults by name, worst first
 */
public record Interlocking(Bank bank, Scheme scheme, Verification verification, List<DesignFault> faults) {
    public Interlocking {
        faults = List.copyOf(faults);
    }

    /**
     * Verifies the scheme of a bank and looks for design faults.
     *
     * @param memoryBytes what one search may hold at most [B]
     */
    public static Interlocking examine(Bank bank, long memoryBytes, Verifier.Progress progress) {
        Scheme scheme = Scheme.of(bank);
        Verification verification = Verifier.verify(scheme, memoryBytes, progress);
        return new Interlocking(
                bank, scheme, verification, DesignFaults.of(bank, scheme, verification, memoryBytes, progress));
    }

    /** What a person must do by rule where no lock enforces the property; empty where it is enforced or undecided. */
    public Optional<String> rule(Property property) {
        return verification.outcome(property) instanceof Verification.Outcome.NotEnforced broken
                ? Optional.of(PersonalRule.of(scheme, bank.words(), property, broken.path()))
                : Optional.empty();
    }
}
