package org.varwright.comtrade;

import java.util.Arrays;

/** Samples kept while they are read: a growing column for the times and for each channel. */
final class Columns {
    private static final int START = 1024;

    private final int most;
    private final double[][] values;
    private final long[][] states;
    private double[] seconds;
    private int size;

    /**
     * Room for samples.
     *
     * @param expected as many as the data were found to hold, or 0 where a part of unknown size is wanted
     * @param most never more than so many
     */
    Columns(int analogs, int statuses, int expected, int most) {
        int room = Math.max(1, Math.min(most, expected > 0 ? expected : START));
        this.most = most;
        this.seconds = new double[room];
        this.values = new double[analogs][room];
        this.states = new long[statuses][Bits.wordsFor(room)];
    }

    boolean isFull() {
        return size == most;
    }

    int size() {
        return size;
    }

    /** Keeps one sample; {@code bits} as {@link Rows#read} gives them. */
    void add(double second, double[] numbers, int[] wanted, long[] bits) {
        if (size == seconds.length) {
            grow();
        }
        seconds[size] = second;
        for (int i = 0; i < values.length; i++) {
            values[i][size] = numbers[wanted[i]];
        }
        for (int w = 0; w < bits.length; w++) {
            // most states are 0 most of the time
            for (long left = bits[w]; left != 0L; left &= left - 1L) {
                int channel = 64 * w + Long.numberOfTrailingZeros(left);
                if (channel < states.length) {
                    states[channel][size >> 6] |= 1L << size;
                }
            }
        }
        size++;
    }

    private void grow() {
        int room = (int) Math.min(most, 2L * seconds.length);
        seconds = Arrays.copyOf(seconds, room);
        for (int i = 0; i < values.length; i++) {
            values[i] = Arrays.copyOf(values[i], room);
        }
        for (int i = 0; i < states.length; i++) {
            states[i] = Arrays.copyOf(states[i], Bits.wordsFor(room));
        }
    }

    Samples seconds() {
        return Samples.owning(size == seconds.length ? seconds : Arrays.copyOf(seconds, size));
    }

    /** Values of a channel, scaled in place: to be called once. */
    Samples values(int channel, Scale scale) {
        double[] column = size == seconds.length ? values[channel] : Arrays.copyOf(values[channel], size);
        for (int i = 0; i < column.length; i++) {
            double value = scale.value(column[i]);
            column[i] = Math.abs(value) <= Double.MAX_VALUE ? value : Double.NaN;
        }
        return Samples.owning(column);
    }

    Bits states(int channel) {
        return Bits.owning(size, Arrays.copyOf(states[channel], Bits.wordsFor(size)));
    }
}
