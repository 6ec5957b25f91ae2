package org.varwright.isolation;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.interlock.ConductorState;
import org.varwright.interlock.Property;
import org.varwright.interlock.Scheme;
import org.varwright.interlock.StagePoint;
import org.varwright.interlock.State;

/** What open doors expose, state by state. Conductors and doors are bits, by their order in the scheme. */
final class Exposure {
    /** Broken by no plan, whatever is asked for. */
    static final Set<Property> NEVER = EnumSet.of(
            Property.EXPOSED_LIVE,
            Property.EXPOSED_CHARGED,
            Property.CLOSED_TO_GROUND,
            Property.LOAD_BREAK,
            Property.RECHARGE,
            Property.GROUNDED_CHARGED);

    private static final int REMEMBERED = 500_000;

    final Scheme scheme;
    final List<String> conductors;
    private final List<Compartment> doors;
    private final long[] exposes;
    private final Map<Long, Conductors> byPlant = new HashMap<>();
    private final Map<Long, Long> byAccess = new HashMap<>();

    Exposure(Scheme scheme) {
        this.scheme = scheme;
        conductors = List.copyOf(scheme.conductors(scheme.start()).keySet());
        doors = scheme.isolation().compartments();
        exposes = new long[doors.size()];
        for (int d = 0; d < exposes.length; d++) {
            exposes[d] = bits(doors.get(d).exposes());
        }
    }

    /**
     * What the conductors are.
     *
     * @param live joined to a source of 1 kV or more
     * @param lowVoltage joined to a low-voltage source only
     * @param grounded joined to ground and no source
     * @param charged joined to a charged stage
     * @param behindOpenSwitch stages whose switch is not closed
     */
    record Conductors(long live, long lowVoltage, long grounded, long charged, long behindOpenSwitch) {}

    long bits(Iterable<String> names) {
        long bits = 0;
        for (String name : names) {
            int at = conductors.indexOf(name);
            bits |= at < 0 ? 0 : 1L << at;
        }
        return bits;
    }

    long doorBits(Iterable<String> names) {
        long bits = 0;
        for (String name : names) {
            for (int d = 0; d < exposes.length; d++) {
                bits |= doors.get(d).name().equals(name) ? 1L << d : 0;
            }
        }
        return bits;
    }

    /** Everything that these doors expose. */
    long exposedBy(long openDoors) {
        long exposed = 0;
        for (long left = openDoors; left != 0; left &= left - 1) {
            exposed |= exposes[Long.numberOfTrailingZeros(left)];
        }
        return exposed;
    }

    long openDoors(State state) {
        Long known = byAccess.get(state.access());
        if (known != null) {
            return known;
        }
        List<String> open = new ArrayList<>();
        scheme.doors(state).forEach((name, isOpen) -> {
            if (isOpen) {
                open.add(name);
            }
        });
        long bits = doorBits(open);
        remember(byAccess, state.access(), bits);
        return bits;
    }

    Conductors conductors(State state) {
        Conductors known = byPlant.get(state.plant());
        if (known != null) {
            return known;
        }
        Map<String, ConductorState> all = scheme.conductors(state);
        Conductors made = new Conductors(
                of(all, ConductorState.LIVE),
                of(all, ConductorState.LIVE_LOW_VOLTAGE),
                of(all, ConductorState.GROUNDED),
                of(all, ConductorState.CHARGED),
                behindOpenSwitch(scheme.positions(state)));
        remember(byPlant, state.plant(), made);
        return made;
    }

    private static <V> void remember(Map<Long, V> map, long key, V value) {
        if (map.size() >= REMEMBERED) {
            map.clear();
        }
        map.put(key, value);
    }

    private long of(Map<String, ConductorState> all, ConductorState wanted) {
        long bits = 0;
        for (int c = 0; c < conductors.size(); c++) {
            bits |= all.get(conductors.get(c)) == wanted ? 1L << c : 0;
        }
        return bits;
    }

    private long behindOpenSwitch(Map<String, String> positions) {
        List<String> behind = new ArrayList<>();
        for (StagePoint stage : scheme.stages()) {
            if (stage.switchName().isPresent()
                    && !Device.CLOSED.equals(positions.get(stage.switchName().get()))) {
                behind.add(stage.name());
            }
        }
        return bits(behind);
    }

    /** Low-voltage conductors that open doors expose. */
    long lowVoltage(State state) {
        return exposedBy(openDoors(state)) & conductors(state).lowVoltage();
    }

    /** Exposed conductors that break {@code ungrounded-entry}: neither grounded nor a stage behind an open switch. */
    long ungrounded(State state) {
        Conductors all = conductors(state);
        return exposedBy(openDoors(state)) & ~all.grounded() & ~all.lowVoltage() & ~all.behindOpenSwitch();
    }
}
