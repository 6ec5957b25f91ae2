package org.varwright.bankfile;

import static org.varwright.quantity.Dimension.TIME;
import static org.varwright.quantity.Dimension.VOLTAGE;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.varwright.bank.Compartment;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Interlock;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyCopies;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Lock;
import org.varwright.bank.SwitchType;
import org.varwright.problem.Message;

/** Reads the isolation: sources, devices, compartments, locks and what blocks moves. */
final class IsolationReader {
    private final Declared declared;
    private final List<Item<SwitchType>> switchTypes;

    IsolationReader(Declared declared, List<Item<SwitchType>> switchTypes) {
        this.declared = declared;
        this.switchTypes = switchTypes;
    }

    Optional<Draft.IsolationDraft> read(Fields f) {
        List<Item<EnergySource>> sources = f.each("sources", Section.SOURCE, this::source);
        List<Item<Device>> devices = f.eachRequired("devices", Section.DEVICE, this::device);
        List<Item<Compartment>> compartments = f.eachRequired("compartments", Section.COMPARTMENT, this::compartment);
        List<Item<Lock>> locks = f.each("locks", Section.LOCK, this::lock);
        List<Item<KeyCopies>> keys = f.each("keys", Section.KEY, IsolationReader::key);
        List<Item<KeyExchange>> exchanges = f.each("exchanges", Section.EXCHANGE, IsolationReader::exchange);
        List<Item<Interlock>> interlocks = f.each("interlocks", Section.INTERLOCK, this::interlock);
        List<Item<Delay>> delays = f.each("delays", Section.DELAY, this::delay);
        Map<String, String> start = new LinkedHashMap<>();
        if (f.has("start")) {
            f.namesByName("start", 1, "device", declared.devices())
                    .forEach((device, positions) -> one(f, device, positions).ifPresent(p -> start.put(device, p)));
        }
        boolean complete = f.finish(() -> start).isPresent();
        return Optional.of(new Draft.IsolationDraft(
                sources, devices, compartments, locks, keys, exchanges, interlocks, delays, start, complete));
    }

    private static Optional<String> one(Fields f, String device, List<String> positions) {
        if (positions.size() > 1) {
            f.findings()
                    .error(
                            Message.EXPECTED_TEXT,
                            f.findings().place(f.path("start") + "." + device),
                            "several positions",
                            Device.OPEN);
        }
        return positions.stream().findFirst();
    }

    private Optional<EnergySource> source(Fields f) {
        String name = f.name("name");
        List<String> at = f.references("at", 1, Words::conductor, "conductor", withGround(declared.feedable()));
        if (at.contains(Isolation.GROUND)) {
            f.error(Message.SOURCE_AT_GROUND, "at");
        }
        if (at.size() > 1) {
            f.error(Message.EXPECTED_TEXT, "at", "a list", "line");
        }
        OptionalDouble volts = f.optionalQuantity("voltage", VOLTAGE, 1.0, 1e6);
        Optional<String> note = f.optionalText("note");
        return f.finish(() -> new EnergySource(name, at.getFirst(), volts, note));
    }

    /** With ground, so that a thing wrongly at ground gets its own message. */
    private static Set<String> withGround(Set<String> conductors) {
        Set<String> all = new LinkedHashSet<>(conductors);
        all.add(Isolation.GROUND);
        return all;
    }

    private Optional<Device> device(Fields f) {
        String name = f.name("name");
        Optional<String> label = f.optionalText("label");
        Optional<String> note = f.optionalText("note");
        Device.Kind kind = f.choice("kind", Words.DEVICE_KINDS);
        Optional<Device.Between> between = between(f, kind);
        Optional<SwitchType> type = type(f, kind);
        boolean withdrawable = f.flag("withdrawable");
        if (withdrawable && kind != Device.Kind.BREAKER) {
            f.error(
                    Message.KEY_DOES_NOT_FIT,
                    "withdrawable",
                    "withdrawable",
                    "a " + kind.code(),
                    "only a breaker is withdrawn");
        }
        List<String> positions = positions(f, kind, withdrawable);
        boolean remote = f.flag("remote");
        Optional<String> indicates = f.optionalText("indicates");
        Optional<String> seenThrough = f.optionalText("seen-through");
        return f.finish(() -> new Device(
                name, kind, positions, between, type, withdrawable, remote, indicates, seenThrough, label, note));
    }

