package org.varwright.isolation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Interlock;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Lock;
import org.varwright.interlock.Move;

/**
 * The semantics of keys, locks and conductors written a second time, from the page alone, with plain sets: shares nothing with the scheme but the model of the
 * bank and the moves.
 */
final class PlainBank {
    final Map<String, String> position = new HashMap<>();
    final Set<String> openDoors = new HashSet<>();
    final Set<Integer> withdrawn = new HashSet<>();
    final Set<String> given = new HashSet<>();
    final Set<String> charged = new HashSet<>();
    private final Bank bank;
    private final Isolation isolation;

    PlainBank(Bank bank) {
        this.bank = bank;
        isolation = bank.isolation().orElseThrow();
        for (Device device : isolation.devices()) {
            position.put(device.name(), isolation.start().getOrDefault(device.name(), device.inServicePosition()));
        }
        bank.stages().forEach(s -> charged.add(s.name()));
        for (int i = 0; i < isolation.locks().size(); i++) {
            if (!standsAsHeld(isolation.locks().get(i))) {
                withdrawn.add(i);
            }
        }
    }

    /** Takes over a saved state. */
    void take(SavedState saved) {
        position.putAll(saved.positions());
        openDoors.clear();
        saved.openDoors().forEach((name, open) -> {
            if (open) {
                openDoors.add(name);
            }
        });
        withdrawn.clear();
        List<Boolean> extended = List.copyOf(saved.bolts().values());
        for (int i = 0; i < extended.size(); i++) {
            if (!extended.get(i)) {
                withdrawn.add(i);
            }
        }
        given.clear();
        saved.exchanges().forEach((name, isGiven) -> {
            if (isGiven) {
                given.add(name);
            }
        });
        charged.clear();
        saved.charges().forEach((name, isCharged) -> {
            if (isCharged) {
                charged.add(name);
            }
        });
    }

    private boolean standsAsHeld(Lock lock) {
        return lock.on() instanceof Lock.On.OfDoor
                ? !openDoors.contains(lock.on().name())
                : lock.holds().equals(position.get(lock.on().name()));
    }

    boolean isFree(String key) {
        int trapped = 0;
        for (int i : withdrawn) {
            trapped += isolation.locks().get(i).keys().contains(key) ? 1 : 0;
        }
        for (KeyExchange exchange : isolation.exchanges()) {
            boolean in = given.contains(exchange.name());
            trapped += (in ? exchange.in() : exchange.out()).contains(key) ? 1 : 0;
        }
        int copies = isolation.keys().stream()
                .filter(k -> k.name().equals(key))
                .mapToInt(k -> k.copies())
                .findFirst()
                .orElse(1);
        return trapped < copies;
    }

    private boolean unlocked(boolean door, String name) {
        for (int i = 0; i < isolation.locks().size(); i++) {
            Lock.On on = isolation.locks().get(i).on();
            if (on.name().equals(name) && (on instanceof Lock.On.OfDoor) == door && !withdrawn.contains(i)) {
                return false;
            }
        }
        return true;
    }

    private boolean hasRun(Delay delay) {
        Set<String> closed = new HashSet<>();
        isolation.devices().stream()
                .filter(d -> d.between().isPresent()
                        && d.kind() != Device.Kind.GROUNDING_SWITCH
                        && !delay.open().contains(d.name()))
                .forEach(d -> closed.add(d.name()));
        for (String name : delay.open()) {
            if ("closed".equals(position.get(name))) {
                return false;
            }
        }
        for (var stage : bank.stages()) {
            boolean at = isolation.devices().stream()
                    .filter(d -> delay.open().contains(d.name()) && d.between().isPresent())
                    .anyMatch(d -> d.between().get().first().equals(stage.name())
                            || d.between().get().second().equals(stage.name()));
            boolean behind = at || !isFed(joined(stage.name(), closed));
            if (behind && charged.contains(stage.name())) {
                return false;
            }
        }
        return true;
    }

    boolean allows(Move move) {
        return switch (move) {
            case Move.Withdraw w -> {
                int i = isolation.locks().indexOf(w.lock());
                yield !withdrawn.contains(i) && w.lock().keys().stream().allMatch(this::isFree);
            }
            case Move.Extend e -> {
                int i = isolation.locks().indexOf(e.lock());
                yield withdrawn.contains(i)
                        && standsAsHeld(e.lock())
                        && isolation.delays().stream()
                                .filter(d -> d.of() instanceof Delay.Of.Bolt b
                                        && b.on().equals(e.lock().on())
                                        && e.lock().keys().contains(b.key()))
                                .allMatch(this::hasRun);
            }
            case Move.Operate o -> allowsOperate(o);
            case Move.OpenDoor o -> !openDoors.contains(o.compartment()) && unlocked(true, o.compartment());
            case Move.CloseDoor c -> openDoors.contains(c.compartment()) && unlocked(true, c.compartment());
            case Move.Give g ->
                !given.contains(g.exchange().name())
                        && g.exchange().in().stream().allMatch(this::isFree);
            case Move.Return r ->
                given.contains(r.exchange().name())
                        && r.exchange().out().stream().allMatch(this::isFree);
            case Move.Wait w -> charged.contains(w.stage()) && !isFed(joined(w.stage(), closedNow()));
        };
    }

