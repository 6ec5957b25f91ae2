package org.varwright.interlock;

import java.util.Arrays;

/** Numbers the different values that it is given, from 0 on. */
final class Pool {
    private final LongList values = new LongList();
    private int[] index = new int[1 << 10];

    /** The number of a value; a new value gets the next one. */
    int number(long value) {
        int at = find(value);
        if (index[at] == 0) {
            values.add(value);
            index[at] = values.size();
            if (values.size() * 2 > index.length) {
                index = new int[index.length * 2];
                Arrays.fill(index, 0);
                for (int i = 0; i < values.size(); i++) {
                    index[find(values.get(i))] = i + 1;
                }
            }
            return values.size() - 1;
        }
        return index[at] - 1;
    }

    private int find(long value) {
        long mixed = (value ^ (value >>> 31)) * 0x9E3779B97F4A7C15L;
        int at = (int) (mixed >>> 33) & (index.length - 1);
        while (index[at] != 0 && values.get(index[at] - 1) != value) {
            at = (at + 1) & (index.length - 1);
        }
        return at;
    }

    long value(int number) {
        return values.get(number);
    }

    int size() {
        return values.size();
    }

    long bytes() {
        return values.bytes() + 4L * index.length;
    }
}