    private Optional<SwitchType> type(Fields f, Device.Kind kind) {
        Optional<String> name = f.optionalReference("type", "switch type", declared.switchTypes());
        if (name.isPresent() && kind == Device.Kind.SELECTOR) {
            f.error(Message.KEY_DOES_NOT_FIT, "type", "type", "a selector", "it carries no current; leave it out");
        }
        return switchTypes.stream()
                .map(Item::value)
                .filter(t -> name.filter(t.name()::equals).isPresent())
                .findFirst();
    }

    private static Optional<Device.Between> between(Fields f, Device.Kind kind) {
        if (kind == Device.Kind.SELECTOR) {
            if (f.has("between")) {
                f.error(
                        Message.KEY_DOES_NOT_FIT,
                        "between",
                        "between",
                        "a selector",
                        "it joins no conductors; leave it out");
            }
            return Optional.empty();
        }
        if (!f.has("between")) {
            f.error(Message.DEVICE_NEEDS_BETWEEN, "kind", kind.code());
            return Optional.empty();
        }
        List<String> ends = f.references("between", 2, Words::conductor, "", Set.of());
        if (ends.size() != 2) {
            if (f.pair("between").isPresent()) {
                f.error(Message.BETWEEN_SAME, "between", ends.isEmpty() ? "" : Shown.of(ends.getFirst()));
            }
            return Optional.empty();
        }
        boolean toGround = ends.contains(Isolation.GROUND);
        if (toGround && kind != Device.Kind.GROUNDING_SWITCH) {
            f.error(
                    Message.GROUNDING_SIDE,
                    "between",
                    kind.code(),
                    "another one",
                    "what joins a conductor to ground is a grounding-switch");
        }
        if (!toGround && kind == Device.Kind.GROUNDING_SWITCH) {
            f.error(
                    Message.GROUNDING_SIDE,
                    "between",
                    kind.code(),
                    "ground",
                    "write it such as \"between: [bus, ground]\"");
        }
        return Optional.of(new Device.Between(ends.get(0), ends.get(1)));
    }

    private static List<String> positions(Fields f, Device.Kind kind, boolean withdrawable) {
        List<String> fixed = Device.positionsOf(kind, withdrawable);
        if (kind == Device.Kind.SELECTOR) {
            return f.names("positions", 2);
        }
        if (f.has("positions") && !Set.copyOf(f.names("positions", 1)).equals(Set.copyOf(fixed))) {
            f.error(Message.POSITIONS_FIXED, "positions", kind.code(), Shown.words(fixed));
        }
        return fixed;
    }

    private Optional<Compartment> compartment(Fields f) {
        String name = f.name("name");
        Optional<String> label = f.optionalText("label");
        Optional<String> note = f.optionalText("note");
        List<String> exposes =
                f.references("exposes", 0, Words::conductor, "conductor", withGround(declared.exposable()));
        if (exposes.contains(Isolation.GROUND)) {
            f.error(Message.EXPOSES_GROUND, "exposes");
        }
        return f.finish(() -> new Compartment(name, exposes, label, note));
    }

