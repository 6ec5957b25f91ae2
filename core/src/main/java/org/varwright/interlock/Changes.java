package org.varwright.interlock;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Compartment;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Interlock;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyCopies;
import org.varwright.bank.Lock;

/** Changes worth trying, in the order in which they are tried: simplest and likeliest first. */
final class Changes {
    /** What a change calls the key that it adds; the person who carries it out gives it a real name. */
    static final String NEW_KEY = "(new key)";

    private final Isolation isolation;
    private final List<StagePoint> stages;
    private final List<Change> changes = new ArrayList<>();

    private Changes(Scheme scheme) {
        isolation = scheme.isolation();
        stages = scheme.stages();
    }

    /** Changes that might make people keep this property. */
    static List<Change> of(Scheme scheme, Property property) {
        Changes all = new Changes(scheme);
        all.fewerCopies();
        switch (property) {
            case EXPOSED_LIVE -> {
                all.doorLocks();
                all.otherPositions();
                all.sources();
            }
            case EXPOSED_CHARGED -> {
                all.doorLocks();
                all.delays();
                all.otherPositions();
            }
            case CLOSED_TO_GROUND -> {
                all.otherPositions();
                all.apart();
                all.sources();
            }
            case LOAD_BREAK -> {
                all.otherPositions();
                all.unloaded();
            }
            case RECHARGE -> all.reclosing();
            case GROUNDED_CHARGED -> {
                all.delays();
                all.otherPositions();
                all.apart();
            }
            case UNGROUNDED_ENTRY -> {
                all.doorLocks();
                all.otherPositions();
                all.groundingKeys();
            }
            case KEY_STRANDED -> {
                all.otherPositions();
                all.fewerKeys();
            }
            case EXPOSED_LOW_VOLTAGE -> {}
        }
        return List.copyOf(all.changes);
    }

    /** Changes that might let a key loop start. */
    static List<Change> toStart(Scheme scheme) {
        Changes all = new Changes(scheme);
        all.otherPositions();
        all.fewerKeys();
        all.fewerLocks();
        return List.copyOf(all.changes);
    }

    private void add(DesignFault.Kind fault, String text, Isolation changed) {
        changes.add(new Change(fault, text, changed));
    }

    /** How the change begins that leaves one copy of a key. */
    static String oneCopyOf(String key) {
        return "leave one copy of key " + key + " ";
    }

    /** How every change begins that puts a lock on a door. */
    static String lockOnDoor(String compartment) {
        return "put a lock on the door of " + compartment + " ";
    }

    private void fewerCopies() {
        for (KeyCopies key : isolation.keys()) {
            if (key.copies() > 1) {
                add(
                        DesignFault.Kind.SECOND_COPY,
                        oneCopyOf(key.name()) + "and destroy the other " + (key.copies() == 2 ? "one" : "ones"),
                        Changed.copies(isolation, key.name(), 1));
            }
        }
    }

    private void otherPositions() {
        for (int i = 0; i < isolation.locks().size(); i++) {
            Lock lock = isolation.locks().get(i);
            if (lock.on() instanceof Lock.On.OfDevice on) {
                for (String position : isolation.device(on.name()).orElseThrow().positions()) {
                    if (!position.equals(lock.holds())) {
                        add(
                                DesignFault.Kind.WRONG_POSITION,
                                "let the lock of " + on.name() + " with " + Words.keys(lock.keys()) + " hold "
                                        + position + " instead of " + lock.holds(),
                                Changed.lock(isolation, i, new Lock(lock.on(), lock.keys(), position, lock.note())));
                    }
                }
            }
        }
    }

    private void fewerKeys() {
        for (int i = 0; i < isolation.locks().size(); i++) {
            Lock lock = isolation.locks().get(i);
            for (String key : lock.keys()) {
                List<String> others =
                        lock.keys().stream().filter(k -> !k.equals(key)).toList();
                if (!others.isEmpty()) {
                    add(
                            DesignFault.Kind.KEY_STRANDED,
                            "take key " + key + " out of the lock of " + Words.lock(lock),
                            Changed.lock(isolation, i, new Lock(lock.on(), others, lock.holds(), lock.note())));
                }
            }
        }
    }

    private void fewerLocks() {
        for (int i = 0; i < isolation.locks().size(); i++) {
            Lock lock = isolation.locks().get(i);
            List<Lock> others = new ArrayList<>(isolation.locks());
            others.remove(i);
            add(
                    DesignFault.Kind.KEY_LOOP,
                    "take off the lock of " + Words.lock(lock) + " with " + Words.keys(lock.keys()),
                    Changed.locks(isolation, others));
        }
    }

