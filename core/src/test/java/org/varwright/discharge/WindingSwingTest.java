package org.varwright.discharge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** A capacitance emptied through a winding, against small steps that know neither swinging nor creeping; a failure prints its seed. */
class WindingSwingTest {
    /** What small steps of {@code L·di/dt = v − R·i}, {@code C·dv/dt = −i} (Runge and Kutta) find. */
    private static final class Steps {
        private double peak;
        private double lastAbove;
        private double volts;
        private double amperes;

        Steps(double c, double r, double l, double v0, double safe, double end, int steps, double at) {
            volts = v0;
            double h = end / steps;
            double v = v0;
            double i = 0.0;
            for (int n = 0; n < steps; n++) {
                double[] k1 = slope(c, r, l, v, i);
                double[] k2 = slope(c, r, l, v + h / 2 * k1[0], i + h / 2 * k1[1]);
                double[] k3 = slope(c, r, l, v + h / 2 * k2[0], i + h / 2 * k2[1]);
                double[] k4 = slope(c, r, l, v + h * k3[0], i + h * k3[1]);
                v += h / 6 * (k1[0] + 2 * k2[0] + 2 * k3[0] + k4[0]);
                i += h / 6 * (k1[1] + 2 * k2[1] + 2 * k3[1] + k4[1]);
                peak = Math.max(peak, i);
                double t = (n + 1) * h;
                lastAbove = Math.abs(v) > safe ? t : lastAbove;
                if (t <= at) {
                    volts = v;
                    amperes = i;
                }
            }
        }

        private static double[] slope(double c, double r, double l, double v, double i) {
            return new double[] {-i / c, (v - r * i) / l};
        }
    }

    /** Damping from a tenth to ten times critical: {@code R = 2ζ·√(L/C)}. */
    @Test
    void voltageCurrentPeakAndTimeAreThoseOfSmallSteps() {
        int swinging = 0;
        int creeping = 0;
        for (long seed = 1; seed <= 60; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            double c = random.nextDouble(1e-6, 50e-6);
            double l = random.nextDouble(100.0, 2000.0);
            double zeta = Math.exp(random.nextDouble(Math.log(0.1), Math.log(10.0)));
            double r = 2.0 * zeta * Math.sqrt(l / c);
            WindingDischarge.Swing swing = new WindingDischarge.Swing(c, r, l, 10e3);
            double natural = 1.0 / Math.sqrt(l * c);
            double end = swing.secondsTo(500.0) * 1.5;
            int steps = 60_000;
            int at = random.nextInt(1, steps / 2);
            double seconds = end / steps * (at + 0.5);
            Steps walked = new Steps(c, r, l, 10e3, 500.0, end, steps, seconds);
            String what = "seed " + seed + " damping " + zeta;
            double exactly = end / steps * at;
            assertEquals(walked.volts, swing.voltsAfter(exactly), 1e-4 * 10e3, what);
            assertEquals(walked.amperes, swing.amperesAfter(exactly), 1e-4 * 10e3 * natural * c, what);
            assertEquals(walked.peak, swing.peakAmperes(), 1e-3 * walked.peak, what);
            assertEquals(zeta < 1.0, swing.oscillates(), what);
            if (zeta < 1.0) {
                swinging++;
                // by its envelope: never sooner than the last time above, at most half a turn later
                assertTrue(swing.secondsTo(500.0) >= walked.lastAbove - end / steps, what);
                assertTrue(swing.secondsTo(500.0) - walked.lastAbove <= 0.55 / swing.hertz(), what);
                assertEquals(
                        natural * Math.sqrt(1.0 - zeta * zeta), 2.0 * Math.PI * swing.hertz(), 1e-6 * natural, what);
            } else {
                creeping++;
                assertEquals(walked.lastAbove, swing.secondsTo(500.0), 2.0 * end / steps, what);
            }
        }
        assertTrue(swinging > 15 && creeping > 15, swinging + " swinging, " + creeping + " creeping");
    }

    /** At critical damping {@code i = v0·t/L·e^(−αt)} with its peak {@code v0/(L·α·e)} at {@code 1/α} (worked by hand; no division by nothing). */
    @Test
    void atCriticalDampingNothingBlowsUp() {
        double c = 10e-6;
        double l = 1000.0;
        double r = 2.0 * Math.sqrt(l / c);
        double alpha = r / (2.0 * l);
        for (double off : new double[] {1.0 - 1e-12, 1.0, 1.0 + 1e-12, 1.0 - 1e-6, 1.0 + 1e-6}) {
            WindingDischarge.Swing swing = new WindingDischarge.Swing(c, r * off, l, 8e3);
            double peak = 8e3 / (l * alpha * Math.E);
            assertEquals(peak, swing.peakAmperes(), 1e-3 * peak, "off " + off);
            double t = 2.0 / alpha;
            assertEquals(8e3 * 3.0 * Math.exp(-2.0), swing.voltsAfter(t), 1e-2 * 8e3, "off " + off);
        }
    }

    @Test
    void whatIsBelowAlreadyTakesNoTime() {
        WindingDischarge.Swing swing = new WindingDischarge.Swing(10e-6, 3e3, 900.0, 40.0);
        assertEquals(0.0, swing.secondsTo(50.0));
        assertEquals(0.0, swing.secondsTo(40.0));
    }
}
