package org.varwright.waveform;

/**
 * One channel: a value at each time of a {@link TimeBase}, NaN where it is missing.
 *
 * <p>The array is not copied: nobody writes to it once it is here.
 */
public final class Signal {
    private final TimeBase base;
    private final double skewSeconds;
    private final double[] values;

    private Signal(TimeBase base, double skewSeconds, double[] values) {
        if (values.length != base.size()) {
            throw new IllegalArgumentException(values.length + " values at " + base.size() + " times");
        }
        this.base = base;
        this.skewSeconds = skewSeconds;
        this.values = values;
    }

    public static Signal of(TimeBase base, double[] values) {
        return new Signal(base, 0.0, values);
    }

    /**
     * A channel that is converted later than the time of its sample says.
     *
     * @param skewSeconds by so much [s]
     */
    public static Signal of(TimeBase base, double skewSeconds, double[] values) {
        return new Signal(base, skewSeconds, values);
    }

    public TimeBase base() {
        return base;
    }

    public int size() {
        return values.length;
    }

    public double value(int index) {
        return values[index];
    }

    /** When a sample was taken [s], the channel's own delay included. */
    public double seconds(int index) {
        return base.seconds(index) + skewSeconds;
    }

    public double skewSeconds() {
        return skewSeconds;
    }

    /** Index of the first sample taken at or after a time. */
    public int indexAt(double time) {
        return base.indexAt(time - skewSeconds);
    }

    /** Every value times a factor. */
    public Signal times(double factor) {
        if (factor == 1.0) {
            return this;
        }
        double[] scaled = new double[values.length];
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] = values[i] * factor;
        }
        return new Signal(base, skewSeconds, scaled);
    }

    /** The value at a time, on a straight line between its neighbours; NaN outside, across a change of pace, and where one of them is missing. */
    public double at(double time) {
        int after = indexAt(time);
        if (after < values.length && seconds(after) == time) {
            return values[after];
        }
        if (after == 0 || after >= values.length || base.pieceAt(after).from() == after) {
            return Double.NaN;
        }
        double part = (time - seconds(after - 1)) / (seconds(after) - seconds(after - 1));
        return values[after - 1] + part * (values[after] - values[after - 1]);
    }

    /** Largest magnitude among samples of {@code [from, to)}; 0 where all are missing. */
    public double largest(int from, int to) {
        double largest = 0.0;
        for (int i = Math.max(0, from); i < Math.min(to, values.length); i++) {
            if (Math.abs(values[i]) > largest) {
                largest = Math.abs(values[i]);
            }
        }
        return largest;
    }

    /** Index of the largest magnitude among samples of {@code [from, to)}; {@code from} where all are missing. */
    public int largestAt(int from, int to) {
        int best = from;
        double largest = -1.0;
        for (int i = Math.max(0, from); i < Math.min(to, values.length); i++) {
            if (Math.abs(values[i]) > largest) {
                largest = Math.abs(values[i]);
                best = i;
            }
        }
        return best;
    }
}
