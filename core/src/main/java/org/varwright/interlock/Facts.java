package org.varwright.interlock;

import java.util.Arrays;

/**
 * A set of facts: a bit of a state with a value. Word 0 holds plant bits that are set, word 1 plant bits that are clear, 2 and 3 the same of the access word.
 */
final class Facts {
    static final int WORDS = 4;
    static final int ALL = WORDS * 64;

    private Facts() {}

    static long[] of(Guard guard) {
        return new long[] {
            guard.plantMask() & guard.plantValue(),
            guard.plantMask() & ~guard.plantValue(),
            guard.accessMask() & guard.accessValue(),
            guard.accessMask() & ~guard.accessValue()
        };
    }

    static long[] of(State state) {
        return new long[] {state.plant(), ~state.plant(), state.access(), ~state.access()};
    }

    static long[] full() {
        long[] all = new long[WORDS];
        Arrays.fill(all, -1L);
        return all;
    }

    static void keep(long[] set, long[] only) {
        for (int w = 0; w < WORDS; w++) {
            set[w] &= only[w];
        }
    }

    static boolean has(long[] set, int fact) {
        return (set[fact >> 6] >> (fact & 63) & 1) != 0;
    }

    static boolean containsAll(long[] set, long[] part) {
        for (int w = 0; w < WORDS; w++) {
            if ((part[w] & ~set[w]) != 0) {
                return false;
            }
        }
        return true;
    }
}
