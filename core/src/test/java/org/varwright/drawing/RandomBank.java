package org.varwright.drawing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Connection;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.FuseType;
import org.varwright.bank.Interlock;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Lock;
import org.varwright.bank.Protection;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.Standard;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.TransformerRatio;
import org.varwright.bank.UnitType;

/** A bank made up from a seed: 1 to 12 stages, one or two sources with a tie, bypasses, cross ties, doors that expose the same conductors, long names. */
final class RandomBank {
    private final SplittableRandom random;
    private final List<EnergySource> sources = new ArrayList<>();
    private final List<Device> devices = new ArrayList<>();
    private final List<Compartment> compartments = new ArrayList<>();
    private final List<Stage> stages = new ArrayList<>();
    private final List<Lock> locks = new ArrayList<>();
    private final List<Protection> protection = new ArrayList<>();
    private int key;

    private RandomBank(long seed) {
        this.random = new SplittableRandom(seed);
    }

    static Bank of(long seed) {
        return new RandomBank(seed).bank(seed);
    }

    private Bank bank(long seed) {
        int feeds = 1 + random.nextInt(2);
        int stageCount = 1 + random.nextInt(12);
        List<String> buses = new ArrayList<>();
        for (int f = 1; f <= feeds; f++) {
            feed(f, buses);
        }
        if (feeds == 2 || chance(0.2)) {
            device("tie", Device.Kind.BREAKER, buses.getFirst(), buses.getLast(), true);
            if (chance(0.5)) {
                compartment("tie cubicle", List.of(buses.getFirst(), buses.getLast()));
            }
        }
        for (int s = 1; s <= stageCount; s++) {
            stage(s, buses.get(random.nextInt(buses.size())));
        }
        if (stageCount > 2 && chance(0.3)) {
            device(
                    "cross",
                    Device.Kind.DISCONNECTOR,
                    stages.getFirst().name(),
                    stages.getLast().name(),
                    false);
        }
        if (chance(0.3)) {
            device(
                    "bypass",
                    Device.Kind.DISCONNECTOR,
                    "line 1",
                    stages.getLast().name(),
                    false);
        }
        if (chance(0.5)) {
            sources.add(
                    new EnergySource("station service", "control supply", OptionalDouble.of(120.0), Optional.empty()));
            compartment("controls", List.of("control supply"));
        }
        if (chance(0.4)) {
            compartment("rear access to everything", buses);
        }
        if (chance(0.2)) {
            compartment("everywhere", stages.stream().map(Stage::name).toList());
        }
        Device selector = new Device(
                "43",
                Device.Kind.SELECTOR,
                List.of("off", "manual", "auto"),
                Optional.empty(),
                false,
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        devices.add(selector);
        lock(new Lock.On.OfDevice("43"), "off");
        List<String> keys =
                locks.stream().flatMap(l -> l.keys().stream()).distinct().toList();
        int half = Math.max(1, keys.size() / 2);
        List<KeyExchange> exchanges = keys.size() < 2
                ? List.of()
                : List.of(new KeyExchange(
                        "key exchange",
                        keys.subList(0, half),
                        keys.subList(half, keys.size()),
                        Optional.empty(),
                        Optional.empty()));
        Map<String, List<String>> requires = new LinkedHashMap<>();
        requires.put("43", List.of("manual", "auto"));
        Isolation isolation = new Isolation(
                sources,
                devices,
                compartments,
                locks,
                List.of(),
                exchanges,
                List.of(new Interlock(devices.getFirst().name(), "closed", requires, Optional.empty())),
                List.of(new Delay(
                        new Delay.Of.Bolt(new Lock.On.OfDevice("43"), "K-1"),
                        300.0,
                        List.of(devices.getFirst().name()),
                        Optional.empty())),
                Map.of());
        return new Bank(
                "Random bank " + seed,
                Optional.of("Nowhere"),
                chance(0.5) ? Standard.IEEE : Standard.IEC,
                new SupplySystem(
                        13_800.0,
                        OptionalDouble.empty(),
                        60.0,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        SystemGrounding.SOLID),
                List.of(unit()),
                List.of(),
                stages,
                protection,
                Optional.empty(),
                Optional.of(isolation),
                List.of(),
                List.of(),
                Optional.empty(),
                Optional.empty());
    }

    private void feed(int f, List<String> buses) {
        String line = "line " + f;
        sources.add(new EnergySource("utility feeder " + f, line, OptionalDouble.empty(), Optional.empty()));
        if (chance(0.15)) {
            sources.add(
                    new EnergySource("standby generator " + f, line, OptionalDouble.of(13_800.0), Optional.empty()));
        }
        String bus = "bus " + (char) ('A' + f - 1);
        if (chance(0.6)) {
            String cable = "cable " + f;
            device("52-" + f, Device.Kind.BREAKER, line, cable, chance(0.5));
            device("89-" + f, Device.Kind.DISCONNECTOR, cable, bus, false);
            if (chance(0.4)) {
                device("58-" + f, Device.Kind.GROUNDING_SWITCH, cable, Isolation.GROUND, false);
            }
            if (chance(0.7)) {
                compartment("incoming " + f, List.of(cable, bus));
            }
        } else {
            device("52-" + f, Device.Kind.BREAKER, line, bus, chance(0.5));
            if (chance(0.7)) {
                compartment("incoming " + f, List.of(bus));
            }
        }
        if (chance(0.6)) {
            device("57-" + f, Device.Kind.GROUNDING_SWITCH, bus, Isolation.GROUND, false);
        }
        if (chance(0.2)) {
            device("B-" + f, Device.Kind.LOAD_BREAK_SWITCH, line, bus, false);
        }
        buses.add(bus);
        if (chance(0.3)) {
            device("section " + f, Device.Kind.DISCONNECTOR, bus, bus + " rear", false);
            buses.add(bus + " rear");
        }
    }

    private void stage(int s, String bus) {
        String name = chance(0.15) ? "stage " + s + " of the long named bank" : "stage " + s;
        String switchName = "24-" + s;
        device(switchName, chance(0.7) ? Device.Kind.STAGE_SWITCH : Device.Kind.LOAD_BREAK_SWITCH, bus, name, false);
        Connection connection = any(List.of(Connection.values()));
        Optional<FuseType> fuse = chance(0.7)
                ? Optional.of(new FuseType(
                        "F65",
                        FuseType.Kind.EXPULSION,
                        Optional.of("65T"),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Optional.empty()))
                : Optional.empty();
        Optional<Reactor> reactor = chance(0.5)
                ? Optional.of(new Reactor(
                        45e-6, chance(0.7) ? Reactor.Position.LINE : Reactor.Position.NEUTRAL, Reactor.Purpose.INRUSH))
                : Optional.empty();
        stages.add(new Stage(
                name,
                connection,
                Optional.of(switchName),
                new LegLayout(1 + random.nextInt(2), 1 + random.nextInt(2), 1 + random.nextInt(4)),
                Optional.empty(),
                unit(),
                fuse,
                reactor,
                Optional.empty(),
                Optional.empty()));
        if (chance(0.3)) {
            device("E-" + s, Device.Kind.GROUNDING_SWITCH, name, Isolation.GROUND, false);
        }
        if (chance(0.4)) {
            protection.add(new Protection(
                    name,
                    any(List.of(Protection.Senses.values())),
                    Optional.of(new TransformerRatio(8400.0, 120.0)),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    false,
                    OptionalDouble.empty(),
                    Optional.empty()));
        }
        if (chance(0.8)) {
            compartment("bay " + s, chance(0.6) ? List.of(bus, name) : List.of(name));
        }
        if (chance(0.1)) {
            compartment("rear of bay " + s, List.of(name));
        }
    }

    private void device(String name, Device.Kind kind, String first, String second, boolean withdrawable) {
        devices.add(new Device(
                name,
                kind,
                Device.positionsOf(kind, withdrawable),
                Optional.of(new Device.Between(first, second)),
                withdrawable,
                chance(0.2),
                Optional.empty(),
                chance(0.3) ? Optional.of("window") : Optional.empty(),
                chance(0.2) ? Optional.of("LBL-" + name) : Optional.empty(),
                Optional.empty()));
        if (chance(0.3)) {
            lock(new Lock.On.OfDevice(name), chance(0.5) ? Device.OPEN : Device.CLOSED);
        }
    }

    private void compartment(String name, List<String> exposes) {
        compartments.add(new Compartment(name, exposes, Optional.empty(), Optional.empty()));
        if (chance(0.7)) {
            lock(new Lock.On.OfDoor(name), Device.CLOSED);
        }
    }

    private void lock(Lock.On on, String holds) {
        key++;
        List<String> keys = chance(0.2) ? List.of("K-" + key, "K-" + key + "b") : List.of("K-" + key);
        locks.add(new Lock(on, keys, holds, Optional.empty()));
    }

    private <T> T any(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    private boolean chance(double of) {
        return random.nextDouble() < of;
    }

    private static UnitType unit() {
        return new UnitType(
                "U300",
                300e3,
                7960.0,
                60.0,
                new Tolerance(0.0, 0.1),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.of(2),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }
}