    private void doorLocks() {
        for (Compartment compartment : isolation.compartments()) {
            Lock.On door = new Lock.On.OfDoor(compartment.name());
            if (isolation.locks().stream().anyMatch(l -> l.on().equals(door))) {
                continue;
            }
            Isolation locked = Changed.moreLocks(isolation, Changed.lock(door, Device.CLOSED, NEW_KEY));
            for (int e = 0; e < isolation.exchanges().size(); e++) {
                add(
                        DesignFault.Kind.DOOR_WITHOUT_LOCK,
                        lockOnDoor(compartment.name()) + "and let its key come out of "
                                + isolation.exchanges().get(e).name(),
                        Changed.exchange(locked, e, List.of(), List.of(NEW_KEY)));
            }
            for (Device device : grounding()) {
                add(
                        DesignFault.Kind.DOOR_WITHOUT_LOCK,
                        lockOnDoor(compartment.name()) + "and let its key come out of a lock that holds "
                                + device.name() + " closed",
                        Changed.moreLocks(locked, Changed.lock(on(device), Device.CLOSED, NEW_KEY)));
            }
            for (Device device : isolating()) {
                add(
                        DesignFault.Kind.DOOR_WITHOUT_LOCK,
                        lockOnDoor(compartment.name())
                                + "and let its key come out of a lock that holds " + device.name() + " "
                                + furthest(device),
                        Changed.moreLocks(locked, Changed.lock(on(device), furthest(device), NEW_KEY)));
            }
        }
    }

    private void sources() {
        for (EnergySource source : isolation.sources()) {
            for (Device device : isolating()) {
                boolean next = device.between()
                        .filter(b -> b.first().equals(source.at()) || b.second().equals(source.at()))
                        .isPresent();
                if (!source.isLowVoltage() && next) {
                    bringIn(source, device);
                }
            }
        }
    }

    private void bringIn(EnergySource source, Device device) {
        String held = furthest(device);
        Isolation locked = Changed.moreLocks(isolation, Changed.lock(on(device), held, NEW_KEY));
        String start = "bring " + source.name() + " into the scheme: a lock that holds " + device.name() + " " + held
                + ", its key needed at ";
        for (int e = 0; e < isolation.exchanges().size(); e++) {
            add(
                    DesignFault.Kind.SOURCE_LEFT_OUT,
                    start + isolation.exchanges().get(e).name() + " too",
                    Changed.exchange(locked, e, List.of(NEW_KEY), List.of()));
        }
        for (int i = 0; i < isolation.locks().size(); i++) {
            Lock lock = isolation.locks().get(i);
            boolean blocksGrounding = lock.holds().equals(Device.OPEN)
                    && isolation
                            .device(lock.on().name())
                            .filter(d -> d.kind() == Device.Kind.GROUNDING_SWITCH)
                            .isPresent();
            if (blocksGrounding || lock.on() instanceof Lock.On.OfDoor) {
                add(
                        DesignFault.Kind.SOURCE_LEFT_OUT,
                        start + "the lock of " + Words.lock(lock) + " too",
                        Changed.lock(
                                locked,
                                i,
                                new Lock(
                                        lock.on(),
                                        Changed.plus(lock.keys(), List.of(NEW_KEY)),
                                        lock.holds(),
                                        lock.note())));
            }
        }
    }

    private void delays() {
        List<String> load = loadDevices();
        for (Lock lock : isolation.locks()) {
            if (lock.on() instanceof Lock.On.OfDevice on) {
                add(
                        DesignFault.Kind.MISSING_DELAY,
                        "hold back key " + lock.keys().getFirst() + " of the lock of " + Words.lock(lock)
                                + " until the discharge time after the opening of " + Words.list(load) + " has passed",
                        Changed.delays(
                                isolation,
                                List.of(delay(new Delay.Of.Bolt(on, lock.keys().getFirst()), load))));
            }
        }
        for (Device device : grounding()) {
            add(
                    DesignFault.Kind.MISSING_DELAY,
                    "hold back the closing of " + device.name() + " until the discharge time after the opening of "
                            + Words.list(load) + " has passed",
                    Changed.delays(isolation, List.of(delay(new Delay.Of.Move(device.name(), Device.CLOSED), load))));
        }
    }

    /** A delay on closing each switch, alone and together with breakers and disconnectors. */
    private void reclosing() {
        List<Device> switches = ofKind(Device.Kind.STAGE_SWITCH, Device.Kind.LOAD_BREAK_SWITCH);
        List<Device> breakers = ofKind(Device.Kind.BREAKER);
        List<Device> disconnectors = ofKind(Device.Kind.DISCONNECTOR);
        for (List<Device> held : List.of(
                switches,
                breakers,
                Changed.plus(switches, breakers),
                Changed.plus(Changed.plus(switches, breakers), disconnectors))) {
            if (!held.isEmpty()) {
                List<String> names = held.stream().map(Device::name).toList();
                add(
                        DesignFault.Kind.MISSING_DELAY,
                        "hold back the closing of " + Words.list(names)
                                + " until the discharge time after opening has passed",
                        Changed.delays(
                                isolation,
                                names.stream()
                                        .map(n -> delay(new Delay.Of.Move(n, Device.CLOSED), List.of(n)))
                                        .toList()));
            }
        }
    }

