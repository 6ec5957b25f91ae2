package org.varwright.interlock;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Compartment;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Interlock;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyCopies;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Lock;

/** Builds schemes for tests in a few lines. */
final class Schemes {
    private final List<EnergySource> sources = new ArrayList<>();
    private final List<Device> devices = new ArrayList<>();
    private final List<Compartment> compartments = new ArrayList<>();
    private final List<Lock> locks = new ArrayList<>();
    private final List<KeyCopies> keys = new ArrayList<>();
    private final List<KeyExchange> exchanges = new ArrayList<>();
    private final List<Interlock> interlocks = new ArrayList<>();
    private final List<Delay> delays = new ArrayList<>();
    private final Map<String, String> start = new HashMap<>();
    private final List<StagePoint> stages = new ArrayList<>();

    /** The scheme of a bank. */
    static Schemes of(Isolation isolation, List<StagePoint> stages) {
        Schemes s = new Schemes();
        s.sources.addAll(isolation.sources());
        s.devices.addAll(isolation.devices());
        s.compartments.addAll(isolation.compartments());
        s.locks.addAll(isolation.locks());
        s.keys.addAll(isolation.keys());
        s.exchanges.addAll(isolation.exchanges());
        s.interlocks.addAll(isolation.interlocks());
        s.delays.addAll(isolation.delays());
        s.start.putAll(isolation.start());
        s.stages.addAll(stages);
        return s;
    }

    Schemes source(String name, String at) {
        sources.add(new EnergySource(name, at, OptionalDouble.empty(), Optional.empty()));
        return this;
    }

    Schemes lowVoltage(String name, String at) {
        sources.add(new EnergySource(name, at, OptionalDouble.of(120.0), Optional.empty()));
        return this;
    }

    Schemes device(String name, Device.Kind kind, String first, String second) {
        return device(name, kind, false, first, second);
    }

    Schemes withdrawable(String name, String first, String second) {
        return device(name, Device.Kind.BREAKER, true, first, second);
    }

