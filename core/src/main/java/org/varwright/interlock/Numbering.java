package org.varwright.interlock;

/**
 * States as single numbers of at most {@link Layout#NARROW} bits: both words in one where they fit, else the numbers of two halves of them, each half numbered
 * as it turns up (ILK-7).
 */
final class Numbering {
    private static final long LOW = 0xFFFF_FFFFL;
    private static final int HALF_NUMBER = Layout.NARROW / 2;
    private static final int HALF_LIMIT = 1 << HALF_NUMBER;

    private final boolean narrow;
    private final Pool lower = new Pool();
    private final Pool upper = new Pool();

    Numbering(boolean narrow) {
        this.narrow = narrow;
    }

    long number(long plant, long access) {
        if (narrow) {
            return plant | access;
        }
        int low = lower.number((plant & LOW) | (access << 32));
        int high = upper.number((plant >>> 32) | (access & ~LOW));
        return (long) high << HALF_NUMBER | low;
    }

    long plant(long number) {
        if (narrow) {
            return number;
        }
        long low = lower.value((int) number & (HALF_LIMIT - 1));
        long high = upper.value((int) (number >>> HALF_NUMBER));
        return (low & LOW) | (high << 32);
    }

    long access(long number) {
        if (narrow) {
            return number;
        }
        long low = lower.value((int) number & (HALF_LIMIT - 1));
        long high = upper.value((int) (number >>> HALF_NUMBER));
        return (low >>> 32) | (high & ~LOW);
    }

    /** Whether another state could overflow the numbers of a half. */
    boolean isFull() {
        return lower.size() >= HALF_LIMIT - 1 || upper.size() >= HALF_LIMIT - 1;
    }

    long bytes() {
        return narrow ? 0 : lower.bytes() + upper.bytes();
    }
}
