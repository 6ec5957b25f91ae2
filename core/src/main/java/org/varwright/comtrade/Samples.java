package org.varwright.comtrade;

import java.util.Arrays;

/** A row of numbers that can't be changed; NaN where one is missing. */
public final class Samples {
    public static final Samples NONE = new Samples(new double[0]);

    private final double[] values;

    private Samples(double[] values) {
        this.values = values;
    }

    public static Samples of(double... values) {
        return new Samples(values.clone());
    }

    /** Takes the array as it is: the caller must not write to it again. */
    static Samples owning(double[] values) {
        return new Samples(values);
    }

    public int size() {
        return values.length;
    }

    public double at(int index) {
        return values[index];
    }

    /** A copy. */
    public double[] toArray() {
        return values.clone();
    }

    /** How many are missing. */
    public int missing() {
        int missing = 0;
        for (double value : values) {
            if (Double.isNaN(value)) {
                missing++;
            }
        }
        return missing;
    }

    /** Least of those that are there; NaN where none is. */
    public double least() {
        double least = Double.NaN;
        for (double value : values) {
            if (!(value >= least)) {
                least = Double.isNaN(value) ? least : value;
            }
        }
        return least;
    }

    /** Largest of those that are there; NaN where none is. */
    public double largest() {
        double largest = Double.NaN;
        for (double value : values) {
            if (!(value <= largest)) {
                largest = Double.isNaN(value) ? largest : value;
            }
        }
        return largest;
    }

    /** Root of the mean of the squares of those that are there; NaN where none is. */
    public double rms() {
        double scale = Math.max(Math.abs(least()), Math.abs(largest()));
        if (!(scale > 0.0)) {
            return scale;
        }
        double sum = 0.0;
        int count = 0;
        for (double value : values) {
            if (!Double.isNaN(value)) {
                double part = value / scale;
                sum += part * part;
                count++;
            }
        }
        return scale * Math.sqrt(sum / count);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Samples samples && Arrays.equals(values, samples.values);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        return "Samples[" + values.length + "]";
    }
}
