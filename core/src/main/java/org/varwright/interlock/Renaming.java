package org.varwright.interlock;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.varwright.bank.Delay;
import org.varwright.bank.Isolation;
import org.varwright.bank.Lock;

/** Two stages with all that is theirs swapped by name; whether the scheme is then the same scheme. */
final class Renaming {
    private final Map<String, String> devices = new HashMap<>();
    private final Map<String, String> doors = new HashMap<>();
    private final Map<String, String> conductors = new HashMap<>();
    private final Map<String, String> keys = new HashMap<>();

    /** Swaps nothing. */
    static Renaming none() {
        return new Renaming();
    }

    /** Swaps one stage's things with another's, in order. */
    static Renaming of(Replica one, Replica other) {
        Renaming renaming = new Renaming();
        renaming.conductors.put(one.stage().name(), other.stage().name());
        renaming.conductors.put(other.stage().name(), one.stage().name());
        swap(renaming.devices, one.devices(), other.devices());
        swap(renaming.doors, one.doors(), other.doors());
        swap(renaming.keys, one.keys(), other.keys());
        return renaming;
    }

    private static void swap(Map<String, String> names, List<String> some, List<String> others) {
        for (int i = 0; i < Math.min(some.size(), others.size()); i++) {
            if (!names.containsKey(some.get(i)) && !names.containsKey(others.get(i))) {
                names.put(some.get(i), others.get(i));
                names.put(others.get(i), some.get(i));
            }
        }
    }

    private static String in(Map<String, String> names, String name) {
        return names.getOrDefault(name, name);
    }

    private static String sorted(List<String> items, UnaryOperator<String> renamed) {
        return items.stream().map(renamed).sorted().toList().toString();
    }

    private String keys(List<String> names) {
        return sorted(names, k -> in(keys, k));
    }

    private String on(Lock.On on) {
        return switch (on) {
            case Lock.On.OfDevice device -> "device " + in(devices, device.name());
            case Lock.On.OfDoor door -> "door " + in(doors, door.name());
        };
    }

    /** Everything that states, moves and properties depend on, with the names swapped, in an order that does not depend on the file's. */
    List<String> signature(Isolation isolation, List<StagePoint> stages) {
        List<String> lines = new ArrayList<>();
        isolation.sources().forEach(s -> lines.add("source " + s.isLowVoltage() + " " + in(conductors, s.at())));
        isolation
                .devices()
                .forEach(d -> lines.add("device " + in(devices, d.name()) + " " + d.kind() + d.positions()
                        + d.between()
                                .map(b -> sorted(List.of(b.first(), b.second()), c -> in(conductors, c)))
                                .orElse("")));
        isolation
                .compartments()
                .forEach(c -> lines.add("door " + in(doors, c.name()) + sorted(c.exposes(), x -> in(conductors, x))));
        isolation.locks().forEach(l -> lines.add("lock " + on(l.on()) + " " + l.holds() + keys(l.keys())));
        isolation.keys().forEach(k -> lines.add("copies " + in(keys, k.name()) + " " + k.copies()));
        isolation.exchanges().forEach(e -> lines.add("exchange " + e.name() + keys(e.in()) + keys(e.out())));
        isolation.interlocks().forEach(i -> {
            List<String> required = new ArrayList<>();
            i.requires().forEach((name, positions) -> {
                boolean device = isolation.device(name).isPresent();
                required.add((device ? in(devices, name) : in(doors, name)) + sorted(positions, p -> p));
            });
            lines.add("interlock " + in(devices, i.device()) + " " + i.to() + sorted(required, r -> r));
        });
        isolation
                .delays()
                .forEach(d -> lines.add("delay "
                        + switch (d.of()) {
                            case Delay.Of.Bolt bolt -> on(bolt.on()) + " " + in(keys, bolt.key());
                            case Delay.Of.Move move -> in(devices, move.device()) + " " + move.to();
                        }
                        + sorted(d.open(), x -> in(devices, x))));
        isolation.start().forEach((device, position) -> lines.add("start " + in(devices, device) + " " + position));
        stages.forEach(s -> lines.add("stage " + in(conductors, s.name()) + " "
                + s.switchName().map(w -> in(devices, w)).orElse("")));
        return lines.stream().sorted().toList();
    }
}
