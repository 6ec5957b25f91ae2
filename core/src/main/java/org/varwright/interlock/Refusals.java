package org.varwright.interlock;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.Interlock;
import org.varwright.bank.Lock;

/** Says in words why a move is not allowed in a state. */
final class Refusals {
    private final Scheme scheme;
    private final State state;
    private final Map<String, String> positions;
    private final Map<String, Boolean> doors;
    private final List<Boolean> extended;
    private final List<String> reasons = new ArrayList<>();

    Refusals(Scheme scheme, State state) {
        this.scheme = scheme;
        this.state = state;
        positions = scheme.positions(state);
        doors = scheme.doors(state);
        extended = scheme.boltsExtended(state);
    }

    List<String> of(Move move) {
        switch (move) {
            case Move.Withdraw withdraw -> {
                if (!isExtended(withdraw.lock())) {
                    reasons.add("the bolt is withdrawn already");
                }
                needFree(withdraw.lock().keys());
            }
            case Move.Extend extend -> extend(extend.lock());
            case Move.Operate operate -> operate(operate);
            case Move.OpenDoor open -> door(open.compartment(), true);
            case Move.CloseDoor close -> door(close.compartment(), false);
            case Move.Give give -> {
                if (isGiven(give.what())) {
                    reasons.add(give.what() + " has given its keys already");
                }
                needFree(give.exchange().in());
            }
            case Move.Return back -> {
                if (!isGiven(back.what())) {
                    reasons.add(back.what() + " has its keys at home already");
                }
                needFree(back.exchange().out());
            }
            case Move.Wait wait -> {
                if (!scheme.charges(state).getOrDefault(wait.stage(), false)) {
                    reasons.add(wait.stage() + " is discharged already");
                } else {
                    reasons.add(wait.stage() + " is connected to a live conductor");
                }
            }
        }
        return List.copyOf(reasons);
    }

    private void extend(Lock lock) {
        if (isExtended(lock)) {
            reasons.add("the bolt is extended already");
        }
        String stands = switch (lock.on()) {
            case Lock.On.OfDevice on -> positions.getOrDefault(on.name(), "");
            case Lock.On.OfDoor on -> doorWord(on.name());
        };
        if (!stands.equals(lock.holds())) {
            reasons.add("the bolt holds " + lock.on().name() + " only in " + lock.holds() + ", and it is " + stands);
        }
        for (Delay delay : scheme.isolation().delays()) {
            if (delay.of() instanceof Delay.Of.Bolt bolt
                    && bolt.on().equals(lock.on())
                    && lock.keys().contains(bolt.key())) {
                delay(delay);
            }
        }
    }

    private void operate(Move.Operate move) {
        Device device = scheme.isolation().device(move.device()).orElseThrow();
        String from = positions.getOrDefault(device.name(), "");
        if (from.equals(move.position())) {
            reasons.add(device.name() + " is " + from + " already");
        } else if (device.kind() == Device.Kind.BREAKER
                && Math.abs(device.positions().indexOf(from)
                                - device.positions().indexOf(move.position()))
                        > 1) {
            reasons.add(device.name() + " goes from " + from + " to " + move.position() + " only by way of open");
        }
        bolts(new Lock.On.OfDevice(device.name()));
        for (Interlock interlock : scheme.isolation().interlocks()) {
            if (interlock.device().equals(device.name()) && interlock.to().equals(move.position())) {
                interlock.requires().forEach((name, allowed) -> {
                    String stands = positions.containsKey(name) ? positions.getOrDefault(name, "") : doorWord(name);
                    if (!allowed.contains(stands)) {
                        reasons.add("an interlock asks for " + name + " " + Words.list(allowed, "or") + ", and it is "
                                + stands);
                    }
                });
            }
        }
        for (Delay delay : scheme.isolation().delays()) {
            if (delay.of() instanceof Delay.Of.Move held
                    && held.device().equals(device.name())
                    && held.to().equals(move.position())) {
                delay(delay);
            }
        }
    }

    private void door(String compartment, boolean open) {
        if (doors.getOrDefault(compartment, false) == open) {
            reasons.add("the door of " + compartment + " is " + (open ? "open" : "closed") + " already");
        }
        bolts(new Lock.On.OfDoor(compartment));
    }

    private void bolts(Lock.On on) {
        for (int i = 0; i < extended.size(); i++) {
            Lock lock = scheme.isolation().locks().get(i);
            if (extended.get(i) && lock.on().equals(on)) {
                reasons.add("it is bolted until " + Words.keys(lock.keys()) + " "
                        + (lock.keys().size() == 1 ? "is" : "are") + " put into its lock");
            }
        }
    }

    private void delay(Delay delay) {
        List<String> shut = delay.open().stream()
                .filter(d -> Device.CLOSED.equals(positions.getOrDefault(d, "")))
                .toList();
        if (!shut.isEmpty()) {
            reasons.add("a delay starts only when " + Words.list(shut) + (shut.size() == 1 ? " is" : " are") + " open");
        }
        Map<String, Boolean> charges = scheme.charges(state);
        List<String> charged = Rules.stagesBehind(scheme.layout(), scheme.circuits(), delay.open()).stream()
                .map(StagePoint::name)
                .filter(s -> charges.getOrDefault(s, false))
                .toList();
        if (!charged.isEmpty()) {
            reasons.add("a delay holds it until " + Words.list(charged) + (charged.size() == 1 ? " is" : " are")
                    + " discharged");
        }
    }

    private void needFree(List<String> keys) {
        Map<String, List<KeyPlace>> places = scheme.keys(state);
        for (String key : keys) {
            List<KeyPlace> at = places.getOrDefault(key, List.of());
            if (at.stream().noneMatch(p -> p instanceof KeyPlace.Free)) {
                reasons.add("key " + key + " is trapped in "
                        + Words.list(at.stream().map(SchemeCheck::phrase).toList()));
            }
        }
    }

    private boolean isExtended(Lock lock) {
        return extended.get(scheme.isolation().locks().indexOf(lock));
    }

    private boolean isGiven(String exchange) {
        return scheme.exchangesGiven(state).getOrDefault(exchange, false);
    }

    private String doorWord(String compartment) {
        return doors.getOrDefault(compartment, false) ? Device.OPEN : Device.CLOSED;
    }
}
