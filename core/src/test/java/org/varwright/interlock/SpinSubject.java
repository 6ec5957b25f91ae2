package org.varwright.interlock;

import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Isolation;

/**
 * A scheme and the same scheme for SPIN, for measurements outside this package.
 *
 * @param name what to call it
 * @param scheme for {@link Verifier}
 * @param promela for SPIN: the same states and moves, with nothing judged or printed
 */
public record SpinSubject(String name, Scheme scheme, String promela) {
    private static final long MEMORY_BYTES = 2_000_000_000L;

    /** The row of {@link Schemes#enclosed} with this many stages. */
    public static SpinSubject row(int stages) {
        Schemes schemes = Schemes.enclosed(stages);
        return of("row of " + stages + " stages", schemes.isolation(), schemes.stages());
    }

    /** The scheme of a bank; empty where the bank has none. */
    public static Optional<SpinSubject> of(Bank bank) {
        return bank.isolation().map(isolation -> of(bank.name(), isolation, Scheme.stagesOf(bank)));
    }

    private static SpinSubject of(String name, Isolation isolation, List<StagePoint> stages) {
        return new SpinSubject(name, Scheme.of(isolation, stages), PromelaModel.bare(isolation, stages));
    }

    /** Visits every state itself, as SPIN does. */
    public Verification oneByOne() {
        return Verifier.verifyOneByOne(scheme, MEMORY_BYTES, Verifier.Progress.SILENT);
    }

    /** Visits one of all states that differ only by swapping stages that are alike, as the commands do. */
    public Verification alikeOnce() {
        return Verifier.verify(scheme, MEMORY_BYTES, Verifier.Progress.SILENT);
    }
}
