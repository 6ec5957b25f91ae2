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
    private final int[] from;
    private final int[] to;
    private final long groundingDevices;
    private final long disconnectors;
    private final int[] stageConductor;
    private final long[] stageBehindSwitch;
    private final long[] exposes;
    private final long highVoltageAt;
    private final long anySourceAt;

    Circuits(Isolation isolation, List<StagePoint> stages, List<Device> switching) {
        number(Isolation.GROUND);
        isolation.conductors().forEach(this::number);
        stages.forEach(s -> number(s.name()));
        from = new int[switching.size()];
        to = new int[switching.size()];
        long grounding = 0;
        long disconnecting = 0;
        for (int d = 0; d < from.length; d++) {
            Device device = switching.get(d);
            from[d] = device.between().map(b -> number(b.first())).orElse(0);
            to[d] = device.between().map(b -> number(b.second())).orElse(0);
            grounding |= device.kind() == Device.Kind.GROUNDING_SWITCH ? 1L << d : 0;
            disconnecting |= device.kind() == Device.Kind.DISCONNECTOR ? 1L << d : 0;
        }
        groundingDevices = grounding;
        disconnectors = disconnecting;
        stageConductor = new int[stages.size()];
        stageBehindSwitch = new long[stages.size()];
        for (int s = 0; s < stageConductor.length; s++) {
            stageConductor[s] = number(stages.get(s).name());
            String switchName = stages.get(s).switchName().orElse("");
            for (int d = 0; d < from.length; d++) {
                if (switching.get(d).name().equals(switchName)) {
                    stageBehindSwitch[s] = 1L << d;
                }
            }
        }
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
        return (from.length == 64 ? -1L : (1L << from.length) - 1) & ~groundingDevices;
    }

    /** Stages whose conductor is an end of this device. */
    long stagesAt(int device) {
        long stages = 0;
        for (int s = 0; s < stageConductor.length; s++) {
            if (stageConductor[s] == from[device] || stageConductor[s] == to[device]) {
                stages |= 1L << s;
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
        for (long left = closed; left != 0; left &= left - 1) {
            int d = Long.numberOfTrailingZeros(left);
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
        for (int s = 0; s < stageConductor.length; s++) {
            long at = 1L << stageConductor[s];
            liveStages |= (live & at) != 0 ? 1L << s : 0;
            groundJoinedStages |= (withGround & at) != 0 ? 1L << s : 0;
            if (stageBehindSwitch[s] != 0 && (closed & stageBehindSwitch[s]) == 0) {
                behindOpenSwitch |= at;
            }
        }
        long ungrounded = ~grounded & ~lowVoltage & ~behindOpenSwitch;
        List<Long> doorsToStage = new ArrayList<>();
        for (int conductor : stageConductor) {
            boolean free = ((live | lowVoltage | grounded) >> conductor & 1) == 0;
            doorsToStage.add(free ? doorsTo(joined[conductor]) : 0);
        }
        return new Circuit(
                closed,
                new Circuit.Reach(live, lowVoltage, grounded, liveStages, groundJoinedStages),
                (withGround & anySourceAt) != 0,
                loadBreak(closed),
                new Circuit.Doors(doorsTo(live), doorsTo(lowVoltage), doorsTo(ungrounded), doorsToStage));
    }

    private long doorsTo(long conductorSet) {
        long doors = 0;
        for (int c = 0; c < exposes.length; c++) {
            doors |= (exposes[c] & conductorSet) != 0 ? 1L << c : 0;
        }
        return doors;
    }

    /** Judged with the disconnector taken out: a source joined to one end and a stage to the other. */
    private long loadBreak(long closed) {
        long breaking = 0;
        for (long left = disconnectors; left != 0; left &= left - 1) {
            int d = Long.numberOfTrailingZeros(left);
            long[] without = components(closed & ~(1L << d));
            if (feeds(without[from[d]], without[to[d]]) || feeds(without[to[d]], without[from[d]])) {
                breaking |= 1L << d;
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

    /** Conductors joined to a stage, as a set. */
    long joinedToStage(long closed, int stage) {
        return components(closed)[stageConductor[stage]];
    }
}
