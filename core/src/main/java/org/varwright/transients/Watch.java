package org.varwright.transients;

/** Keeps the largest swing of one probe. Between two states the probe is a cubic with the right values and slopes; the best place is then found exactly. */
final class Watch {
    /** More secants than any slope here needs. */
    private static final int MOST_SECANTS = 60;
    /** A moment is found when it moves by less than this part of its step: at a turning point the value then stands to rounding. */
    private static final double PINNED = 1e-12;

    private final Probe probe;
    private Weights row;
    private Weights slopeRow;
    private double best;
    private double squares;
    // where the best lies, for the exact search at the end
    private Topology topology;
    private double[] from;
    private double length;
    private double start;
    // value and slope at the end of the last step, where the next one starts
    private double[] seen = {};
    private double seenValue;
    private double seenSlope;

    Watch(Probe probe, Topology topology, double[] z) {
        this.probe = probe;
        this.topology = topology;
        this.from = z.clone();
        double[] of = topology.row(probe);
        row = Weights.of(of);
        slopeRow = Weights.of(topology.derivative(of));
        best = row.sum(z);
    }

    Probe probe() {
        return probe;
    }

    /** Another topology from here on. */
    void turn(Topology now) {
        double[] of = now.row(probe);
        row = Weights.of(of);
        slopeRow = Weights.of(now.derivative(of));
        seen = new double[0];
    }

    double value(double[] z) {
        return row.sum(z);
    }

    /** One step from {@code a} to {@code b}. */
    @SuppressWarnings("ReferenceEquality") // the very array that the last step ended with need not be weighed again
    void see(Topology now, double[] a, double[] b, double at, double seconds) {
        double v0 = a == seen ? seenValue : row.sum(a);
        double s0 = a == seen ? seenSlope : slopeRow.sum(a);
        double v1 = row.sum(b);
        double s1 = slopeRow.sum(b);
        seen = b;
        seenValue = v1;
        seenSlope = s1;
        squares += seconds / 2.0 * (v0 * v0 + v1 * v1) + seconds * seconds / 6.0 * (v0 * s0 - v1 * s1);
        double peak = Math.abs(v1);
        if (s0 * s1 < 0.0) {
            peak = Math.max(peak, Math.abs(cubic(v0, v1, s0 * seconds, s1 * seconds)));
        }
        peak = Math.max(peak, Math.abs(v0));
        if (peak > Math.abs(best) * (1.0 + 1e-12)) {
            best = peak;
            topology = now;
            from = a.clone();
            start = at;
            length = seconds;
        }
    }

    /** Value of the cubic where its slope is zero. */
    private static double cubic(double v0, double v1, double m0, double m1) {
        // slope: a·x² + b·x + m0
        double a = 3.0 * (2.0 * (v0 - v1) + m0 + m1);
        double b = 2.0 * (3.0 * (v1 - v0) - 2.0 * m0 - m1);
        double x = Math.abs(a) < 1e-14 * Math.abs(b) ? -m0 / b : root(a, b, m0);
        double y = x * x;
        double z = y * x;
        return v0 * (2.0 * z - 3.0 * y + 1.0) + m0 * (z - 2.0 * y + x) + v1 * (3.0 * y - 2.0 * z) + m1 * (z - y);
    }

    /** The root of a·x² + b·x + c between 0 and 1. */
    private static double root(double a, double b, double c) {
        double q = -0.5 * (b + Math.copySign(Math.sqrt(Math.max(0.0, b * b - 4.0 * a * c)), b));
        double first = q / a;
        return first >= 0.0 && first <= 1.0 ? first : c / q;
    }

    /** The swing, its peak found to rounding: where the slope turns inside the step, or at one of its ends. */
    Swing swing() {
        double[] bestRow = topology.row(probe);
        double[] end = Exponential.act(topology.matrix(), length, from);
        boolean last = Math.abs(Exponential.dot(bestRow, end)) > Math.abs(Exponential.dot(bestRow, from));
        double at = last ? length : 0.0;
        double value = Exponential.dot(bestRow, last ? end : from);
        double[] slope = topology.derivative(bestRow);
        double first = Exponential.dot(slope, from);
        double second = Exponential.dot(slope, end);
        if (first * second < 0.0) {
            double turn = turn(slope, first, second);
            double there = Exponential.dot(bestRow, Exponential.act(topology.matrix(), turn, from));
            // of a dip between two ends that stand higher, the end counts
            if (Math.abs(there) >= Math.abs(value)) {
                at = turn;
                value = there;
            }
        }
        return new Swing(value, start + at, squares);
    }

    /** Where the slope is zero: by secants, the end that stays put losing half its weight each time (Illinois), so that a handful of steps does. */
    private double turn(double[] slope, double first, double second) {
        double low = 0.0;
        double high = length;
        double atLow = first;
        double atHigh = second;
        double last = 0.0;
        int side = 0;
        for (int i = 0; i < MOST_SECANTS; i++) {
            double middle = (low * atHigh - high * atLow) / (atHigh - atLow);
            double there = Exponential.dot(slope, Exponential.act(topology.matrix(), middle, from));
            boolean found = Math.abs(middle - last) <= PINNED * length;
            last = middle;
            if (there == 0.0 || found) {
                break;
            }
            if (there * atLow > 0.0) {
                atHigh = side < 0 ? 0.5 * atHigh : atHigh;
                side = -1;
                low = middle;
                atLow = there;
            } else {
                atLow = side > 0 ? 0.5 * atLow : atLow;
                side = 1;
                high = middle;
                atHigh = there;
            }
        }
        return last;
    }
}