    private Schemes device(String name, Device.Kind kind, boolean withdrawable, String first, String second) {
        devices.add(new Device(
                name,
                kind,
                Device.positionsOf(kind, withdrawable),
                Optional.of(new Device.Between(first, second)),
                withdrawable,
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
        return this;
    }

    Schemes selector(String name, String... positions) {
        devices.add(new Device(
                name,
                Device.Kind.SELECTOR,
                List.of(positions),
                Optional.empty(),
                false,
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
        return this;
    }

    Schemes stage(String name, String switchName) {
        stages.add(new StagePoint(name, switchName.isEmpty() ? Optional.empty() : Optional.of(switchName)));
        return this;
    }

    Schemes compartment(String name, String... exposes) {
        compartments.add(new Compartment(name, List.of(exposes), Optional.empty(), Optional.empty()));
        return this;
    }

    Schemes lock(String device, String holds, String... lockKeys) {
        locks.add(new Lock(new Lock.On.OfDevice(device), List.of(lockKeys), holds, Optional.empty()));
        return this;
    }

    Schemes doorLock(String door, String... lockKeys) {
        locks.add(new Lock(new Lock.On.OfDoor(door), List.of(lockKeys), "closed", Optional.empty()));
        return this;
    }

    Schemes copies(String key, int copies) {
        keys.add(new KeyCopies(key, copies, Optional.empty()));
        return this;
    }

    Schemes exchange(String name, List<String> in, List<String> out) {
        exchanges.add(new KeyExchange(name, in, out, Optional.empty(), Optional.empty()));
        return this;
    }

    Schemes interlock(String device, String to, String required, String... positions) {
        interlocks.add(new Interlock(device, to, Map.of(required, List.of(positions)), Optional.empty()));
        return this;
    }

    Schemes delayKey(String device, String key, String... open) {
        delays.add(new Delay(
                new Delay.Of.Bolt(new Lock.On.OfDevice(device), key), 300.0, List.of(open), Optional.empty()));
        return this;
    }

    Schemes delayMove(String device, String to, String... open) {
        delays.add(new Delay(new Delay.Of.Move(device, to), 300.0, List.of(open), Optional.empty()));
        return this;
    }

    Schemes startAt(String device, String position) {
        start.put(device, position);
        return this;
    }

    Isolation isolation() {
        return new Isolation(
                sources, devices, compartments, locks, keys, exchanges, interlocks, delays, Map.copyOf(start));
    }

    List<StagePoint> stages() {
        return List.copyOf(stages);
    }

    Scheme scheme() {
        return Scheme.of(isolation(), stages());
    }

    /**
     * The invented bank of the bank file's description: {@code count} stages in a steel enclosure behind one exchange.
     *
     * <pre>
     *  line ──[52-7]── cable ──/89-2/── bus ──┬──(24-1)── stage 1     43-2 off ─TF-1─ 89-2 open ─TF-2─ 57-2 closed ─TF-3─ exchange
     *                                         ├──(24-2)── stage 2                                     TF-4 … bays, TF-8 + TF-9 incoming
     *                                   57-2 ─┴─ ground
     * </pre>
     */
    static Schemes enclosed(int count) {
        Schemes s = new Schemes()
                .source("utility feeder 7", "line")
                .lowVoltage("station service", "control supply")
                .withdrawable("52-7", "line", "cable")
                .device("89-2", Device.Kind.DISCONNECTOR, "cable", "bus")
                .device("57-2", Device.Kind.GROUNDING_SWITCH, "bus", "ground");
        List<String> switches = new ArrayList<>();
        List<String> out = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            switches.add("24-" + i);
            s.device("24-" + i, Device.Kind.STAGE_SWITCH, "bus", "stage " + i).stage("stage " + i, "24-" + i);
        }
        s.selector("43-2", "off", "manual", "auto");
        s.compartment("controls", "control supply").compartment("incoming", "cable", "bus");
        s.lock("43-2", "off", "TF-1")
                .lock("89-2", "closed", "TF-1")
                .lock("89-2", "open", "TF-2")
                .lock("57-2", "open", "TF-2")
                .lock("57-2", "closed", "TF-3")
                .lock("52-7", "withdrawn", "TF-9");
        for (int i = 1; i <= count; i++) {
            String key = "TF-" + (i < 5 ? 3 + i : 5 + i);
            s.compartment("bay " + i, "bus", "stage " + i).doorLock("bay " + i, key);
            out.add(key);
            s.interlock("24-" + i, "closed", "43-2", "manual", "auto");
        }
        out.add("TF-8");
        return s.doorLock("incoming", "TF-8", "TF-9")
                .exchange("key exchange", List.of("TF-3"), out)
                .delayKey("43-2", "TF-1", switches.toArray(String[]::new));
    }

    /** Twelve stages on two bus sections with a tie, twelve bays and two incoming compartments: {@code VerifierTest} draws it. */
    static Schemes twoSections() {
        Schemes s = new Schemes()
                .source("feeder A", "line A")
                .source("feeder B", "line B")
                .withdrawable("52-A", "line A", "cable A")
                .withdrawable("52-B", "line B", "cable B")
                .withdrawable("52-T", "bus A", "bus B")
                .device("89-A", Device.Kind.DISCONNECTOR, "cable A", "bus A")
                .device("89-B", Device.Kind.DISCONNECTOR, "cable B", "bus B")
                .device("57-A", Device.Kind.GROUNDING_SWITCH, "bus A", "ground")
                .device("57-B", Device.Kind.GROUNDING_SWITCH, "bus B", "ground")
                .selector("43", "off", "auto");
        List<String> switches = new ArrayList<>();
        List<String> out = new ArrayList<>();
        for (int i = 1; i <= 12; i++) {
            String bus = i <= 6 ? "bus A" : "bus B";
            switches.add("24-" + i);
            out.add("K" + i);
            s.device("24-" + i, Device.Kind.STAGE_SWITCH, bus, "stage " + i).stage("stage " + i, "24-" + i);
            s.compartment("bay " + i, bus, "stage " + i).doorLock("bay " + i, "K" + i);
            s.interlock("24-" + i, "closed", "43", "auto");
        }
        out.add("K13");
        out.add("K14");
        return s.compartment("incoming A", "cable A", "bus A")
                .compartment("incoming B", "cable B", "bus B")
                .lock("43", "off", "S")
                .lock("89-A", "closed", "S")
                .lock("89-A", "open", "A1")
                .lock("89-B", "closed", "A1")
                .lock("89-B", "open", "G")
                .lock("57-A", "open", "G")
                .lock("57-A", "closed", "G2")
                .lock("57-B", "open", "G2")
                .lock("57-B", "closed", "G3")
                .lock("52-A", "withdrawn", "W1")
                .lock("52-B", "withdrawn", "W2")
                .doorLock("incoming A", "K13", "W1")
                .doorLock("incoming B", "K14", "W2")
                .exchange("exchange", List.of("G3"), out)
                .delayKey("43", "S", switches.toArray(String[]::new));
    }
}
