package org.varwright.waveform;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * When a waveform is no longer what it was one cycle before.
 *
 * <p><b>Model.</b> {@code d(t) = x(t) − x(t − 1/f)}, zero while nothing happens; a change begins where {@code |d|} passes a threshold and is over one cycle
 * before {@code d} falls under it for good (REC-4). The threshold is the larger of 4 % of the largest fundamental and six times the median of {@code |d|}.
 *
 * <p><b>Not modelled.</b> Changes slower than some cycles: a decaying mean is none.
 *
 * <p><b>Accuracy.</b> The begin to one sample where it is abrupt.
 *
 * <p><b>Source.</b> First principles; the thresholds are common practice, no source.
 */
public final class Changes {
    private static final double PART = 0.04;
    private static final double TIMES_NOISE = 6.0;

    /** Cycles without a difference that end a change. */
    private static final double APART = 1.25;

    /**
     * One change.
     *
     * @param seconds when it begins [s]
     * @param settledSeconds from when on the waveform repeats itself [s]; the end of the record where it never does
     * @param size largest {@code |d|}
     */
    public record Change(double seconds, double settledSeconds, double size) {}

    private Changes() {}

    /** The changes of a channel, in order. */
    public static List<Change> of(Signal signal, Cycles cycles) {
        double[] d = differences(signal, cycles);
        double threshold = threshold(signal, cycles, d);
        List<Change> changes = new ArrayList<>();
        int i = 0;
        while (i < d.length) {
            if (!begins(d, i, threshold)) {
                i++;
                continue;
            }
            double cycle = 1.0 / cycles.hertzAt(signal.seconds(i));
            int last = i;
            double size = 0.0;
            int j = i;
            while (j < d.length && signal.seconds(j) - signal.seconds(last) <= APART * cycle) {
                if (Math.abs(d[j]) > threshold) {
                    last = j;
                    size = Math.max(size, Math.abs(d[j]));
                }
                j++;
            }
            double settled = j >= d.length && signal.seconds(d.length - 1) - signal.seconds(last) < 0.25 * cycle
                    ? signal.seconds(d.length - 1)
                    : Math.max(signal.seconds(i), signal.seconds(last) - cycle);
            changes.add(new Change(signal.seconds(i), settled, size));
            i = j;
        }
        return changes;
    }

    /** Two samples in a row, or one that is far off. */
    private static boolean begins(double[] d, int i, double threshold) {
        double here = Math.abs(d[i]);
        return here > threshold && (here > 3.0 * threshold || (i + 1 < d.length && Math.abs(d[i + 1]) > threshold));
    }

    private static double threshold(Signal signal, Cycles cycles, double[] d) {
        double[] all = Arrays.stream(d)
                .filter(Double::isFinite)
                .map(Math::abs)
                .sorted()
                .toArray();
        double median = all.length == 0 ? 0.0 : all[all.length / 2];
        return Math.max(PART * largestFundamentalPeak(signal, cycles), Math.max(TIMES_NOISE * median, 1e-12));
    }

    /** Largest peak of the fundamental in any cycle. */
    private static double largestFundamentalPeak(Signal signal, Cycles cycles) {
        double largest = 0.0;
        for (Window window : cycles.windows()) {
            largest = Math.max(largest, fundamentalPeak(signal, window));
        }
        return largest;
    }

    /** Peak of the fundamental, fitted alone; 0 where too many samples are missing. */
    static double fundamentalPeak(Signal signal, Window window) {
        return Math.sqrt(2.0)
                * window.components(signal, 1)
                        .map(c -> c.fundamental().magnitude())
                        .orElse(0.0);
    }

    private static double[] differences(Signal signal, Cycles cycles) {
        double[] d = new double[signal.size()];
        Arrays.fill(d, Double.NaN);
        int w = 0;
        List<Window> windows = cycles.windows();
        for (Piece piece : signal.base().pieces()) {
            if (!(piece.stepSeconds() > 0.0) || windows.isEmpty()) {
                continue;
            }
            for (int i = piece.from(); i < piece.to(); i++) {
                while (w + 1 < windows.size() && windows.get(w + 1).from() <= i) {
                    w++;
                }
                double back = 1.0 / (windows.get(w).hertz() * piece.stepSeconds());
                d[i] = signal.value(i) - before(signal, piece, i - back);
            }
        }
        return d;
    }

    /** The value at a place between samples, by a cubic through four neighbours; NaN where one of them is missing or outside. */
    private static double before(Signal signal, Piece piece, double place) {
        int i = (int) Math.floor(place);
        double u = place - i;
        if (i < piece.from() || i + 1 >= piece.to()) {
            return Double.NaN;
        }
        if (i - 1 < piece.from() || i + 2 >= piece.to()) {
            return signal.value(i) + u * (signal.value(i + 1) - signal.value(i));
        }
        double a = -u * (u - 1.0) * (u - 2.0) / 6.0;
        double b = (u + 1.0) * (u - 1.0) * (u - 2.0) / 2.0;
        double c = -(u + 1.0) * u * (u - 2.0) / 2.0;
        double e = (u + 1.0) * u * (u - 1.0) / 6.0;
        return a * signal.value(i - 1) + b * signal.value(i) + c * signal.value(i + 1) + e * signal.value(i + 2);
    }
}
