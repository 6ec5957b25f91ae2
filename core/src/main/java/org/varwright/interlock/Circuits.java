package org.varwright.interlock;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Isolation;

/** Works out the {@link Circuit} for a set of closed devices. */
final class Circuits {
    /** Names of the conductors by bit; ground is the first. */
    final List<String> conductors = new ArrayList<>();

    private final Map<String, Integer> index = new HashMap<>();
    private final long[] device;
    private final int[] from;
    private final int[] to;
    private final long groundingDevices;
    private final long disconnectors;
    private final int[] stageConductor;
    private final long[] stage;
    private final long[] stageSwitch;
    private final long[] door;
    private final long[] exposes;
    private final long highVoltageAt;
    private final long anySourceAt;

    Circuits(Layout layout) {
        Isolation isolation = layout.isolation;
        number(Isolation.GROUND);
        isolation.conductors().forEach(this::number);
        layout.stages.forEach(s -> number(s.name()));
        device = layout.switching.stream().mapToLong(layout::closedMask).toArray();
        from = new int[device.length];
        to = new int[device.length];
        long grounding = 0;
        long disconnecting = 0;
        for (int d = 0; d < device.length; d++) {
            Device one = layout.switching.get(d);
            from[d] = one.between().map(b -> number(b.first())).orElse(0);
            to[d] = one.between().map(b -> number(b.second())).orElse(0);
            grounding |= one.kind() == Device.Kind.GROUNDING_SWITCH ? device[d] : 0;
            disconnecting |= one.kind() == Device.Kind.DISCONNECTOR ? device[d] : 0;
        }
        groundingDevices = grounding;
        disconnectors = disconnecting;
        stage = layout.stages.stream().mapToLong(layout::chargeMask).toArray();
        stageConductor = new int[stage.length];
        stageSwitch = new long[stage.length];
        for (int s = 0; s < stage.length; s++) {
            stageConductor[s] = number(layout.stages.get(s).name());
            stageSwitch[s] = layout.stages
                    .get(s)
                    .switchName()
                    .flatMap(isolation::device)
                    .filter(layout.switching::contains)
                    .map(layout::closedMask)
                    .orElse(0L);
        }
        door = isolation.compartments().stream()
                .mapToLong(c -> layout.doorMask(c.name()))
                .toArray();
        exposes = new long[isolation.compartments().size()];
        for (int c = 0; c < exposes.length; c++) {
            Compartment compartment = isolation.compartments().get(c);
            for (String conductor : compartment.exposes()) {
                exposes[c] |= 1L << number(conductor);
            }
        }
        long high = 0;
        long any = 0;
        for (EnergySource source : isolation.sources()) {
            long at = 1L << number(source.at());
            any |= at;
            high |= source.isLowVoltage() ? 0 : at;
        }
        highVoltageAt = high;
        anySourceAt = any;
    }

    private int number(String conductor) {
        Integer known = index.get(conductor);
        if (known != null) {
            return known;
        }
        index.put(conductor, conductors.size());
        conductors.add(conductor);
        return conductors.size() - 1;
    }

    boolean fits() {
        return conductors.size() <= 64;
    }

    /** Every device that is no grounding switch, as a set of closed devices. */
    long allButGrounding() {
        long all = 0;
        for (long one : device) {
            all |= one;
        }
        return all & ~groundingDevices;
    }

    /** Stages whose conductor is an end of one of these devices. */
    long stagesAt(long devices) {
        long stages = 0;
        for (int d = 0; d < device.length; d++) {
            for (int s = 0; (devices & device[d]) != 0 && s < stage.length; s++) {
                stages |= stageConductor[s] == from[d] || stageConductor[s] == to[d] ? stage[s] : 0;
            }
        }
        return stages;
    }

    /** For each conductor, the conductors joined to it, itself included. */
    private long[] components(long closed) {
        long[] joined = new long[conductors.size()];
        for (int c = 0; c < joined.length; c++) {
            joined[c] = 1L << c;
        }
        for (int d = 0; d < device.length; d++) {
            if ((closed & device[d]) == 0) {
                continue;
            }
            long both = joined[from[d]] | joined[to[d]];
            for (long members = both; members != 0; members &= members - 1) {
                joined[Long.numberOfTrailingZeros(members)] = both;
            }
        }
        return joined;
    }

    Circuit of(long closed) {
        long[] joined = components(closed);
        long live = 0;
        long lowVoltage = 0;
        for (int c = 0; c < joined.length; c++) {
            if ((joined[c] & highVoltageAt) != 0) {
                live |= 1L << c;
            } else if ((joined[c] & anySourceAt) != 0) {
                lowVoltage |= 1L << c;
            }
        }
        long withGround = joined[0];
        long grounded = withGround & ~live & ~lowVoltage;
        long liveStages = 0;
        long groundJoinedStages = 0;
        long behindOpenSwitch = 0;
        for (int s = 0; s < stage.length; s++) {
            long at = 1L << stageConductor[s];
            liveStages |= (live & at) != 0 ? stage[s] : 0;
            groundJoinedStages |= (withGround & at) != 0 ? stage[s] : 0;
            if (stageSwitch[s] != 0 && (closed & stageSwitch[s]) == 0) {
                behindOpenSwitch |= at;
            }
        }
        long ungrounded = ~grounded & ~lowVoltage & ~behindOpenSwitch;
        long[] doorsToStage = new long[stage.length];
        for (int s = 0; s < stage.length; s++) {
            boolean free = ((live | lowVoltage | grounded) >> stageConductor[s] & 1) == 0;
            doorsToStage[s] = free ? doorsTo(joined[stageConductor[s]]) : 0;
        }
        return new Circuit(
                closed,
                new Circuit.Reach(live, lowVoltage, grounded, liveStages, groundJoinedStages),
                (withGround & anySourceAt) != 0,
                loadBreak(closed),
                new Circuit.Doors(doorsTo(live), doorsTo(lowVoltage), doorsTo(ungrounded)),
                stage,
                doorsToStage);
    }

    private long doorsTo(long conductorSet) {
        long doors = 0;
        for (int c = 0; c < exposes.length; c++) {
            doors |= (exposes[c] & conductorSet) != 0 ? door[c] : 0;
        }
        return doors;
    }

    /** Judged with the disconnector taken out: a source joined to one end and a stage to the other. */
    private long loadBreak(long closed) {
        long breaking = 0;
        for (int d = 0; d < device.length; d++) {
            if ((disconnectors & device[d]) != 0) {
                long[] without = components(closed & ~device[d]);
                boolean breaks = feeds(without[from[d]], without[to[d]]) || feeds(without[to[d]], without[from[d]]);
                breaking |= breaks ? device[d] : 0;
            }
        }
        return breaking;
    }

    private boolean feeds(long sourceSide, long stageSide) {
        if ((sourceSide & highVoltageAt) == 0) {
            return false;
        }
        for (int conductor : stageConductor) {
            if ((stageSide >> conductor & 1) != 0) {
                return true;
            }
        }
        return false;
    }

    /** Conductors joined to any of these stages. */
    long joinedTo(long closed, long stages) {
        long[] joined = components(closed);
        long conductorSet = 0;
        for (int s = 0; s < stage.length; s++) {
            conductorSet |= (stages & stage[s]) != 0 ? joined[stageConductor[s]] : 0;
        }
        return conductorSet;
    }
}
