package org.varwright.interlock;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.varwright.bank.Compartment;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Interlock;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Lock;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/** What makes an isolation one that can't be reasoned about; every problem in one go. */
final class SchemeCheck {
    private final Isolation isolation;
    private final List<Problem> problems = new ArrayList<>();
    private final Set<String> devices = new HashSet<>();
    private final Set<String> doors = new HashSet<>();

    private SchemeCheck(Isolation isolation) {
        this.isolation = isolation;
    }

    static void require(Isolation isolation, List<StagePoint> stages) {
        SchemeCheck check = new SchemeCheck(isolation);
        check.names(stages);
        check.references();
        if (!check.problems.isEmpty()) {
            throw new VarwrightException(check.problems);
        }
    }

    /** No key is trapped at the start in more places than it has copies. */
    static void requireKeysFor(Scheme scheme) {
        List<Problem> problems = new ArrayList<>();
        State start = scheme.start();
        Map<String, List<KeyPlace>> places = scheme.keys(start);
        scheme.keyCounts().forEach((key, count) -> {
            List<KeyPlace> trapped = places.getOrDefault(key, List.of());
            int copies = scheme.copies(key);
            if (trapped.size() > copies) {
                problems.add(Problem.of(
                        Message.SCHEME_KEY_TRAPPED_TOO_OFTEN,
                        new Place("", 0, 0, placeOf(scheme.isolation(), key)),
                        key,
                        String.valueOf(trapped.size()),
                        Words.list(trapped.stream().map(SchemeCheck::phrase).toList()),
                        copies == 1 ? "1 copy" : copies + " copies"));
            }
        });
        if (!problems.isEmpty()) {
            throw new VarwrightException(problems);
        }
    }

    static String phrase(KeyPlace place) {
        return switch (place) {
            case KeyPlace.InLock in -> "the lock of " + Words.lock(in.lock());
            case KeyPlace.InExchange in -> in.exchange();
            case KeyPlace.Free free -> "a hand";
        };
    }

    private static String placeOf(Isolation isolation, String key) {
        for (int i = 0; i < isolation.locks().size(); i++) {
            if (isolation.locks().get(i).keys().contains(key)) {
                return "isolation.locks[" + i + "]";
            }
        }
        return "isolation.exchanges";
    }

    private void names(List<StagePoint> stages) {
        unique(
                "isolation.devices",
                isolation.devices().stream().map(Device::name).toList(),
                devices);
        unique(
                "isolation.compartments",
                isolation.compartments().stream().map(Compartment::name).toList(),
                doors);
        unique(
                "isolation.sources",
                isolation.sources().stream().map(EnergySource::name).toList(),
                new HashSet<>());
        unique(
                "isolation.exchanges",
                isolation.exchanges().stream().map(KeyExchange::name).toList(),
                new HashSet<>());
        unique("stages", stages.stream().map(StagePoint::name).toList(), new HashSet<>());
        for (StagePoint stage : stages) {
            stage.switchName().ifPresent(s -> known("stages", stage.name(), "device", s, devices));
        }
    }

    private void unique(String path, List<String> names, Set<String> seen) {
        for (int i = 0; i < names.size(); i++) {
            if (!seen.add(names.get(i))) {
                add(Message.SCHEME_NAMED_TWICE, path + "[" + i + "]", names.get(i));
            }
        }
    }

    private void references() {
        for (int i = 0; i < isolation.devices().size(); i++) {
            Device device = isolation.devices().get(i);
            if (device.kind() == Device.Kind.SELECTOR && device.positions().size() < 2) {
                add(Message.SCHEME_SELECTOR_POSITIONS, "isolation.devices[" + i + "]", device.name());
            }
        }
        for (int i = 0; i < isolation.locks().size(); i++) {
            String path = "isolation.locks[" + i + "]";
            Lock lock = isolation.locks().get(i);
            if (lock.keys().isEmpty()) {
                add(Message.SCHEME_LOCK_WITHOUT_KEY, path, Words.lock(lock));
            }
            switch (lock.on()) {
                case Lock.On.OfDevice on -> position(path, "a lock", on.name(), lock.holds());
                case Lock.On.OfDoor on -> known(path, "a lock", "compartment", on.name(), doors);
            }
        }
        for (int i = 0; i < isolation.interlocks().size(); i++) {
            String path = "isolation.interlocks[" + i + "]";
            Interlock interlock = isolation.interlocks().get(i);
            position(path, "an interlock", interlock.device(), interlock.to());
            interlock.requires().forEach((name, positions) -> {
                if (devices.contains(name) || !doors.contains(name)) {
                    positions.forEach(p -> position(path, "an interlock", name, p));
                }
            });
        }
        for (int i = 0; i < isolation.delays().size(); i++) {
            String path = "isolation.delays[" + i + "]";
            Delay delay = isolation.delays().get(i);
            for (String name : delay.open()) {
                known(path, "a delay", "device", name, devices);
                if (isolation
                        .device(name)
                        .filter(d -> d.kind() == Device.Kind.SELECTOR)
                        .isPresent()) {
                    add(Message.SCHEME_DELAY_ON_SELECTOR, path, name);
                }
            }
            switch (delay.of()) {
                case Delay.Of.Bolt bolt -> {
                    if (isolation.locks().stream()
                            .noneMatch(l -> l.on().equals(bolt.on()) && l.keys().contains(bolt.key()))) {
                        add(
                                Message.SCHEME_DELAY_WITHOUT_LOCK,
                                path,
                                bolt.key(),
                                bolt.on().name());
                    }
                }
                case Delay.Of.Move move -> position(path, "a delay", move.device(), move.to());
            }
        }
        isolation.start().forEach((name, position) -> position("isolation.start", "the start", name, position));
        isolation.keys().forEach(k -> {
            if (k.copies() < 1) {
                add(Message.SCHEME_COPIES, "isolation.keys", k.name(), String.valueOf(k.copies()));
            }
        });
    }

    private void position(String path, String what, String device, String position) {
        if (known(path, what, "device", device, devices)) {
            List<String> allowed = isolation.device(device).orElseThrow().positions();
            if (!allowed.contains(position)) {
                add(Message.SCHEME_NO_SUCH_POSITION, path, device, position, Words.list(allowed));
            }
        }
    }

    private boolean known(String path, String what, String kind, String name, Collection<String> names) {
        if (names.contains(name)) {
            return true;
        }
        add(
                Message.SCHEME_UNKNOWN_NAME,
                path,
                what,
                kind,
                name,
                Words.list(names.stream().sorted().toList()));
        return false;
    }

    private void add(Message message, String path, String... arguments) {
        problems.add(Problem.of(message, new Place("", 0, 0, path), arguments));
    }
}
