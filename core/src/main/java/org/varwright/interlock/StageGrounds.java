package org.varwright.interlock;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.Interlock;
import org.varwright.bank.Isolation;
import org.varwright.bank.Lock;

/** The change that gives every switched stage a grounding switch of its own, tied to the doors to it. */
final class StageGrounds {
    private StageGrounds() {}

    /** Empty where no exchange or single door lock leads to a stage, so that there is nothing to tie its grounding switch to. */
    static Optional<Change> of(Scheme scheme, String groundingSwitch) {
        Isolation changed = scheme.isolation();
        List<String> names = new ArrayList<>();
        for (StagePoint stage : scheme.stages()) {
            if (stage.switchName().isPresent()) {
                Optional<Isolation> one =
                        ground(changed, stage.name(), stage.switchName().get());
                if (one.isEmpty()) {
                    return Optional.empty();
                }
                changed = one.get();
                names.add(stage.name());
            }
        }
        return names.isEmpty()
                ? Optional.empty()
                : Optional.of(new Change(
                        DesignFault.Kind.STAGE_NOT_GROUNDED,
                        "give " + Words.list(names) + " each a " + groundingSwitch
                                + " that closes only after the discharge time with its switch open, keeps its switch from closing, and whose key, free only while it is held closed, is needed to get in",
                        changed));
    }

    private static Optional<Isolation> ground(Isolation from, String stage, String switchName) {
        String name = "(" + Device.Kind.GROUNDING_SWITCH.code() + " of " + stage + ")";
        String key = "(key of " + stage + ")";
        Device ground = new Device(
                name,
                Device.Kind.GROUNDING_SWITCH,
                Device.positionsOf(Device.Kind.GROUNDING_SWITCH, false),
                Optional.of(new Device.Between(stage, Isolation.GROUND)),
                false,
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        List<String> away = from.device(switchName).orElseThrow().positions().stream()
                .filter(p -> !p.equals(Device.CLOSED))
                .toList();
        List<Interlock> apart = List.of(
                Changed.interlock(name, Device.CLOSED, switchName, away),
                Changed.interlock(switchName, Device.CLOSED, name, List.of(Device.OPEN)));
        Delay delay = new Delay(new Delay.Of.Move(name, Device.CLOSED), 0.0, List.of(switchName), Optional.empty());
        Isolation changed =
                Changed.delays(Changed.interlocks(Changed.devices(from, List.of(ground)), apart), List.of(delay));
        changed = Changed.moreLocks(changed, Changed.lock(new Lock.On.OfDevice(name), Device.CLOSED, key));
        return needed(changed, stage, key);
    }

    /** The key is needed at the exchange that gives the keys of the doors to the stage, or else at the one door lock. */
    private static Optional<Isolation> needed(Isolation changed, String stage, String key) {
        List<Lock> doors = changed.locks().stream()
                .filter(l -> l.on() instanceof Lock.On.OfDoor
                        && changed.compartment(l.on().name())
                                .filter(c -> c.exposes().contains(stage))
                                .isPresent())
                .toList();
        for (int e = 0; e < changed.exchanges().size(); e++) {
            List<String> out = changed.exchanges().get(e).out();
            if (!doors.isEmpty()
                    && doors.stream().allMatch(l -> l.keys().stream().anyMatch(out::contains))) {
                return Optional.of(Changed.exchange(changed, e, List.of(key), List.of()));
            }
        }
        if (doors.size() != 1) {
            return Optional.empty();
        }
        Lock door = doors.getFirst();
        return Optional.of(Changed.lock(
                changed,
                changed.locks().indexOf(door),
                new Lock(door.on(), Changed.plus(door.keys(), List.of(key)), door.holds(), door.note())));
    }
}
