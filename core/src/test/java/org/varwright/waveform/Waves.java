package org.varwright.waveform;

import java.util.function.DoubleUnaryOperator;

/** Signals made from formulas. */
public final class Waves {
    private Waves() {}

    /** Samples of a function from 0 on. */
    public static Signal of(double rate, double seconds, DoubleUnaryOperator x) {
        int n = (int) Math.floor(rate * seconds + 1e-9) + 1;
        double[] t = new double[n];
        double[] values = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = i / rate;
            values[i] = x.applyAsDouble(t[i]);
        }
        return Signal.of(TimeBase.of(t), values);
    }

    /** {@code √2·rms·cos(2πft + degrees)}. */
    public static double wave(double rms, double hertz, double degrees, double t) {
        return Math.sqrt(2.0) * rms * Math.cos(2.0 * Math.PI * hertz * t + Math.toRadians(degrees));
    }
}
