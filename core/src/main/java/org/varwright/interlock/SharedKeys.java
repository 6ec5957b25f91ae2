package org.varwright.interlock;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Isolation;

/** Finds keys that several banks of one site have in common: what is one key in each file is then a second copy for the other bank. */
public final class SharedKeys {
    private static final int SEARCH_STATES = 200_000;

    private final long memoryBytes;
    private final Verifier.Progress progress;
    private final List<DesignFault> faults = new ArrayList<>();

    private SharedKeys(long memoryBytes, Verifier.Progress progress) {
        this.memoryBytes = memoryBytes;
        this.progress = progress;
    }

    /** One fault for every key that fits locks of two of these banks, with what it breaks. */
    public static List<DesignFault> of(List<Bank> banks, long memoryBytes, Verifier.Progress progress) {
        SharedKeys shared = new SharedKeys(memoryBytes, progress);
        for (int a = 0; a < banks.size(); a++) {
            for (int b = 0; b < banks.size(); b++) {
                if (a != b) {
                    shared.compare(banks.get(a), banks.get(b), a < b);
                }
            }
        }
        return List.copyOf(shared.faults);
    }

    private void compare(Bank here, Bank there, boolean reportHarmless) {
        Isolation isolation = here.isolation().orElse(null);
        if (isolation == null || there.isolation().isEmpty()) {
            return;
        }
        Scheme scheme = Scheme.of(here);
        Verification alone = Verifier.verify(scheme, memoryBytes, progress);
        for (String key : isolation.keyNames()) {
            if (there.isolation().get().keyNames().contains(key)) {
                report(here, there, key, scheme, alone, reportHarmless);
            }
        }
    }

    private void report(Bank here, Bank there, String key, Scheme scheme, Verification alone, boolean reportHarmless) {
        Scheme lent = Scheme.of(Changed.copies(scheme.isolation(), key, scheme.copies(key) + 1), scheme.stages());
        Verification with = Verifier.verify(lent, memoryBytes, progress);
        Set<Property> lost = EnumSet.noneOf(Property.class);
        for (Property property : Property.values()) {
            if (alone.isEnforced(property) && with.outcome(property) instanceof Verification.Outcome.NotEnforced) {
                lost.add(property);
            }
        }
        boolean decided = alone.complete() && with.complete();
        if (lost.isEmpty()) {
            if (reportHarmless || !decided) {
                faults.add(new DesignFault(
                        DesignFault.Kind.SHARED_KEY,
                        "Key " + key + " fits locks of " + here.name() + " and of " + there.name()
                                + (decided
                                        ? ". A copy lent from one to the other breaks no property that its own keys enforce."
                                        : ". What a copy lent from one to the other breaks is undecided: count it as harmful."),
                        List.of(),
                        List.of(),
                        "Keep each bank's keys in its own box; never carry one to the other bank."));
            }
            return;
        }
        Property worst = lost.iterator().next();
        Verification.Outcome.NotEnforced broken = (Verification.Outcome.NotEnforced) with.outcome(worst);
        faults.add(new DesignFault(
                DesignFault.Kind.SHARED_KEY,
                "Key " + key + " fits locks of " + here.name() + " and of " + there.name() + ". "
                        + howItComesFree(there, key)
                        + " Carried to " + here.name() + " it breaks "
                        + Words.list(lost.stream().map(Property::id).toList()) + ".",
                broken.path(),
                List.of(new DesignFault.Remedy(
                        "give the locks of " + there.name() + " that take key " + key + " another key code",
                        lost,
                        alone.states())),
                "Keep each bank's keys in its own box; never carry one to the other bank."));
    }

    private static String howItComesFree(Bank there, String key) {
        Scheme scheme = Scheme.of(there);
        Search.Result result = Search.cheapest(
                scheme,
                scheme.start(),
                state -> scheme.keys(state).getOrDefault(key, List.of()).stream()
                        .anyMatch(p -> p instanceof KeyPlace.Free),
                (before, move, after) -> true,
                move -> 1,
                SEARCH_STATES);
        return switch (result) {
            case Search.Result.Found found
            when found.path().isEmpty() -> "At " + there.name() + " it is free in service.";
            case Search.Result.Found found ->
                "At " + there.name() + " it comes free in "
                        + InterlockText.moves(found.path().size()) + ", the last of them: "
                        + found.path().getLast().move().text() + ".";
            case Search.Result.None ignored ->
                "At " + there.name() + " it never comes free by the keys; it would have to be taken from its box.";
            case Search.Result.Undecided ignored ->
                "Whether it comes free at " + there.name() + " is undecided; count it as free.";
        };
    }
}