    private boolean allowsOperate(Move.Operate move) {
        Device device = isolation.device(move.device()).orElseThrow();
        String from = position.getOrDefault(device.name(), "");
        if (from.equals(move.position()) || !unlocked(false, device.name())) {
            return false;
        }
        if (device.kind() == Device.Kind.BREAKER
                && !from.equals("open")
                && !move.position().equals("open")) {
            return false;
        }
        for (Interlock interlock : isolation.interlocks()) {
            if (interlock.device().equals(device.name()) && interlock.to().equals(move.position())) {
                for (var required : interlock.requires().entrySet()) {
                    String is = position.getOrDefault(
                            required.getKey(), openDoors.contains(required.getKey()) ? "open" : "closed");
                    if (!required.getValue().contains(is)) {
                        return false;
                    }
                }
            }
        }
        return isolation.delays().stream()
                .filter(d -> d.of() instanceof Delay.Of.Move m
                        && m.device().equals(device.name())
                        && m.to().equals(move.position()))
                .allMatch(this::hasRun);
    }

    /** Makes the move and says which properties it, or the state after it, breaks. */
    List<String> make(Move move) {
        List<String> broken = new ArrayList<>();
        switch (move) {
            case Move.Withdraw w -> withdrawn.add(isolation.locks().indexOf(w.lock()));
            case Move.Extend e -> withdrawn.remove(isolation.locks().indexOf(e.lock()));
            case Move.Operate o -> operate(o, broken);
            case Move.OpenDoor o -> openDoors.add(o.compartment());
            case Move.CloseDoor c -> openDoors.remove(c.compartment());
            case Move.Give g -> given.add(g.exchange().name());
            case Move.Return r -> given.remove(r.exchange().name());
            case Move.Wait w -> charged.remove(w.stage());
        }
        broken.addAll(broken());
        return broken;
    }

    private void operate(Move.Operate move, List<String> broken) {
        Device device = isolation.device(move.device()).orElseThrow();
        Set<String> liveBefore = live();
        Set<String> groundBefore = joined(Isolation.GROUND, closedNow());
        if (device.kind() == Device.Kind.DISCONNECTOR) {
            Set<String> without = closedNow();
            without.remove(device.name());
            Set<String> a = joined(device.between().orElseThrow().first(), without);
            Set<String> b = joined(device.between().orElseThrow().second(), without);
            boolean was = "closed".equals(position.get(device.name()));
            if (((isFed(a) && hasStage(b)) || (isFed(b) && hasStage(a)))
                    && (was || move.position().equals("closed"))) {
                broken.add(was ? "load-break" : "load-make");
            }
        }
        position.put(device.name(), move.position());
        Set<String> live = live();
        Set<String> ground = joined(Isolation.GROUND, closedNow());
        for (var stage : bank.stages()) {
            boolean isCharged = charged.contains(stage.name());
            if (isCharged && live.contains(stage.name()) && !liveBefore.contains(stage.name())) {
                broken.add("recharge");
            }
            if (isCharged && ground.contains(stage.name()) && !groundBefore.contains(stage.name())) {
                broken.add("grounded-charged");
            }
            if (live.contains(stage.name())) {
                charged.add(stage.name());
            }
        }
    }

    private boolean hasStage(Set<String> conductors) {
        return bank.stages().stream().anyMatch(s -> conductors.contains(s.name()));
    }

    private List<String> broken() {
        List<String> broken = new ArrayList<>();
        Set<String> ground = joined(Isolation.GROUND, closedNow());
        if (isolation.sources().stream().anyMatch(s -> ground.contains(s.at()))) {
            broken.add("closed-to-ground");
        }
        for (String door : openDoors) {
            for (String conductor : isolation.compartment(door).orElseThrow().exposes()) {
                switch (stateOf(conductor)) {
                    case "live" -> broken.add("exposed-live " + conductor);
                    case "charged" -> broken.add("exposed-charged " + conductor);
                    case "low" -> broken.add("exposed-low-voltage " + conductor);
                    case "floating" -> broken.add("ungrounded-entry " + conductor);
                    default -> {}
                }
            }
        }
        return broken;
    }

    Set<String> closedNow() {
        Set<String> closed = new LinkedHashSet<>();
        position.forEach((name, is) -> {
            if (is.equals("closed")
                    && isolation.device(name).orElseThrow().between().isPresent()) {
                closed.add(name);
            }
        });
        return closed;
    }

    private Set<String> joined(String from, Set<String> closed) {
        Set<String> all = new HashSet<>(Set.of(from));
        boolean grew = true;
        while (grew) {
            grew = false;
            for (String name : closed) {
                Device.Between ends =
                        isolation.device(name).orElseThrow().between().orElseThrow();
                if (all.contains(ends.first()) != all.contains(ends.second())) {
                    all.add(ends.first());
                    all.add(ends.second());
                    grew = true;
                }
            }
        }
        return all;
    }

    private boolean isFed(Set<String> conductors) {
        return isolation.sources().stream().anyMatch(s -> !s.isLowVoltage() && conductors.contains(s.at()));
    }

    Set<String> live() {
        Set<String> live = new HashSet<>();
        for (EnergySource source : isolation.sources()) {
            if (!source.isLowVoltage()) {
                live.addAll(joined(source.at(), closedNow()));
            }
        }
        return live;
    }

    /** {@code live}, {@code low}, {@code grounded}, {@code charged} or {@code floating}. */
    String stateOf(String conductor) {
        Set<String> with = joined(conductor, closedNow());
        if (isFed(with)) {
            return "live";
        }
        if (isolation.sources().stream().anyMatch(s -> with.contains(s.at()))) {
            return "low";
        }
        if (with.contains(Isolation.GROUND)) {
            return "grounded";
        }
        return charged.stream().anyMatch(with::contains) ? "charged" : "floating";
    }
}
