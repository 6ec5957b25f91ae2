package org.varwright.transients;

/** Keeps the largest swing of one probe. Between two states the probe is a cubic with the right values and slopes; the best place is then found exactly. */
final class Watch {
    /** Halvings that pin a time down to rounding. */
    private static final int HALVINGS = 60;

    private final Probe probe;
    private double[] row = {};
    private double[] slopeRow = {};
    private double best;
    private double bestAt;
    private double squares;
    // where the best lies, for the exact search at the end
    private Topology topology;
    private double[] from;
    private double length;
    private double start;

    Watch(Probe probe, Topology topology, double[] z) {
        this.probe = probe;
        this.topology = topology;
        this.from = z.clone();
        turn(topology);
        best = Exponential.dot(row, z);
    }

    Probe probe() {
        return probe;
    }

    /** Another topology from here on. */
    void turn(Topology now) {
        row = now.row(probe);
        slopeRow = now.derivative(row);
    }

    double value(double[] z) {
        return Exponential.dot(row, z);
    }

    /** One step from {@code a} to {@code b}. */
    void see(Topology now, double[] a, double[] b, double at, double seconds) {
        double v0 = Exponential.dot(row, a);
        double v1 = Exponential.dot(row, b);
        double s0 = Exponential.dot(slopeRow, a);
        double s1 = Exponential.dot(slopeRow, b);
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

    /** The swing, its peak found to rounding. */
    Swing swing() {
        double[] bestRow = topology.row(probe);
        double[] slope = topology.derivative(bestRow);
        double low = 0.0;
        double high = length;
        double atLow = Exponential.dot(slope, from);
        if (length > 0.0) {
            double[] end = Exponential.act(topology.matrix(), length, from);
            if (atLow * Exponential.dot(slope, end) >= 0.0) {
                // no turning point: one of the ends
                boolean last = Math.abs(Exponential.dot(bestRow, end)) > Math.abs(Exponential.dot(bestRow, from));
                low = last ? length : 0.0;
                high = low;
            }
        }
        for (int i = 0; i < HALVINGS && high > low; i++) {
            double middle = 0.5 * (low + high);
            double s = Exponential.dot(slope, Exponential.act(topology.matrix(), middle, from));
            if (s * atLow > 0.0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        bestAt = 0.5 * (low + high);
        double[] z = Exponential.act(topology.matrix(), bestAt, from);
        return new Swing(Exponential.dot(bestRow, z), start + bestAt, squares);
    }
}