    private void apart() {
        for (Device ground : grounding()) {
            for (Device other : isolating()) {
                List<String> away = other.positions().stream()
                        .filter(p -> !p.equals(Device.CLOSED))
                        .toList();
                add(
                        DesignFault.Kind.MISSING_INTERLOCK,
                        "interlock " + ground.name() + " and " + other.name()
                                + " so that neither closes while the other is closed",
                        Changed.interlocks(
                                isolation,
                                List.of(
                                        Changed.interlock(ground.name(), Device.CLOSED, other.name(), away),
                                        Changed.interlock(
                                                other.name(), Device.CLOSED, ground.name(), List.of(Device.OPEN)))));
            }
        }
    }

    /** A disconnector moves only when what carries the load is open. */
    private void unloaded() {
        List<List<Device>> ways = new ArrayList<>();
        ofKind(Device.Kind.BREAKER).forEach(b -> ways.add(List.of(b)));
        ways.add(ofKind(Device.Kind.STAGE_SWITCH, Device.Kind.LOAD_BREAK_SWITCH));
        List<Device> disconnectors = ofKind(Device.Kind.DISCONNECTOR);
        for (List<Device> first : ways) {
            if (first.isEmpty()) {
                continue;
            }
            List<Interlock> interlocks = new ArrayList<>();
            for (Device disconnector : disconnectors) {
                for (Device load : first) {
                    List<String> away = load.positions().stream()
                            .filter(p -> !p.equals(Device.CLOSED))
                            .toList();
                    interlocks.add(Changed.interlock(disconnector.name(), Device.OPEN, load.name(), away));
                    interlocks.add(Changed.interlock(disconnector.name(), Device.CLOSED, load.name(), away));
                }
            }
            add(
                    DesignFault.Kind.MISSING_INTERLOCK,
                    "interlock "
                            + Words.list(
                                    disconnectors.stream().map(Device::name).toList())
                            + " so that it moves only while "
                            + Words.list(first.stream().map(Device::name).toList())
                            + (first.size() == 1 ? " is" : " are") + " open",
                    Changed.interlocks(isolation, interlocks));
        }
    }

    /** The key of a door or of an exchange comes only when a grounding switch is closed. */
    private void groundingKeys() {
        for (Device device : grounding()) {
            Isolation locked = Changed.moreLocks(isolation, Changed.lock(on(device), Device.CLOSED, NEW_KEY));
            for (int e = 0; e < isolation.exchanges().size(); e++) {
                add(
                        DesignFault.Kind.MISSING_INTERLOCK,
                        "put a lock on " + device.name() + " that holds it closed, its key needed at "
                                + isolation.exchanges().get(e).name() + " too",
                        Changed.exchange(locked, e, List.of(NEW_KEY), List.of()));
            }
            for (int i = 0; i < isolation.locks().size(); i++) {
                Lock lock = isolation.locks().get(i);
                if (lock.on() instanceof Lock.On.OfDoor) {
                    add(
                            DesignFault.Kind.MISSING_INTERLOCK,
                            "put a lock on " + device.name() + " that holds it closed, its key needed at the lock of "
                                    + Words.lock(lock) + " too",
                            Changed.lock(
                                    locked,
                                    i,
                                    new Lock(
                                            lock.on(),
                                            Changed.plus(lock.keys(), List.of(NEW_KEY)),
                                            lock.holds(),
                                            lock.note())));
                }
            }
        }
    }

    /** Switches of the stages; breakers where a stage has none of its own. */
    private List<String> loadDevices() {
        List<String> names = new ArrayList<>(
                stages.stream().flatMap(s -> s.switchName().stream()).toList());
        if (stages.stream().anyMatch(s -> s.switchName().isEmpty())) {
            ofKind(Device.Kind.BREAKER).stream()
                    .map(Device::name)
                    .filter(n -> !names.contains(n))
                    .forEach(names::add);
        }
        return names;
    }

    /** The trial asks only whether the time has passed, not how long it is. */
    private static Delay delay(Delay.Of of, List<String> open) {
        return new Delay(of, 0.0, open, java.util.Optional.empty());
    }

    private static Lock.On on(Device device) {
        return new Lock.On.OfDevice(device.name());
    }

    private static String furthest(Device device) {
        return device.positions().getLast();
    }

    private List<Device> grounding() {
        return ofKind(Device.Kind.GROUNDING_SWITCH);
    }

    private List<Device> isolating() {
        return ofKind(
                Device.Kind.BREAKER, Device.Kind.DISCONNECTOR, Device.Kind.LOAD_BREAK_SWITCH, Device.Kind.STAGE_SWITCH);
    }

    private List<Device> ofKind(Device.Kind... kinds) {
        List<Device.Kind> wanted = List.of(kinds);
        return isolation.devices().stream()
                .filter(d -> wanted.contains(d.kind()) && d.between().isPresent())
                .toList();
    }
}