    private Optional<Lock> lock(Fields f) {
        Optional<Lock.On> on = on(f);
        List<String> keys = List.of();
        if (f.has("key") && f.has("keys")) {
            f.error(Message.EITHER_KEY, "keys", "\"key\" and \"keys\"");
        } else if (!f.has("key") && !f.has("keys")) {
            f.findings().error(Message.ONE_OF_KEYS, f.findings().place(f.path()), "\"key\" nor \"keys\"", "key: K-1");
        }
        if (f.has("keys")) {
            keys = f.names("keys", 1);
        }
        if (f.has("key")) {
            keys = f.names("key", 1);
        }
        List<String> allKeys = keys;
        Optional<String> holds;
        if (f.has("door")) {
            holds = f.optionalWord("holds");
            holds.filter(h -> !h.equals(Device.CLOSED))
                    .ifPresent(h -> f.error(Message.DOOR_HOLDS, "holds", Shown.of(h)));
        } else {
            holds = Optional.of(f.word("holds"));
        }
        Optional<String> note = f.optionalText("note");
        return f.finish(() -> new Lock(on.orElseThrow(), allKeys, holds.orElse(Device.CLOSED), note));
    }

    private Optional<Lock.On> on(Fields f) {
        Optional<String> device = f.optionalReference("device", "device", declared.devices());
        Optional<String> door = f.optionalReference("door", "compartment", declared.compartments());
        if (device.isPresent() && door.isPresent()) {
            f.error(Message.EITHER_KEY, "door", "\"device\" and \"door\"");
        } else if (device.isEmpty() && door.isEmpty()) {
            f.findings()
                    .error(Message.ONE_OF_KEYS, f.findings().place(f.path()), "\"device\" nor \"door\"", "door: bay 1");
        }
        Optional<Lock.On> onDevice = device.map(Lock.On.OfDevice::new);
        return onDevice.or(() -> door.map(Lock.On.OfDoor::new));
    }

    private static Optional<KeyCopies> key(Fields f) {
        String name = f.name("name");
        int copies = f.count("copies", 1, 20, 1);
        Optional<String> note = f.optionalText("note");
        return f.finish(() -> new KeyCopies(name, copies, note));
    }

    private static Optional<KeyExchange> exchange(Fields f) {
        String name = f.name("name");
        Optional<String> label = f.optionalText("label");
        Optional<String> note = f.optionalText("note");
        List<String> in = f.names("in", 1);
        List<String> out = f.names("out", 1);
        for (String key : out) {
            if (in.contains(key)) {
                f.error(Message.KEY_ON_BOTH_SIDES, "out", Shown.of(key));
            }
        }
        return f.finish(() -> new KeyExchange(name, in, out, label, note));
    }

    private Optional<Interlock> interlock(Fields f) {
        String device = f.reference("device", "device", declared.devices());
        String to = f.word("to");
        Map<String, List<String>> requires = f.namesByName("requires", 1, "device", declared.devices());
        Optional<String> note = f.optionalText("note");
        return f.finish(() -> new Interlock(device, to, requires, note));
    }

    private Optional<Delay> delay(Fields f) {
        Optional<Delay.Of> bolt = f.optionalChild("lock", Section.DELAYED_LOCK).flatMap(l -> {
            Optional<Lock.On> on = on(l);
            String key = l.word("key");
            return l.finish(() -> new Delay.Of.Bolt(on.orElseThrow(), key));
        });
        Optional<Delay.Of> move = f.optionalChild("move", Section.DELAYED_MOVE).flatMap(m -> {
            String device = m.reference("device", "device", declared.devices());
            String to = m.word("to");
            return m.finish(() -> new Delay.Of.Move(device, to));
        });
        if (f.has("lock") && f.has("move")) {
            f.error(Message.EITHER_KEY, "move", "\"lock\" and \"move\"");
        } else if (!f.has("lock") && !f.has("move")) {
            f.findings()
                    .error(
                            Message.ONE_OF_KEYS,
                            f.findings().place(f.path()),
                            "\"lock\" nor \"move\"",
                            "lock: {device: 43-1, key: K-1}");
        }
        double seconds = f.quantity("after", TIME, 0.1, 86400.0);
        List<String> open = f.references("open", 1, UnaryOperator.identity(), "device", declared.devices());
        Optional<String> note = f.optionalText("note");
        return f.finish(() -> new Delay(bolt.or(() -> move).orElseThrow(), seconds, open, note));
    }
}
