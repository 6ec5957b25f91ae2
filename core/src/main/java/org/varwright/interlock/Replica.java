package org.varwright.interlock;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;
import org.varwright.bank.Lock;

/**
 * A stage with all that is its own: the devices at it, the doors that expose it, their keys, and the bits of all these in a fixed order.
 *
 * @param stage the stage
 * @param devices names of the devices at its conductor
 * @param doors names of the compartments that expose it
 * @param keys of the locks on these
 * @param bits 0 to 63 in the plant word, 64 to 127 in the access word
 */
record Replica(StagePoint stage, List<String> devices, List<String> doors, List<String> keys, List<Integer> bits) {
    static Replica of(Layout layout, StagePoint stage) {
        Isolation isolation = layout.isolation;
        List<String> devices = new ArrayList<>();
        List<String> doors = new ArrayList<>();
        List<String> keys = new ArrayList<>();
        List<Integer> bits = new ArrayList<>(List.of(layout.chargeBit(stage.name())));
        for (Device device : layout.switching) {
            boolean atStage = device.between()
                    .filter(b -> b.first().equals(stage.name()) || b.second().equals(stage.name()))
                    .isPresent();
            if (atStage) {
                devices.add(device.name());
                long closed = layout.closedMask(device);
                long all = layout.device(device, Device.CLOSED).plantMask();
                bits.add(Long.numberOfTrailingZeros(closed));
                if (all != closed) {
                    bits.add(Long.numberOfTrailingZeros(all & ~closed));
                }
                locks(layout, new Lock.On.OfDevice(device.name()), keys, bits);
            }
        }
        for (Compartment compartment : isolation.compartments()) {
            if (compartment.exposes().contains(stage.name())) {
                doors.add(compartment.name());
                bits.add(64 + Long.numberOfTrailingZeros(layout.doorMask(compartment.name())));
                locks(layout, new Lock.On.OfDoor(compartment.name()), keys, bits);
            }
        }
        return new Replica(stage, List.copyOf(devices), List.copyOf(doors), List.copyOf(keys), List.copyOf(bits));
    }

    private static void locks(Layout layout, Lock.On on, List<String> keys, List<Integer> bits) {
        List<Lock> all = layout.isolation.locks();
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).on().equals(on)) {
                bits.add(layout.lockBit(i));
                all.get(i).keys().stream().filter(k -> !keys.contains(k)).forEach(keys::add);
            }
        }
    }

    /** The values of its bits, in order. */
    int value(long plant, long access) {
        int value = 0;
        for (int k = 0; k < bits.size(); k++) {
            int bit = bits.get(k);
            value |= (int) ((bit < 64 ? plant >>> bit : access >>> bit) & 1) << k;
        }
        return value;
    }
}
