package org.varwright.bankfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.varwright.bank.Device;
import org.varwright.bank.KeyCopies;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Lock;
import org.varwright.problem.Message;

/** Holds locks, keys and exchanges against each other, as they are at the start. */
final class KeyCheck {
    private final Draft.IsolationDraft isolation;
    private final Findings findings;
    private final Map<String, Integer> locksByKey = new LinkedHashMap<>();
    private final Map<String, List<String>> trappedAtStart = new LinkedHashMap<>();
    private final Map<String, String> firstPath = new LinkedHashMap<>();
    private final Set<String> exchanged = new LinkedHashSet<>();

    private KeyCheck(Draft.IsolationDraft isolation, Findings findings) {
        this.isolation = isolation;
        this.findings = findings;
    }

    static void check(Draft.IsolationDraft isolation, Findings findings) {
        KeyCheck check = new KeyCheck(isolation, findings);
        isolation.locks().forEach(check::lock);
        isolation.exchanges().forEach(check::exchange);
        if (isolation.complete()) {
            check.keysWithoutLock();
            check.copies();
        }
    }

    private void lock(Item<Lock> item) {
        Lock lock = item.value();
        boolean trapped = false;
        if (lock.on() instanceof Lock.On.OfDevice on) {
            Optional<Device> device = isolation.device(on.name());
            if (device.isPresent()) {
                List<String> positions = device.get().positions();
                if (!positions.contains(lock.holds())) {
                    findings.error(
                            Message.UNKNOWN_NAME,
                            findings.place(item.path() + ".holds"),
                            "position of \"" + on.name() + "\"",
                            Shown.of(lock.holds()),
                            Nearest.hint(lock.holds(), positions),
                            Shown.list(positions));
                }
                String start =
                        isolation.start().getOrDefault(on.name(), device.get().inServicePosition());
                trapped = !start.equals(lock.holds());
            }
        }
        for (String key : lock.keys()) {
            locksByKey.merge(key, 1, Integer::sum);
            firstPath.putIfAbsent(key, item.path() + (lock.keys().size() > 1 ? ".keys" : ".key"));
            if (trapped) {
                trap(key, "lock on " + lock.on().name());
            }
        }
    }

    private void exchange(Item<KeyExchange> item) {
        KeyExchange exchange = item.value();
        exchanged.addAll(exchange.in());
        exchanged.addAll(exchange.out());
        exchange.in().forEach(key -> firstPath.putIfAbsent(key, item.path() + ".in"));
        for (String key : exchange.out()) {
            firstPath.putIfAbsent(key, item.path() + ".out");
            trap(key, exchange.name());
        }
    }

    private void trap(String key, String where) {
        trappedAtStart.computeIfAbsent(key, k -> new ArrayList<>()).add(where);
    }

    private void keysWithoutLock() {
        Set<String> known = locksByKey.keySet();
        Set<String> unlocked = new LinkedHashSet<>(exchanged);
        for (Item<KeyCopies> item : isolation.keys()) {
            String key = item.value().name();
            unlocked.add(key);
            firstPath.putIfAbsent(key, item.path() + ".name");
        }
        unlocked.removeAll(known);
        for (String key : unlocked) {
            if (exchanged.contains(key) && passesOn(key)) {
                continue;
            }
            findings.error(
                    Message.KEY_WITHOUT_LOCK,
                    findings.place(firstPath.getOrDefault(key, "isolation.exchanges")),
                    Shown.of(key),
                    Nearest.hint(key, known) + "keys in locks are " + Shown.list(known));
        }
        for (Map.Entry<String, Integer> entry : locksByKey.entrySet()) {
            if (entry.getValue() == 1 && !exchanged.contains(entry.getKey())) {
                findings.warning(
                        Message.KEY_ALONE,
                        findings.place(firstPath.getOrDefault(entry.getKey(), "isolation.locks")),
                        Shown.of(entry.getKey()));
            }
        }
    }

    /** Whether a key comes out of one exchange and goes into another, which needs no lock. */
    private boolean passesOn(String key) {
        return isolation.exchanges().stream().anyMatch(e -> e.value().out().contains(key))
                && isolation.exchanges().stream().anyMatch(e -> e.value().in().contains(key));
    }

    private void copies() {
        for (Map.Entry<String, List<String>> entry : trappedAtStart.entrySet()) {
            String key = entry.getKey();
            int copies = isolation.keys().stream()
                    .map(Item::value)
                    .filter(k -> k.name().equals(key))
                    .mapToInt(KeyCopies::copies)
                    .findFirst()
                    .orElse(1);
            List<String> where = entry.getValue();
            if (where.size() > copies) {
                findings.error(
                        Message.TOO_FEW_COPIES,
                        findings.place(firstPath.getOrDefault(key, "isolation.locks")),
                        Shown.of(key),
                        String.valueOf(where.size()),
                        Shown.words(where),
                        copies == 1 ? "one copy" : copies + " copies");
            }
        }
    }
}
