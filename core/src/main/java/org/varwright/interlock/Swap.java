package org.varwright.interlock;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Bits of one stage swapped with those of another. */
final class Swap {
    private final Map<Integer, Integer> to = new HashMap<>();

    Swap(List<Integer> some, List<Integer> others) {
        for (int i = 0; i < some.size(); i++) {
            to.put(some.get(i), others.get(i));
            to.put(others.get(i), some.get(i));
        }
    }

    /** The plant word of two words after the swap. */
    long plant(long plant, long access) {
        return word(plant, access, 0);
    }

    private long word(long plant, long access, int from) {
        long word = 0;
        for (int b = from; b < from + 64; b++) {
            int source = to.getOrDefault(b, b);
            long set = (source < 64 ? plant >>> source : access >>> source) & 1;
            word |= set << b;
        }
        return word;
    }

    Guard of(Guard guard) {
        return new Guard(
                word(guard.plantMask(), guard.accessMask(), 0),
                word(guard.plantValue(), guard.accessValue(), 0),
                word(guard.plantMask(), guard.accessMask(), 64),
                word(guard.plantValue(), guard.accessValue(), 64));
    }

    Rule.KeyCount of(Rule.KeyCount key) {
        return new Rule.KeyCount(
                word(key.plantMask(), key.accessMask(), 0),
                word(key.plantFlip(), key.accessFlip(), 0),
                word(key.plantMask(), key.accessMask(), 64),
                word(key.plantFlip(), key.accessFlip(), 64),
                key.copies());
    }
}
