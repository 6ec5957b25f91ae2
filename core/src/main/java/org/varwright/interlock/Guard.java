package org.varwright.interlock;

import java.util.Optional;

/**
 * A conjunction of bit values: a state satisfies it when its masked words equal the values.
 *
 * @param plantMask bits asked for in {@link State#plant()}
 * @param plantValue what they must be
 * @param accessMask bits asked for in {@link State#access()}
 * @param accessValue what they must be
 */
record Guard(long plantMask, long plantValue, long accessMask, long accessValue) {
    static final Guard ALWAYS = new Guard(0, 0, 0, 0);

    /** One bit: 0 to 63 in the plant word, 64 to 127 in the access word. */
    static Guard bit(int bit, boolean set) {
        long mask = 1L << (bit & 63);
        return bit < 64 ? new Guard(mask, set ? mask : 0, 0, 0) : new Guard(0, 0, mask, set ? mask : 0);
    }

    /** Both; empty where they contradict each other. */
    Optional<Guard> and(Guard other) {
        long plantBoth = plantMask & other.plantMask;
        long accessBoth = accessMask & other.accessMask;
        if ((plantValue & plantBoth) != (other.plantValue & plantBoth)
                || (accessValue & accessBoth) != (other.accessValue & accessBoth)) {
            return Optional.empty();
        }
        return Optional.of(new Guard(
                plantMask | other.plantMask,
                plantValue | other.plantValue,
                accessMask | other.accessMask,
                accessValue | other.accessValue));
    }

    boolean holds(long plant, long access) {
        return (plant & plantMask) == plantValue && (access & accessMask) == accessValue;
    }

    boolean holds(State state) {
        return holds(state.plant(), state.access());
    }

    /** The state with the bits of this guard set to its values. */
    State applyTo(State state) {
        return new State((state.plant() & ~plantMask) | plantValue, (state.access() & ~accessMask) | accessValue);
    }
}
