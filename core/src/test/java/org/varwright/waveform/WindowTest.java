package org.varwright.waveform;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.quantity.Complex;

/** REC-1 at the edges: what a cycle holds, against the discrete Fourier transform written out, and how many orders so many samples tell. */
class WindowTest {
    private static Window window(int samples, double hertz) {
        double step = 1.0 / (hertz * samples);
        return new Window(0, samples, 0.5 * step * (samples - 1), step, hertz, false);
    }

    /** {@code X_k = (2/N)·Σ x·e^{−jkωt}/√2}, rms, counted from the middle of the window. */
    @Test
    void overAWholeCycleItIsTheDiscreteFourierTransform() {
        for (long seed = 1; seed <= 40; seed++) {
            Random random = new Random(seed);
            int n = 8 + random.nextInt(60);
            Signal x = Waves.of(50.0 * n, 0.03, t -> random.nextGaussian());
            Window w = window(n, 50.0);
            Components c = w.components(x).orElseThrow();
            double sum = 0.0;
            double squares = 0.0;
            double peak = 0.0;
            for (int i = 0; i < n; i++) {
                sum += x.value(i);
                squares += x.value(i) * x.value(i);
                peak = Math.max(peak, Math.abs(x.value(i)));
            }
            assertEquals(sum / n, c.dc(), 1e-12, "seed " + seed);
            assertEquals(Math.sqrt(squares / n), c.rms(), 1e-12, "seed " + seed);
            assertEquals(peak, c.peak(), 0.0, "seed " + seed);
            assertEquals(
                    Math.min(13, n / 3), c.orders().size(), "one in three samples is left against noise, seed " + seed);
            double explained = c.dc() * c.dc();
            double above = 0.0;
            for (int k = 1; k <= c.orders().size(); k++) {
                Complex due = Complex.ZERO;
                for (int i = 0; i < n; i++) {
                    double angle = 2.0 * Math.PI * 50.0 * k * (x.seconds(i) - w.middleSeconds());
                    due = due.plus(
                            new Complex(Math.cos(angle), -Math.sin(angle)).times(Math.sqrt(2.0) / n * x.value(i)));
                }
                CyclesTest.near(due, c.order(k), 1e-11);
                explained += due.magnitude() * due.magnitude();
                above += k > 1 ? due.magnitude() * due.magnitude() : 0.0;
            }
            assertEquals(Math.sqrt(Math.max(0.0, squares / n - explained)), c.restRms(), 1e-9, "seed " + seed);
            assertEquals(Math.sqrt(above) / c.fundamental().magnitude(), c.distortion(), 1e-9, "seed " + seed);
        }
    }

    @Test
    void ordersThatWereNotLookedForAreNothing() {
        Components c = new Components(0.0, List.of(Complex.polar(3.0, 0.0), Complex.polar(4.0, 10.0)), 5.0, 7.0, 0.0);
        assertEquals(Complex.polar(4.0, 10.0), c.order(2));
        assertEquals(Complex.ZERO, c.order(0));
        assertEquals(Complex.ZERO, c.order(3));
        assertEquals(4.0 / 3.0, c.distortion(), 1e-15);
        assertEquals(0.0, new Components(0.0, List.of(Complex.ZERO, Complex.ONE), 1.0, 1.0, 0.0).distortion());
    }

    /** Half of the samples are enough for a phasor; fewer tell nothing. Fewer than three samples tell no mean and phasor. */
    @Test
    void missingSamples() {
        Signal u = Waves.of(50.0 * 24, 0.03, t -> 3.0 + Waves.wave(10.0, 50.0, 20.0, t));
        Window w = window(24, 50.0);
        for (int missing : new int[] {0, 11, 12}) {
            double[] values = new double[u.size()];
            for (int i = 0; i < values.length; i++) {
                values[i] = i < 2 * missing && i % 2 == 0 ? Double.NaN : u.value(i);
            }
            Optional<Components> c = w.components(Signal.of(u.base(), values));
            CyclesTest.near(w.phasor(u).orElseThrow(), c.orElseThrow().fundamental(), 1e-9);
            assertEquals(3.0, c.orElseThrow().dc(), 1e-9);
        }
        double[] most = new double[u.size()];
        for (int i = 0; i < most.length; i++) {
            most[i] = i < 13 ? Double.NaN : u.value(i);
        }
        assertTrue(w.components(Signal.of(u.base(), most)).isEmpty(), "13 of 24 missing");
        assertTrue(HarmonicFit.of(new double[2], new double[2], 1).isEmpty(), "three unknowns need three samples");
        assertTrue(HarmonicFit.of(new double[] {1, 2, 1}, new double[] {-2.0, 0.0, 2.0}, 1)
                .isPresent());
        assertTrue(HarmonicFit.of(new double[9], new double[9], 0).isEmpty());
        assertTrue(
                HarmonicFit.of(new double[9], new double[9], 1).isEmpty(), "nine samples of one moment tell nothing");
    }

    /** A window that reaches beyond the record takes what is there. */
    @Test
    void aWindowAtTheEndOfARecord() {
        Signal u = Waves.of(50.0 * 24, 0.015, t -> Waves.wave(10.0, 50.0, 20.0, t));
        assertEquals(19, u.size());
        assertEquals(10.0, window(24, 50.0).phasor(u).orElseThrow().magnitude(), 1e-9);
        assertFalse(window(50, 24.0).phasor(u).isPresent(), "19 of 50 samples");
    }
}
