package org.varwright.waveform;

import java.util.ArrayList;
import java.util.List;

/**
 * A channel between two times for a screen: where there are more samples than points, of each equal share of time the least and the greatest sample in their
 * order, so that no peak is lost (REC-9).
 *
 * @param seconds rising
 * @param values one each; NaN where samples are missing
 */
@SuppressWarnings("ArrayRecordComponent") // read once, by who draws it
public record Thinned(double[] seconds, double[] values) {
    /**
     * The channel from {@code from} to {@code to}, both included.
     *
     * @param points wanted at most, 4 or more
     */
    public static Thinned of(Signal signal, double from, double to, int points) {
        int first = signal.indexAt(from);
        int last = signal.indexAt(to);
        last = last < signal.size() && signal.seconds(last) <= to ? last + 1 : last;
        int count = Math.max(0, last - first);
        if (count <= points) {
            double[] t = new double[count];
            double[] x = new double[count];
            for (int i = 0; i < count; i++) {
                t[i] = signal.seconds(first + i);
                x[i] = signal.value(first + i);
            }
            return new Thinned(t, x);
        }
        List<Integer> kept = new ArrayList<>();
        int shares = Math.max(2, points / 2);
        for (int s = 0; s < shares; s++) {
            int begin = first + (int) ((long) count * s / shares);
            int end = first + (int) ((long) count * (s + 1) / shares);
            keep(signal, begin, end, kept);
        }
        double[] t = new double[kept.size()];
        double[] x = new double[kept.size()];
        for (int i = 0; i < t.length; i++) {
            t[i] = signal.seconds(kept.get(i));
            x[i] = signal.value(kept.get(i));
        }
        return new Thinned(t, x);
    }

    private static void keep(Signal signal, int begin, int end, List<Integer> kept) {
        int least = -1;
        int greatest = -1;
        for (int i = begin; i < end; i++) {
            double x = signal.value(i);
            if (Double.isFinite(x)) {
                least = least < 0 || x < signal.value(least) ? i : least;
                greatest = greatest < 0 || x > signal.value(greatest) ? i : greatest;
            }
        }
        if (least < 0) {
            kept.add(begin);
            return;
        }
        kept.add(Math.min(least, greatest));
        if (least != greatest) {
            kept.add(Math.max(least, greatest));
        }
    }
}
