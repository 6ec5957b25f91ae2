package org.varwright.interlock;

import java.util.Map;
import java.util.Set;

/** What must be so at the end of a way, as far as it is plain: open doors, or positions, doors, bolts and exchanges altogether. */
public final class Needs {
    final Guard guard;

    private Needs(Guard guard) {
        this.guard = guard;
    }

    /** These doors are open. */
    public static Needs open(Scheme scheme, Iterable<String> compartments) {
        Guard all = Guard.ALWAYS;
        for (String compartment : compartments) {
            all = all.and(scheme.layout().door(compartment, true)).orElseThrow();
        }
        return new Needs(all);
    }

    /** These devices stand in these positions, and of all doors exactly these are open. */
    static Needs standing(Scheme scheme, Map<String, String> positions, Set<String> openDoors) {
        Layout layout = scheme.layout();
        Guard all = Guard.ALWAYS;
        for (var device : layout.isolation.devices()) {
            String position = positions.get(device.name());
            if (position != null) {
                all = all.and(layout.device(device, position)).orElseThrow();
            }
        }
        for (var door : layout.isolation.compartments()) {
            all = all.and(layout.door(door.name(), openDoors.contains(door.name())))
                    .orElseThrow();
        }
        return new Needs(all);
    }

    /** Everything as in a state, charges left open. */
    public static Needs everythingOf(Scheme scheme, State state) {
        Layout layout = scheme.layout();
        Guard all = Guard.ALWAYS;
        Map<String, String> positions = scheme.positions(state);
        for (var device : layout.isolation.devices()) {
            all = all.and(layout.device(device, positions.getOrDefault(device.name(), "")))
                    .orElseThrow();
        }
        for (var door : scheme.doors(state).entrySet()) {
            all = all.and(layout.door(door.getKey(), door.getValue())).orElseThrow();
        }
        for (int i = 0; i < layout.isolation.locks().size(); i++) {
            all = all.and(same(layout.lockBit(i), state)).orElseThrow();
        }
        for (int i = 0; i < layout.isolation.exchanges().size(); i++) {
            all = all.and(same(layout.exchangeBit(i), state)).orElseThrow();
        }
        return new Needs(all);
    }

    private static Guard same(int bit, State state) {
        Guard set = Guard.bit(bit, true);
        return set.holds(state) ? set : Guard.bit(bit, false);
    }
}
