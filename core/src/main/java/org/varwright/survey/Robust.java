package org.varwright.survey;

import java.util.Arrays;

/** Middle and spread that a few wild values do not move. */
final class Robust {
    /** Makes the median of absolute deviations a standard deviation for normal data. */
    private static final double NORMAL = 1.4826;

    private Robust() {}

    /** The median. */
    static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : 0.5 * (sorted[middle - 1] + sorted[middle]);
    }

    /** Standard deviation from the median of absolute deviations. */
    static double sigma(double[] values) {
        double median = median(values);
        return NORMAL
                * median(Arrays.stream(values).map(v -> Math.abs(v - median)).toArray());
    }
}
