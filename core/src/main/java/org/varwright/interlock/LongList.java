package org.varwright.interlock;

import java.util.Arrays;

/** A growing list of numbers. */
final class LongList {
    private long[] items = new long[64];
    private int size;

    void add(long item) {
        if (size == items.length) {
            items = Arrays.copyOf(items, size + (size >> 1));
        }
        items[size++] = item;
    }

    long get(int index) {
        return items[index];
    }

    void set(int index, long item) {
        items[index] = item;
    }

    int size() {
        return size;
    }

    void truncate(int newSize) {
        size = newSize;
    }

    long bytes() {
        return 8L * items.length;
    }
}
