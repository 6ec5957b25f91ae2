package org.varwright.waveform;

import java.util.Optional;
import org.varwright.quantity.Complex;

/**
 * One cycle of samples with the frequency that held in it.
 *
 * @param from index of the first sample
 * @param count number of samples
 * @param middleSeconds time from which its phasors count [s]
 * @param stepSeconds of its samples [s]
 * @param hertz fundamental frequency
 * @param isTracked whether the frequency was measured here; otherwise it is carried over, or nominal
 */
public record Window(int from, int count, double middleSeconds, double stepSeconds, double hertz, boolean isTracked) {
    /** Orders that can be told from so many samples, at most 13: one in three samples is left over against noise. */
    private static final int MOST_ORDERS = 13;

    public int to() {
        return from + count;
    }

    public double radiansPerSecond() {
        return 2.0 * Math.PI * hertz;
    }

    int usualOrders() {
        return Math.max(1, Math.min(MOST_ORDERS, count / 3));
    }

    /** What a channel consists of here, with as many orders as the samples allow; empty where too few samples are there. */
    public Optional<Components> components(Signal signal) {
        return components(signal, usualOrders());
    }

    /**
     * The same with a number of orders.
     *
     * @param orders 1 or more; fewer are given where samples are missing
     */
    public Optional<Components> components(Signal signal, int orders) {
        double[] x = new double[count];
        double[] angles = new double[count];
        int n = 0;
        for (int i = from; i < to() && i < signal.size(); i++) {
            if (Double.isFinite(signal.value(i))) {
                x[n] = signal.value(i);
                angles[n] = radiansPerSecond() * (signal.seconds(i) - middleSeconds);
                n++;
            }
        }
        if (2 * n < count) {
            return Optional.empty();
        }
        double[] values = java.util.Arrays.copyOf(x, n);
        double[] at = java.util.Arrays.copyOf(angles, n);
        int wanted = n == count ? orders : Math.min(orders, n / 3);
        return HarmonicFit.of(values, at, wanted).or(() -> HarmonicFit.of(values, at, 1));
    }

    /** The fundamental of a channel here; empty where too few samples are there. */
    public Optional<Complex> phasor(Signal signal) {
        return components(signal).map(Components::fundamental);
    }
}
