package org.varwright.waveform;

import java.util.ArrayList;
import java.util.List;

/**
 * When a current flows.
 *
 * <p><b>Model.</b> It flows while its magnitude, less the mean of the quietest cycle, is above 3 % of its usual peak (the middle one of the cycles in which it flows) and above six times the
 * noise of that cycle; pauses of no more than 0.06 cycles are zeros of a wave. Begin and end are the zeros of straight lines through the outermost samples
 * (REC-5). A tail of one sign that outlasts 0.6 cycles is what a current transformer gives back after the current has stopped, and not counted.
 *
 * <p><b>Not modelled.</b> Currents below 3 % of the usual; a remainder below a fifth of it that goes on to the end, which can't be told from the noise of its
 * channel.
 *
 * <p><b>Accuracy.</b> One step of the samples.
 *
 * <p><b>Source.</b> First principles; the thresholds are common practice, no source.
 */
public final class Conduction {
    private static final double PART = 0.03;
    private static final double TIMES_NOISE = 6.0;
    private static final double PAUSE_CYCLES = 0.06;
    private static final double TAIL_CYCLES = 0.6;

    private static final double LAST_OF_WAVE = 0.3;

    /** A cycle whose fundamental is above this part of the largest is one in which the current flows. */
    private static final double FLOWS = 0.1;

    /** A quietest cycle louder than this part of the largest is a current that never stops. */
    private static final double NEVER_QUIET = 0.2;

    /**
     * A stretch of time in which the current flows.
     *
     * @param startSeconds when it starts [s]
     * @param stopSeconds when it stops [s]
     * @param fromBegin whether it flows already when the record begins
     * @param toEnd whether it still flows when the record ends
     * @param from index of its first sample
     * @param to index behind its last sample
     */
    public record Run(double startSeconds, double stopSeconds, boolean fromBegin, boolean toEnd, int from, int to) {
        public double seconds() {
            return stopSeconds - startSeconds;
        }
    }

    private final Signal signal;
    private final double cycle;
    private final double amplitude;
    private final double offset;
    private final double threshold;

    private Conduction(Signal signal, Cycles cycles) {
        this.signal = signal;
        cycle = 1.0 / cycles.hertz();
        amplitude = usualPeak(signal, cycles);
        double mean = 0.0;
        double quietest = Double.POSITIVE_INFINITY;
        for (Window window : cycles.windows()) {
            double sum = 0.0;
            double squares = 0.0;
            int n = 0;
            for (int i = window.from(); i < window.to(); i++) {
                double x = signal.value(i);
                if (Double.isFinite(x)) {
                    sum += x;
                    squares += x * x;
                    n++;
                }
            }
            if (2 * n < window.count()) {
                continue;
            }
            double spread = Math.sqrt(Math.max(0.0, squares / n - sum / n * (sum / n)));
            if (spread < quietest) {
                quietest = spread;
                mean = sum / n;
            }
        }
        boolean hasQuiet = quietest < NEVER_QUIET * amplitude / Math.sqrt(2.0);
        offset = hasQuiet && Math.abs(mean) < NEVER_QUIET * amplitude ? mean : 0.0;
        threshold = Math.max(PART * amplitude, hasQuiet ? TIMES_NOISE * quietest : 0.0);
    }

    /** Middle one of the fundamental peaks of the cycles in which it flows: a fault of a few cycles doesn't make the rest look small. */
    private static double usualPeak(Signal signal, Cycles cycles) {
        double[] peaks = cycles.windows().stream()
                .mapToDouble(w -> Changes.fundamentalPeak(signal, w))
                .sorted()
                .toArray();
        if (peaks.length == 0) {
            return 0.0;
        }
        double least = FLOWS * peaks[peaks.length - 1];
        int first = 0;
        while (peaks[first] < least) {
            first++;
        }
        return peaks[(first + peaks.length) / 2];
    }

    /**
     * The stretches in which a current flows, in order; none where it never does.
     *
     * @param leastPeak a channel whose fundamental never reaches this peak carries nothing
     */
    public static List<Run> of(Signal signal, Cycles cycles, double leastPeak) {
        Conduction conduction = new Conduction(signal, cycles);
        return conduction.amplitude < leastPeak ? List.of() : conduction.runs();
    }

    private List<Run> runs() {
        double pause = Math.max(
                PAUSE_CYCLES, 1.5 * Math.asin(Math.min(1.0, threshold / Math.max(amplitude, 1e-300))) / Math.PI);
        List<int[]> spans = new ArrayList<>();
        int first = -1;
        int last = -1;
        for (int i = 0; i < signal.size(); i++) {
            if (Math.abs(signal.value(i) - offset) > threshold) {
                if (first >= 0 && signal.seconds(i) - signal.seconds(last) > Math.max(pause * cycle, longest(last))) {
                    spans.add(new int[] {first, last});
                    first = i;
                }
                first = first < 0 ? i : first;
                last = i;
            }
        }
        if (first >= 0) {
            spans.add(new int[] {first, last});
        }
        List<Run> runs = new ArrayList<>();
        for (int[] span : spans) {
            int end = withoutTail(span[0], span[1]);
            if (end > span[0] || Math.abs(signal.value(end) - offset) > 3.0 * threshold) {
                runs.add(run(span[0], end));
            }
        }
        return runs;
    }

    /** Two and a half steps of the samples: with few samples a cycle a pause is no shorter. */
    private double longest(int at) {
        return 2.5 * signal.base().pieceAt(at).stepSeconds();
    }

    /** Index of the last sample before a tail of one sign. */
    private int withoutTail(int first, int last) {
        double sign = Math.signum(signal.value(last) - offset);
        int i = last;
        while (i > first && (signal.value(i - 1) - offset) * sign > 0.0) {
            i--;
        }
        if (signal.seconds(last) - signal.seconds(i) <= TAIL_CYCLES * cycle || i == first) {
            return last;
        }
        // The last half-wave may have the sign of the tail: it ends shortly after it has fallen to a part of its
        // height.
        for (int j = last; j >= i; j--) {
            if (Math.abs(signal.value(j) - offset) > LAST_OF_WAVE * amplitude) {
                double end = signal.seconds(j) + Math.asin(LAST_OF_WAVE) / (2.0 * Math.PI) * cycle;
                return Math.min(last, Math.max(j, signal.indexAt(end) - 1));
            }
        }
        return i - 1;
    }

    private Run run(int first, int last) {
        boolean fromBegin = signal.seconds(first) - signal.seconds(0) < Math.max(PAUSE_CYCLES * cycle, longest(first));
        boolean toEnd = signal.seconds(signal.size() - 1) - signal.seconds(last)
                < Math.max(PAUSE_CYCLES * cycle, longest(last));
        double start = signal.seconds(first);
        if (!fromBegin && first > 0) {
            start = Math.max(signal.seconds(first - 1), Math.min(start, zero(first, Math.min(last, first + 1))));
        }
        double stop = signal.seconds(last);
        if (!toEnd) {
            double furthest = stop + Math.max(signal.base().pieceAt(last).stepSeconds(), 0.02 * cycle);
            stop = Math.min(furthest, Math.max(stop, zero(last, Math.max(first, last - 1))));
        }
        return new Run(start, stop, fromBegin, toEnd, first, last + 1);
    }

    /** Where a straight line through two samples is zero; the first sample's time where it is level. */
    private double zero(int near, int far) {
        double a = signal.value(near) - offset;
        double b = signal.value(far) - offset;
        return near == far || a == b
                ? signal.seconds(near)
                : signal.seconds(near) - a * (signal.seconds(far) - signal.seconds(near)) / (b - a);
    }
}
