package org.varwright.interlock;

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
 * <p>Plant word: closed devices, stage charges, withdrawn bits, selector codes and the bolts of devices (set: withdrawn). Access word: open doors, their bolts, given
 * exchanges. Where all of it fits in {@link #NARROW} bits, no position is used in both words, so that a state is one number: plant | access. Otherwise
 * things are dealt out to the lower and upper half of each word in turn, so that each half sees about as few combinations as the other (ILK-7).
 */
final class Layout {
    /** Up to so many bits a state is one number as it is. */
    static final int NARROW = 58;

    private static final int WORD = 64;
    private static final int HALF = 32;

    final Isolation isolation;
    final List<StagePoint> stages;
    /** Devices that are no selectors. */
    final List<Device> switching;

    private final Map<String, Integer> closedBit = new HashMap<>();
    private final Map<String, Integer> withdrawnBit = new HashMap<>();
    private final Map<String, Integer> selectorBit = new HashMap<>();
    private final Map<String, Integer> doorBit = new LinkedHashMap<>();
    private final Map<String, Integer> stageBit = new HashMap<>();
    private final int[] lockBit;
    private final int[] exchangeBit;
    private final int bits;
    /** Next free position: plant lower, plant upper, access lower, access upper half; narrow uses the first only. */
    private final int[] next = {0, HALF, WORD, WORD + HALF};

    private boolean fits = true;

    Layout(Isolation isolation, List<StagePoint> stages) {
        this.isolation = isolation;
        this.stages = List.copyOf(stages);
        switching = isolation.devices().stream()
                .filter(d -> d.kind() != Device.Kind.SELECTOR)
                .toList();
        bits = countBits();
        lockBit = new int[isolation.locks().size()];
        exchangeBit = new int[isolation.exchanges().size()];
        Map<String, Integer> halfOf = new HashMap<>();
        for (int d = 0; d < isolation.devices().size(); d++) {
            Device device = isolation.devices().get(d);
            int half = d % 2;
            halfOf.put(device.name(), half);
            if (device.kind() == Device.Kind.SELECTOR) {
                selectorBit.put(device.name(), plant(half, selectorWidth(device)));
            } else {
                closedBit.put(device.name(), plant(half, 1));
                if (device.positions().contains(Device.WITHDRAWN)) {
                    withdrawnBit.put(device.name(), plant(half, 1));
                }
            }
        }
        for (StagePoint stage : stages) {
            int half = halfOf.getOrDefault(stage.switchName().orElse(""), 0);
            stageBit.put(stage.name(), plant(half, 1));
        }
        for (int i = 0; i < lockBit.length; i++) {
            if (isolation.locks().get(i).on() instanceof Lock.On.OfDevice on) {
                lockBit[i] = elsewhere(0, halfOf.getOrDefault(on.name(), 0));
            }
        }
        for (int c = 0; c < isolation.compartments().size(); c++) {
            doorBit.put(isolation.compartments().get(c).name(), access(c % 2));
        }
        for (int c = 0; c < isolation.compartments().size(); c++) {
            String name = isolation.compartments().get(c).name();
            for (int i = 0; i < lockBit.length; i++) {
                if (isolation.locks().get(i).on().equals(new Lock.On.OfDoor(name))) {
                    lockBit[i] = elsewhere(2, c % 2);
                }
            }
        }
        for (int i = 0; i < exchangeBit.length; i++) {
            exchangeBit[i] = elsewhere(2, i % 2);
        }
    }

    private int countBits() {
        int count = stages.size()
                + isolation.locks().size()
                + isolation.compartments().size()
                + isolation.exchanges().size();
        for (Device device : isolation.devices()) {
            if (device.kind() == Device.Kind.SELECTOR) {
                count += selectorWidth(device);
            } else {
                count += device.positions().contains(Device.WITHDRAWN) ? 2 : 1;
            }
        }
        return count;
    }

    private int plant(int half, int width) {
        return isNarrow() ? take(0, width, HALF * 2) : takeEither(half, 1 - half, width, 0);
    }

    private int access(int half) {
        // narrow: the position is free in the plant word too, because both draw from one counter
        return isNarrow() ? take(0, 1, HALF * 2) + WORD : takeEither(half, 1 - half, 1, 2);
    }

    /** A bit in this word or, where it is full, in the other: nothing asks in which word a bolt is. */
    private int elsewhere(int word, int half) {
        if (isNarrow()) {
            return word == 0 ? plant(half, 1) : access(half);
        }
        boolean room = next[word] < (word + 1) * HALF || next[word + 1] < (word + 2) * HALF;
        return takeEither(half, 1 - half, 1, room ? word : 2 - word);
    }

    private int takeEither(int half, int other, int width, int word) {
        int base = (word + half) * HALF;
        boolean room = next[word + half] + width <= base + HALF;
        int chosen = word + (room ? half : other);
        return take(chosen, width, (chosen + 1) * HALF);
    }

    private int take(int counter, int width, int end) {
        int at = next[counter];
        next[counter] = at + width;
        if (next[counter] > end) {
            fits = false;
            return end - width;
        }
        return at;
    }

    /** Whether a state is one number as it is. */
    boolean isNarrow() {
        return bits <= NARROW;
    }

    /** Whether every part has its bit. */
    boolean fits() {
        return fits;
    }

    /** Bits in use, both words together. */
    int bits() {
        return bits;
    }

    /** Bits of the plant word that say which devices are closed. */
    long closedMask() {
        return switching.stream().mapToLong(this::closedMask).reduce(0, (a, b) -> a | b);
    }

    long closedMask(Device device) {
        return 1L << bitOf(device);
    }

    long chargeMask(StagePoint stage) {
        return 1L << chargeBit(stage.name());
    }

    long chargeMask() {
        return stages.stream().mapToLong(this::chargeMask).reduce(0, (a, b) -> a | b);
    }

    /** Bits of the access word that say which doors are open. */
    long doorMask() {
        return isolation.compartments().stream()
                .mapToLong(c -> doorMask(c.name()))
                .reduce(0, (a, b) -> a | b);
    }

    long doorMask(String compartment) {
        return door(compartment, true).accessMask();
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
