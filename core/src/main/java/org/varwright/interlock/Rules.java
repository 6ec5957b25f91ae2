package org.varwright.interlock;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Compartment;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.Interlock;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Lock;

/** Compiles an isolation into rules, in the order: locks, devices, doors, exchanges, waits. */
final class Rules {
    private final Layout layout;
    private final Circuits circuits;
    private final Isolation isolation;
    private final Map<String, Rule.KeyCount> keys = new LinkedHashMap<>();
    private final List<Rule> rules = new ArrayList<>();

    private Rules(Layout layout, Circuits circuits) {
        this.layout = layout;
        this.circuits = circuits;
        this.isolation = layout.isolation;
    }

    static List<Rule> of(Layout layout, Circuits circuits) {
        Rules rules = new Rules(layout, circuits);
        rules.compile();
        return List.copyOf(rules.rules);
    }

    /** Every key with what traps it. */
    static Map<String, Rule.KeyCount> keys(Layout layout, Circuits circuits) {
        Rules rules = new Rules(layout, circuits);
        rules.countKeys();
        return rules.keys;
    }

    private void compile() {
        countKeys();
        for (int i = 0; i < isolation.locks().size(); i++) {
            Lock lock = isolation.locks().get(i);
            Guard withdrawn = Guard.bit(layout.lockBit(i), true);
            Guard extended = Guard.bit(layout.lockBit(i), false);
            add(new Move.Withdraw(lock), List.of(extended), lock.keys(), withdrawn, 0, 0);
            List<Guard> extend = new ArrayList<>(List.of(withdrawn, layout.held(lock)));
            for (Delay delay : isolation.delays()) {
                if (delay.of() instanceof Delay.Of.Bolt bolt
                        && bolt.on().equals(lock.on())
                        && lock.keys().contains(bolt.key())) {
                    extend.addAll(hasRun(delay));
                }
            }
            add(new Move.Extend(lock), extend, List.of(), extended, 0, 0);
        }
        isolation.devices().forEach(this::compileDevice);
        for (Compartment compartment : isolation.compartments()) {
            String name = compartment.name();
            List<Guard> unlocked = boltsWithdrawn(new Lock.On.OfDoor(name));
            Guard open = layout.door(name, true);
            Guard closed = layout.door(name, false);
            add(new Move.OpenDoor(name), with(unlocked, closed), List.of(), open, 0, 0);
            add(new Move.CloseDoor(name), with(unlocked, open), List.of(), closed, 0, 0);
        }
        for (int i = 0; i < isolation.exchanges().size(); i++) {
            KeyExchange exchange = isolation.exchanges().get(i);
            Guard home = Guard.bit(layout.exchangeBit(i), false);
            Guard given = Guard.bit(layout.exchangeBit(i), true);
            add(new Move.Give(exchange), List.of(home), exchange.in(), given, 0, 0);
            add(new Move.Return(exchange), List.of(given), exchange.out(), home, 0, 0);
        }
        for (StagePoint stage : layout.stages) {
            int bit = layout.chargeBit(stage.name());
            add(
                    new Move.Wait(stage.name()),
                    List.of(Guard.bit(bit, true)),
                    List.of(),
                    Guard.bit(bit, false),
                    0,
                    layout.chargeMask(stage));
        }
    }

    private void compileDevice(Device device) {
        long switching = layout.switching.contains(device) ? layout.closedMask(device) : 0;
        List<Guard> unlocked = boltsWithdrawn(new Lock.On.OfDevice(device.name()));
        for (String from : device.positions()) {
            for (String to : device.positions()) {
                boolean skips = device.kind() == Device.Kind.BREAKER
                        && Math.abs(device.positions().indexOf(from)
                                        - device.positions().indexOf(to))
                                > 1;
                if (from.equals(to) || skips) {
                    continue;
                }
                List<Guard> guards = with(unlocked, layout.device(device, from));
                for (Delay delay : isolation.delays()) {
                    if (delay.of() instanceof Delay.Of.Move move
                            && move.device().equals(device.name())
                            && move.to().equals(to)) {
                        guards.addAll(hasRun(delay));
                    }
                }
                for (Guard alternative : alternatives(device.name(), to)) {
                    add(
                            new Move.Operate(device.name(), to),
                            with(guards, alternative),
                            List.of(),
                            layout.device(device, to),
                            switching,
                            0);
                }
            }
        }
    }

