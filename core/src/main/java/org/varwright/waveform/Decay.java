package org.varwright.waveform;

import java.util.ArrayList;
import java.util.List;

/**
 * How a voltage that was left behind falls.
 *
 * <p><b>Model.</b> Means of whole cycles lie on {@code v = V0·e^{−t/τ}}; a straight line through their logarithms (REC-8).
 *
 * <p><b>Not modelled.</b> More than one time constant; a magnetic voltage transformer that drains the charge by saturating.
 *
 * <p><b>Accuracy.</b> That of the regression, given as one standard deviation.
 *
 * <p><b>Source.</b> First principles.
 */
public sealed interface Decay {
    /**
     * A fall.
     *
     * @param startVolts at the begin, with its sign, in the channel's unit
     * @param tauSeconds time constant [s]
     * @param tauSigma one standard deviation of it [s]
     * @param seconds how long it was watched [s]
     */
    record Falls(double startVolts, double tauSeconds, double tauSigma, double seconds) implements Decay {}

    /**
     * Something is left, but the record is too short to tell how it falls.
     *
     * @param startVolts at the begin, with its sign
     * @param longerThanSeconds the time constant is longer than this [s]
     * @param seconds how long it was watched [s]
     */
    record Stands(double startVolts, double longerThanSeconds, double seconds) implements Decay {}

    /** Nothing that counts is left, or fewer than three cycles were watched. */
    record Nothing() implements Decay {}

    /**
     * The decay between two times.
     *
     * @param signal a voltage
     * @param from begin [s]
     * @param to end [s]
     * @param least magnitude that counts
     */
    static Decay of(Signal signal, Cycles cycles, double from, double to, double least) {
        List<double[]> points = new ArrayList<>();
        double sign = 0.0;
        for (Window w : cycles.windows()) {
            if (signal.seconds(w.from()) < from || signal.seconds(w.to() - 1) > to) {
                continue;
            }
            double mean = w.components(signal).map(Components::dc).orElse(Double.NaN);
            if (Math.abs(mean) >= least && (sign == 0.0 || mean * sign > 0.0)) {
                sign = Math.signum(mean);
                points.add(new double[] {w.middleSeconds() - from, Math.log(Math.abs(mean))});
            } else if (!points.isEmpty()) {
                break;
            }
        }
        return points.size() < 3 ? new Nothing() : line(points, sign);
    }

    private static Decay line(List<double[]> points, double sign) {
        int n = points.size();
        double mt = points.stream().mapToDouble(p -> p[0]).average().orElse(0.0);
        double my = points.stream().mapToDouble(p -> p[1]).average().orElse(0.0);
        double tt = 0.0;
        double ty = 0.0;
        for (double[] p : points) {
            tt += (p[0] - mt) * (p[0] - mt);
            ty += (p[0] - mt) * (p[1] - my);
        }
        double slope = ty / tt;
        double rest = 0.0;
        for (double[] p : points) {
            double left = p[1] - my - slope * (p[0] - mt);
            rest += left * left;
        }
        double sigma = Math.sqrt(rest / (n - 2) / tt);
        double start = sign * Math.exp(my - slope * mt);
        double watched = points.getLast()[0] - points.getFirst()[0];
        // The fall must stand out of its own scatter, and be more than the last digits of a recorder.
        if (-slope < 4.0 * sigma || -slope * watched < 2e-3) {
            return new Stands(start, 1.0 / Math.max(Math.abs(slope) + 2.0 * sigma, 2e-3 / watched), watched);
        }
        return new Falls(start, -1.0 / slope, sigma / (slope * slope), watched);
    }
}
