package org.varwright.interlock;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.Bank;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.Interlock;
import org.varwright.bank.Isolation;
import org.varwright.bank.Lock;
import org.varwright.problem.VarwrightException;

/**
 * The list that an auditor walks: every lock with what to try by hand, every key with how many of it there must be, and the property that each protects.
 *
 * <p><b>Model.</b> What a lock protects is found by leaving it out and verifying the rest: the properties that are enforced with it and not without it (ILK-8).
 *
 * @param bank the bank
 * @param locks every lock in the order of the file
 * @param keys every key in order of first mention
 * @param interlocks what blocks moves without a key, and delays
 */
public record InterlockAudit(Bank bank, List<LockItem> locks, List<KeyItem> keys, List<BlockItem> interlocks) {
    public InterlockAudit {
        locks = List.copyOf(locks);
        keys = List.copyOf(keys);
        interlocks = List.copyOf(interlocks);
    }

    /** What a lock, interlock or delay protects. */
    public sealed interface Protects {
        /** Without it these properties, enforced with it, are broken; none where others do its work too. */
        record These(Set<Property> properties) implements Protects {
            public These {
                properties = Set.copyOf(properties);
            }
        }

        /** Not known: leaving it out gives a scheme that contradicts itself or is too large. */
        record NotKnown(String why) implements Protects {}
    }

    /**
     * A lock.
     *
     * @param lock as in the file
     * @param traps what to see on it: its keys and the position that it holds
     * @param tries moves that must be refused, to try by hand, with the state to try them in
     * @param protects what depends on it
     */
    public record LockItem(Lock lock, String traps, List<String> tries, Protects protects) {
        public LockItem {
            tries = List.copyOf(tries);
        }
    }

    /**
     * A key.
     *
     * @param key its name
     * @param copies how many there must be in all
     * @param inService where each copy is in service, in words
     * @param places everything that takes it
     */
    public record KeyItem(String key, int copies, List<String> inService, List<String> places) {
        public KeyItem {
            inService = List.copyOf(inService);
            places = List.copyOf(places);
        }
    }

    /**
     * An interlock or a delay.
     *
     * @param what it is, in words
     * @param tries moves that must be refused
     * @param protects what depends on it
     */
    public record BlockItem(String what, List<String> tries, Protects protects) {
        public BlockItem {
            tries = List.copyOf(tries);
        }
    }

    /**
     * Writes the list for a bank.
     *
     * @param memoryBytes what one search may hold at most [B]
     */
    public static InterlockAudit of(Interlocking interlocking, long memoryBytes, Verifier.Progress progress) {
        Auditor auditor = new Auditor(interlocking, memoryBytes, progress);
        return new InterlockAudit(interlocking.bank(), auditor.locks(), auditor.keys(), auditor.interlocks());
    }

    /** Walks the scheme for {@link #of}. */
    private static final class Auditor {
        private final Scheme scheme;
        private final Isolation isolation;
        private final Verification with;
        private final long memoryBytes;
        private final Verifier.Progress progress;

        Auditor(Interlocking interlocking, long memoryBytes, Verifier.Progress progress) {
            scheme = interlocking.scheme();
            isolation = scheme.isolation();
            with = interlocking.verification();
            this.memoryBytes = memoryBytes;
            this.progress = progress;
        }

        List<LockItem> locks() {
            List<LockItem> items = new ArrayList<>();
            for (int i = 0; i < isolation.locks().size(); i++) {
                Lock lock = isolation.locks().get(i);
                List<Lock> others = new ArrayList<>(isolation.locks());
                others.remove(i);
                items.add(new LockItem(
                        lock,
                        Words.keys(lock.keys()) + (lock.keys().size() == 1 ? " comes" : " come") + " free only while "
                                + thing(lock) + " is held " + lock.holds(),
                        lockTries(lock),
                        protects(without(others))));
            }
            return items;
        }

        /** Only these locks, and only the delays that still hold one of them. */
        private Isolation without(List<Lock> others) {
            Isolation changed = Changed.locks(isolation, others);
            List<Delay> delays = isolation.delays().stream()
                    .filter(d -> !(d.of() instanceof Delay.Of.Bolt bolt)
                            || others.stream()
                                    .anyMatch(l ->
                                            l.on().equals(bolt.on()) && l.keys().contains(bolt.key())))
                    .toList();
            return new Isolation(
                    changed.sources(),
                    changed.devices(),
                    changed.compartments(),
                    others,
                    changed.keys(),
                    changed.exchanges(),
                    changed.interlocks(),
                    delays,
                    changed.start());
        }

        private static String thing(Lock lock) {
            return switch (lock.on()) {
                case Lock.On.OfDevice on -> on.name();
                case Lock.On.OfDoor on -> "the door of " + on.name();
            };
        }