    /** Every combination of positions in which all interlocks of this move are satisfied; they exclude one another. */
    private List<Guard> alternatives(String device, String to) {
        List<Guard> ways = List.of(Guard.ALWAYS);
        for (Interlock interlock : isolation.interlocks()) {
            if (!interlock.device().equals(device) || !interlock.to().equals(to)) {
                continue;
            }
            for (Map.Entry<String, List<String>> required : interlock.requires().entrySet()) {
                List<Guard> narrower = new ArrayList<>();
                for (Guard way : ways) {
                    for (String position : required.getValue()) {
                        layout.stands(required.getKey(), position)
                                .flatMap(way::and)
                                .ifPresent(narrower::add);
                    }
                }
                ways = narrower;
            }
        }
        return ways;
    }

    private List<Guard> hasRun(Delay delay) {
        List<Guard> guards = new ArrayList<>();
        for (String name : delay.open()) {
            guards.add(layout.notClosed(isolation.device(name).orElseThrow()));
        }
        for (StagePoint stage : stagesBehind(layout, circuits, delay.open())) {
            guards.add(Guard.bit(layout.chargeBit(stage.name()), false));
        }
        return guards;
    }

    /**
     * Stages behind these devices: with them open and every other device that is no grounding switch closed, joined to no source of 1 kV or more; and those
     * directly at one of them (ILK-3).
     */
    static List<StagePoint> stagesBehind(Layout layout, Circuits circuits, List<String> devices) {
        long opened = layout.switching.stream()
                .filter(d -> devices.contains(d.name()))
                .mapToLong(layout::closedMask)
                .reduce(0, (a, b) -> a | b);
        long fed = circuits.of(circuits.allButGrounding() & ~opened).liveStages & ~circuits.stagesAt(opened);
        return layout.stages.stream()
                .filter(s -> (fed & layout.chargeMask(s)) == 0)
                .toList();
    }

    private List<Guard> boltsWithdrawn(Lock.On on) {
        List<Guard> guards = new ArrayList<>();
        for (int i = 0; i < isolation.locks().size(); i++) {
            if (isolation.locks().get(i).on().equals(on)) {
                guards.add(Guard.bit(layout.lockBit(i), true));
            }
        }
        return guards;
    }

    private void countKeys() {
        for (String key : isolation.keyNames()) {
            Guard trapping = Guard.ALWAYS;
            long plantFlip = 0;
            long accessFlip = 0;
            for (int i = 0; i < isolation.locks().size(); i++) {
                if (isolation.locks().get(i).keys().contains(key)) {
                    trapping = trapping.and(Guard.bit(layout.lockBit(i), true)).orElseThrow();
                }
            }
            int twice = 0;
            for (int i = 0; i < isolation.exchanges().size(); i++) {
                boolean in = isolation.exchanges().get(i).in().contains(key);
                boolean out = isolation.exchanges().get(i).out().contains(key);
                Guard bit = Guard.bit(layout.exchangeBit(i), true);
                if (in && out) {
                    twice++;
                } else if (in || out) {
                    trapping = trapping.and(bit).orElseThrow();
                    plantFlip |= out ? bit.plantMask() : 0;
                    accessFlip |= out ? bit.accessMask() : 0;
                }
            }
            int copies = isolation.keys().stream()
                    .filter(k -> k.name().equals(key))
                    .mapToInt(org.varwright.bank.KeyCopies::copies)
                    .findFirst()
                    .orElse(1);
            keys.put(
                    key,
                    new Rule.KeyCount(
                            trapping.plantMask(), plantFlip, trapping.accessMask(), accessFlip, copies - twice));
        }
    }

    private void add(Move move, List<Guard> guards, List<String> free, Guard effect, long switching, long waits) {
        Optional<Guard> all = Optional.of(Guard.ALWAYS);
        for (Guard guard : guards) {
            all = all.flatMap(g -> g.and(guard));
        }
        List<Rule.KeyCount> counted = new ArrayList<>();
        for (String name : free) {
            Rule.KeyCount key = java.util.Objects.requireNonNull(keys.get(name));
            int traps = Long.bitCount(key.plantMask()) + Long.bitCount(key.accessMask());
            if (key.copies() < 1) {
                return;
            } else if (key.copies() == 1) {
                Guard untrapped = new Guard(key.plantMask(), key.plantFlip(), key.accessMask(), key.accessFlip());
                all = all.flatMap(g -> g.and(untrapped));
            } else if (traps >= key.copies()) {
                counted.add(key);
            }
        }
        all.ifPresent(guard -> rules.add(new Rule(move, guard, counted, effect, switching, waits)));
    }

    private static List<Guard> with(List<Guard> guards, Guard more) {
        List<Guard> all = new ArrayList<>(guards);
        all.add(more);
        return all;
    }
}
