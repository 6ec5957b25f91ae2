package org.varwright.interlock;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Lock;

/** Says why keys never come free, each waiting for another, round and round; and where in the bank file each stands. */
final class KeyLoop {
    private final Scheme scheme;
    private final Verification verification;
    private final Map<String, List<KeyPlace>> atStart;

    KeyLoop(Scheme scheme, Verification verification) {
        this.scheme = scheme;
        this.verification = verification;
        atStart = scheme.keys(scheme.start());
    }

    /** The chain of waiting that starts at a door. */
    String of(String compartment) {
        List<String> links = new ArrayList<>();
        Set<String> seen = new LinkedHashSet<>();
        List<String> needed = neededAt(new Lock.On.OfDoor(compartment));
        while (!needed.isEmpty()) {
            String key = needed.getFirst();
            if (!seen.add(key)) {
                links.add("and " + key + " is where this began");
                break;
            }
            KeyPlace place = atStart.getOrDefault(key, List.of()).getFirst();
            needed = switch (place) {
                case KeyPlace.InLock in -> {
                    List<String> next = neededAt(in.lock().on());
                    links.add(
                            "key " + key + " is trapped in the lock of " + Words.lock(in.lock()) + ", isolation.locks["
                                    + scheme.isolation().locks().indexOf(in.lock()) + "]"
                                    + (next.isEmpty()
                                            ? ", which never comes to that position"
                                            : ", which needs " + Words.keys(next)));
                    yield next;
                }
                case KeyPlace.InExchange in -> {
                    List<String> next = scheme.isolation().exchanges().stream()
                            .filter(e -> e.name().equals(in.exchange()))
                            .flatMap(e -> e.in().stream())
                            .filter(this::isNeverFree)
                            .toList();
                    links.add("key " + key + " is trapped in " + in.exchange() + ", isolation.exchanges["
                            + exchange(in.exchange()) + "]"
                            + (next.isEmpty()
                                    ? ", whose keys are never there together"
                                    : ", which needs " + Words.keys(next)));
                    yield next;
                }
                case KeyPlace.Free free -> List.of();
            };
        }
        return links.isEmpty()
                ? "Its keys come free, but never together: " + locks(compartment) + "."
                : "It waits in a ring: " + String.join("; ", links) + ".";
    }

    /** The locks of a door, by their place in the bank file. */
    private String locks(String compartment) {
        List<String> paths = new ArrayList<>();
        List<Lock> locks = scheme.isolation().locks();
        for (int i = 0; i < locks.size(); i++) {
            if (locks.get(i).on().equals(new Lock.On.OfDoor(compartment))) {
                paths.add("isolation.locks[" + i + "]");
            }
        }
        return String.join(", ", paths);
    }

    private int exchange(String name) {
        List<String> names =
                scheme.isolation().exchanges().stream().map(KeyExchange::name).toList();
        return names.indexOf(name);
    }

    /** Keys that never come free and hold the bolts of this thing at the start. */
    private List<String> neededAt(Lock.On on) {
        List<Boolean> extended = scheme.boltsExtended(scheme.start());
        List<String> keys = new ArrayList<>();
        for (int i = 0; i < extended.size(); i++) {
            Lock lock = scheme.isolation().locks().get(i);
            if (extended.get(i) && lock.on().equals(on)) {
                lock.keys().stream().filter(this::isNeverFree).forEach(keys::add);
            }
        }
        return keys;
    }

    private boolean isNeverFree(String key) {
        if (atStart.getOrDefault(key, List.of()).stream().anyMatch(p -> p instanceof KeyPlace.Free)) {
            return false;
        }
        return verification.possible().stream().noneMatch(move -> frees(move, key));
    }

    private static boolean frees(Move move, String key) {
        return switch (move) {
            case Move.Extend extend -> extend.lock().keys().contains(key);
            case Move.Give give -> contains(give.exchange(), key, false);
            case Move.Return back -> contains(back.exchange(), key, true);
            case Move.Withdraw ignored -> false;
            case Move.Operate ignored -> false;
            case Move.OpenDoor ignored -> false;
            case Move.CloseDoor ignored -> false;
            case Move.Wait ignored -> false;
        };
    }

    private static boolean contains(KeyExchange exchange, String key, boolean in) {
        return (in ? exchange.in() : exchange.out()).contains(key);
    }
}
