package org.varwright.interlock;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;
import org.varwright.bank.Lock;

/**
 * Which bit of a state means what.
 *
 * <p>Plant word from bit 0: one bit a device that is no selector (set: closed), one bit a stage (set: charged), then withdrawn bits, selector codes, bolts of
 * devices (set: withdrawn). Access word: one bit a door (set: open), one bit a door's bolt (set: withdrawn), one bit an exchange (set: given). Bolts of devices
 * that don't fit in the plant word go to the access word.
 */
final class Layout {
    private static final int WORD = 64;

    final Isolation isolation;
    final List<StagePoint> stages;
    /** Devices that are no selectors, in order of their closed bit. */
    final List<Device> switching = new ArrayList<>();

    private final Map<String, Integer> closedBit = new HashMap<>();
    private final Map<String, Integer> withdrawnBit = new HashMap<>();
    private final Map<String, Integer> selectorBit = new LinkedHashMap<>();
    private final Map<String, Integer> doorBit = new LinkedHashMap<>();
    private final Map<String, Integer> stageBit = new LinkedHashMap<>();
    private final int[] lockBit;
    private final int[] exchangeBit;
    private int plantBits;
    private int accessBits;

    Layout(Isolation isolation, List<StagePoint> stages) {
        this.isolation = isolation;
        this.stages = List.copyOf(stages);
        for (Device device : isolation.devices()) {
            if (device.kind() != Device.Kind.SELECTOR) {
                closedBit.put(device.name(), plantBits++);
                switching.add(device);
            }
        }
        for (StagePoint stage : stages) {
            stageBit.put(stage.name(), plantBits++);
        }
        for (Device device : isolation.devices()) {
            if (device.positions().contains(Device.WITHDRAWN) && device.kind() != Device.Kind.SELECTOR) {
                withdrawnBit.put(device.name(), plantBits++);
            } else if (device.kind() == Device.Kind.SELECTOR) {
                selectorBit.put(device.name(), plantBits);
                plantBits += selectorWidth(device);
            }
        }
        accessBits = WORD;
        isolation.compartments().forEach(c -> doorBit.put(c.name(), accessBits++));
        lockBit = new int[isolation.locks().size()];
        for (int i = 0; i < lockBit.length; i++) {
            lockBit[i] = isolation.locks().get(i).on() instanceof Lock.On.OfDevice && plantBits < WORD
                    ? plantBits++
                    : accessBits++;
        }
        exchangeBit = new int[isolation.exchanges().size()];
        for (int i = 0; i < exchangeBit.length; i++) {
            exchangeBit[i] = accessBits++;
        }
    }

    /** Whether every part has its bit. */
    boolean fits() {
        return plantBits <= WORD && accessBits <= 2 * WORD;
    }

    /** Bits in use, both words together. */
    int bits() {
        return plantBits + accessBits - WORD;
    }

    int plantBits() {
        return plantBits;
    }

    int accessBits() {
        return accessBits - WORD;
    }

    int doors() {
        return doorBit.size();
    }

    /** Stage charges are this far from the low end of the plant word. */
    int chargeShift() {
        return switching.size();
    }

    int lockBit(int lock) {
        return lockBit[lock];
    }

    int exchangeBit(int exchange) {
        return exchangeBit[exchange];
    }

    int chargeBit(String stage) {
        return stageBit.getOrDefault(stage, -1);
    }

    /** The device stands in this position. */
    Guard device(Device device, String position) {
        Integer selector = selectorBit.get(device.name());
        if (selector != null) {
            int code = device.positions().indexOf(position);
            Guard guard = Guard.ALWAYS;
            for (int b = 0; b < selectorWidth(device); b++) {
                guard = guard.and(Guard.bit(selector + b, (code >> b & 1) != 0)).orElseThrow();
            }
            return guard;
        }
        Guard guard = Guard.bit(bitOf(device), position.equals(Device.CLOSED));
        Integer withdrawn = withdrawnBit.get(device.name());
        return withdrawn == null
                ? guard
                : guard.and(Guard.bit(withdrawn, position.equals(Device.WITHDRAWN)))
                        .orElseThrow();
    }

    /** The device is not closed: open or withdrawn. */
    Guard notClosed(Device device) {
        return Guard.bit(bitOf(device), false);
    }

    Guard door(String compartment, boolean open) {
        return Guard.bit(doorBit.getOrDefault(compartment, -1), open);
    }

    /** What a lock is on stands in the position that the lock holds; empty where it has no such position. */
    Guard held(Lock lock) {
        return switch (lock.on()) {
            case Lock.On.OfDevice on -> device(isolation.device(on.name()).orElseThrow(), lock.holds());
            case Lock.On.OfDoor on -> door(on.name(), false);
        };
    }

    /** The device or, where there is none of that name, the door stands in this position; empty where there is neither. */
    Optional<Guard> stands(String name, String position) {
        Optional<Device> device = isolation.device(name);
        if (device.isPresent()) {
            return device.get().positions().contains(position)
                    ? Optional.of(device(device.get(), position))
                    : Optional.empty();
        }
        return doorBit.containsKey(name) && (position.equals(Device.OPEN) || position.equals(Device.CLOSED))
                ? Optional.of(door(name, position.equals(Device.OPEN)))
                : Optional.empty();
    }

    private int bitOf(Device device) {
        return closedBit.getOrDefault(device.name(), -1);
    }

    private static int selectorWidth(Device device) {
        return 32 - Integer.numberOfLeadingZeros(Math.max(1, device.positions().size() - 1));
    }
}