        private List<String> lockTries(Lock lock) {
            List<String> tries = new ArrayList<>();
            switch (lock.on()) {
                case Lock.On.OfDoor on ->
                    tries.add("bolt extended, " + Words.keys(lock.keys()) + " taken away: pull at the door of "
                            + on.name() + "; it must not open");
                case Lock.On.OfDevice on -> {
                    tries.add("bolt extended, " + Words.keys(lock.keys()) + " taken away: try to move " + on.name()
                            + " from " + lock.holds() + "; it must not move");
                    for (String position :
                            isolation.device(on.name()).orElseThrow().positions()) {
                        if (!position.equals(lock.holds())) {
                            tries.add(on.name() + " " + position + ": try to turn and take " + Words.keys(lock.keys())
                                    + "; trapped, must not come out");
                        }
                    }
                }
            }
            if (lock.on() instanceof Lock.On.OfDoor on) {
                tries.add("door of " + on.name() + " open: try to turn and take " + Words.keys(lock.keys())
                        + "; trapped, must not come out");
            }
            if (lock.keys().size() > 1) {
                tries.add("only one of " + Words.list(lock.keys()) + " in: try to withdraw the bolt; it must not move");
            }
            tries.add("with every other key of the site: try to withdraw the bolt; none but " + Words.keys(lock.keys())
                    + " may do it");
            return tries;
        }

        List<KeyItem> keys() {
            Map<String, List<KeyPlace>> inService = scheme.keys(scheme.inService());
            List<KeyItem> items = new ArrayList<>();
            for (String key : isolation.keyNames()) {
                List<String> places = new ArrayList<>();
                isolation.locks().stream()
                        .filter(l -> l.keys().contains(key))
                        .forEach(l -> places.add("lock of " + Words.lock(l)));
                isolation.exchanges().forEach(e -> {
                    if (e.in().contains(key)) {
                        places.add(e.name() + ", in");
                    }
                    if (e.out().contains(key)) {
                        places.add(e.name() + ", out");
                    }
                });
                items.add(new KeyItem(
                        key,
                        scheme.copies(key),
                        inService.getOrDefault(key, List.of()).stream()
                                .map(p -> p instanceof KeyPlace.Free
                                        ? "free: in its box, or hanging where it releases nothing"
                                        : "trapped in " + SchemeCheck.phrase(p))
                                .toList(),
                        places));
            }
            return items;
        }

        List<BlockItem> interlocks() {
            List<BlockItem> items = new ArrayList<>();
            isolation.interlocks().forEach(interlock -> {
                List<String> tries = new ArrayList<>();
                List<String> conditions = new ArrayList<>();
                interlock.requires().forEach((name, positions) -> {
                    conditions.add(name + " " + Words.list(positions, "or"));
                    List<String> all =
                            isolation.device(name).map(Device::positions).orElse(List.of("closed", "open"));
                    all.stream()
                            .filter(p -> !positions.contains(p))
                            .forEach(p -> tries.add(
                                    name + " " + p + ": " + new Move.Operate(interlock.device(), interlock.to()).text()
                                            + "; must be refused"));
                });
                items.add(new BlockItem(
                        interlock.device() + " comes to " + interlock.to() + " only with "
                                + Words.list(conditions.stream().sorted().toList()),
                        tries.stream().sorted().toList(),
                        protects(without(interlock, null))));
            });
            isolation.delays().forEach(delay -> {
                String held = switch (delay.of()) {
                    case Delay.Of.Bolt bolt ->
                        "taking key " + bolt.key() + " from " + bolt.on().name();
                    case Delay.Of.Move move -> "moving " + move.device() + " to " + move.to();
                };
                String open = Words.list(delay.open());
                items.add(new BlockItem(
                        held + " is held back until the time after the opening of " + open + " has passed",
                        List.of(
                                "with " + open + " just opened: try " + held + "; must be refused",
                                "with " + (delay.open().size() == 1 ? open : "one of " + open) + " closed: try " + held
                                        + "; must be refused",
                                "measure the time with a watch and write it down"),
                        protects(without(null, delay))));
            });
            return items;
        }

        private Isolation without(@Nullable Interlock interlock, @Nullable Delay delay) {
            return new Isolation(
                    isolation.sources(),
                    isolation.devices(),
                    isolation.compartments(),
                    isolation.locks(),
                    isolation.keys(),
                    isolation.exchanges(),
                    isolation.interlocks().stream()
                            .filter(i -> !Objects.equals(i, interlock))
                            .toList(),
                    isolation.delays().stream()
                            .filter(d -> !Objects.equals(d, delay))
                            .toList(),
                    isolation.start());
        }

        /** What is enforced with it and broken without it. */
        private Protects protects(Isolation without) {
            Scheme changed;
            try {
                changed = Scheme.of(without, scheme.stages());
            } catch (VarwrightException contradiction) {
                return new Protects.NotKnown("without it the scheme contradicts itself");
            }
            Verification after = Verifier.verify(changed, memoryBytes, progress);
            Set<Property> lost = EnumSet.noneOf(Property.class);
            for (Property property : Property.values()) {
                if (with.isEnforced(property) && after.outcome(property) instanceof Verification.Outcome.NotEnforced) {
                    lost.add(property);
                }
            }
            if (with.complete() && after.complete()) {
                return new Protects.These(lost);
            }
            return new Protects.NotKnown(
                    lost.isEmpty()
                            ? "too large to tell"
                            : "at least "
                                    + Words.list(lost.stream().map(Property::id).toList())
                                    + "; too large to tell what else");
        }
    }
}
