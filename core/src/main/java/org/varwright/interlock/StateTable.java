package org.varwright.interlock;

/**
 * The set of states seen, open addressing, one {@code long} a slot: the state's number, whether it is known to get home, and its depth modulo {@link #DEPTHS}.
 */
final class StateTable {
    static final int DEPTHS = 31;

    private static final int SHIFT = 6;
    private static final long HOME = 1L << 5;
    private static final long MARK = HOME - 1;
    private static final long EMPTY = 0;
    private static final double FULL = 0.85;
    private static final double GROWTH = 1.45;
    private static final int LARGEST = Integer.MAX_VALUE - 64;

    private long[] slots = new long[1 << 12];
    private int size;
    private long peakBytes = bytes();
    private int growAt = (int) (slots.length * FULL);

    int size() {
        return size;
    }

    long bytes() {
        return 8L * slots.length;
    }

    /** The most bytes that it has held, old and new table while it grew. */
    long peakBytes() {
        return peakBytes;
    }

    /** Bytes that it will hold while it grows for the next time. */
    long bytesToGrow() {
        return bytes() + 8L * grown();
    }

    private int grown() {
        return (int) Math.min(LARGEST, (long) (slots.length * GROWTH));
    }

    private static int place(long state, int length) {
        long mixed = (state ^ (state >>> 29)) * 0x9E3779B97F4A7C15L;
        return (int) (((mixed >>> 32) * length) >>> 32);
    }

    private int find(long state) {
        int at = place(state, slots.length);
        while (slots[at] != EMPTY && slots[at] >>> SHIFT != state) {
            at = at + 1 == slots.length ? 0 : at + 1;
        }
        return at;
    }

    /** Adds a state; what was stored of it before, or 0 where it is new. */
    long add(long state, int depth) {
        int at = find(state);
        long known = slots[at];
        if (known == EMPTY) {
            slots[at] = (state << SHIFT) | (depth % DEPTHS + 1);
            size++;
            if (size > growAt) {
                grow();
            }
        }
        return known;
    }

    /** What is stored of a state; 0 where it has not been seen. */
    long get(long state) {
        return slots[find(state)];
    }

    void setHome(long state) {
        slots[find(state)] |= HOME;
    }

    static boolean isHome(long stored) {
        return (stored & HOME) != 0;
    }

    /** Whether what is stored has this depth, as far as the table remembers it. */
    static boolean hasDepth(long stored, int depth) {
        return (stored & MARK) == depth % DEPTHS + 1;
    }

    private void grow() {
        long[] old = slots;
        slots = new long[grown()];
        peakBytes = 8L * old.length + bytes();
        growAt = slots.length == LARGEST ? LARGEST - 1 : (int) (slots.length * FULL);
        for (long entry : old) {
            if (entry != EMPTY) {
                slots[find(entry >>> SHIFT)] = entry;
            }
        }
    }
}
