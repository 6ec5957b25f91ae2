package org.varwright.interlock;

import java.util.Optional;
import org.varwright.bank.Bank;

/**
 * What the locks of a bank enforce and what they don't.
 *
 * @param bank the bank
 * @param scheme its locks, compiled
 * @param verification what came of every property
 */
public record Interlocking(Bank bank, Scheme scheme, Verification verification) {

    /**
     * Verifies the scheme of a bank.
     *
     * @param memoryBytes what one search may hold at most [B]
     */
    public static Interlocking examine(Bank bank, long memoryBytes, Verifier.Progress progress) {
        Scheme scheme = Scheme.of(bank);
        return new Interlocking(bank, scheme, Verifier.verify(scheme, memoryBytes, progress));
    }

    /** What a person must do by rule where no lock enforces the property; empty where it is enforced or undecided. */
    public Optional<String> rule(Property property) {
        return verification.outcome(property) instanceof Verification.Outcome.NotEnforced broken
                ? Optional.of(PersonalRule.of(scheme, bank.words(), property, broken.path()))
                : Optional.empty();
    }
}
