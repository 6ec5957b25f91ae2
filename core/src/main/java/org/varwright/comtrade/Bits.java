package org.varwright.comtrade;

import java.util.Arrays;

/** States of a status channel, one a sample; can't be changed. */
public final class Bits {
    private final int size;
    private final long[] words;

    private Bits(int size, long[] words) {
        this.size = size;
        this.words = words;
    }

    public static Bits of(boolean... states) {
        long[] words = new long[wordsFor(states.length)];
        for (int i = 0; i < states.length; i++) {
            if (states[i]) {
                words[i >> 6] |= 1L << i;
            }
        }
        return new Bits(states.length, words);
    }

    /** Takes the words as they are: the caller must not write to them again. */
    static Bits owning(int size, long[] words) {
        return new Bits(size, words);
    }

    static int wordsFor(int size) {
        return (size + 63) >> 6;
    }

    public int size() {
        return size;
    }

    public boolean at(int index) {
        if (index < 0 || index >= size) {
            throw new IndexOutOfBoundsException(index + " of " + size);
        }
        return (words[index >> 6] >> index & 1L) != 0L;
    }

    /** Samples at which the channel is 1. */
    public int ones() {
        int ones = 0;
        for (long word : words) {
            ones += Long.bitCount(word);
        }
        return ones;
    }

    /** How often the state changes. */
    public int changes() {
        int changes = 0;
        for (int i = 1; i < size; i++) {
            if (at(i) != at(i - 1)) {
                changes++;
            }
        }
        return changes;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Bits bits && size == bits.size && Arrays.equals(words, bits.words);
    }

    @Override
    public int hashCode() {
        return 31 * size + Arrays.hashCode(words);
    }

    @Override
    public String toString() {
        return "Bits[" + size + "]";
    }
}
