package org.varwright.waveform;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.quantity.Complex;

/** REC-1, REC-2: against waves whose phasors and frequency are known because they were put in. */
class CyclesTest {
    @Test
    void offNominalFrequencyIsFoundAndPhasorsAreThoseThatWerePutIn() {
        for (double hertz : new double[] {47.3, 49.9, 50.0, 50.2, 52.5}) {
            Signal u = Waves.of(
                    3200.0,
                    0.5,
                    t -> 12.0
                            + Waves.wave(7000.0, hertz, 33.0, t)
                            + Waves.wave(350.0, 5 * hertz, -20.0, t)
                            + Waves.wave(120.0, 7 * hertz, 70.0, t));
            Cycles cycles = Cycles.of(u.base(), Optional.of(u), 50.0);
            assertEquals(hertz, cycles.hertz(), 1e-6 * hertz, "frequency");
            for (Window w : cycles.windows()) {
                Components c = w.components(u).orElseThrow();
                double degrees = 33.0 + 360.0 * hertz * w.middleSeconds();
                near(Complex.polar(7000.0, degrees), c.fundamental(), 1e-3);
                near(Complex.polar(350.0, -20.0 + 5 * 360.0 * hertz * w.middleSeconds()), c.order(5), 1e-3);
                assertEquals(12.0, c.dc(), 1e-3);
            }
        }
    }

    @Test
    void aPlainTransformWouldHaveLeakedThere() {
        // the same wave at 52.5 Hz taken as if it were 50 Hz is off by per cents: tracking is what makes the test above
        // pass
        Signal u = Waves.of(3200.0, 0.1, t -> Waves.wave(7000.0, 52.5, 33.0, t));
        Components c = new Window(0, 64, 31.5 / 3200.0, 1.0 / 3200.0, 50.0, false)
                .components(u)
                .orElseThrow();
        Complex there = Complex.polar(7000.0, 33.0 + 360.0 * 52.5 * 31.5 / 3200.0);
        assertTrue(c.fundamental().minus(there).magnitude() > 0.005 * 7000.0, c.toString());
        assertTrue(Math.abs(c.dc()) > 0.05 * 7000.0, c.toString());
    }

    @Test
    void skewTurnsThePhasorBack() {
        double skew = 100e-6;
        TimeBase base = Waves.of(4000.0, 0.1, t -> 0.0).base();
        double[] late = new double[base.size()];
        for (int i = 0; i < late.length; i++) {
            late[i] = Waves.wave(100.0, 50.0, 0.0, base.seconds(i) + skew);
        }
        Cycles cycles = Cycles.of(base, Optional.empty(), 50.0);
        Window w = cycles.windows().getFirst();
        near(
                Complex.polar(100.0, 360.0 * 50.0 * w.middleSeconds()),
                w.phasor(Signal.of(base, skew, late)).orElseThrow(),
                1e-9);
        // left out, it would be 1.8 degrees at 50 Hz
        Complex without = w.phasor(Signal.of(base, late)).orElseThrow();
        assertEquals(
                1.8,
                without.dividedBy(w.phasor(Signal.of(base, skew, late)).orElseThrow())
                        .degrees(),
                1e-6);
    }

    @Test
    void aStepIsNotTakenForAFrequency() {
        Signal u = Waves.of(
                6000.0, 0.4, t -> t < 0.2031 ? Waves.wave(100.0, 60.1, 0.0, t) : Waves.wave(60.0, 60.1, 50.0, t));
        Cycles cycles = Cycles.of(u.base(), Optional.of(u), 60.0);
        for (Window w : cycles.windows()) {
            assertEquals(60.1, w.hertz(), 1e-4, w.toString());
        }
        assertTrue(cycles.windows().stream().anyMatch(w -> !w.isTracked()));
    }

    @Test
    void aDeadChannelKeepsTheNominalFrequency() {
        Signal u = Waves.of(6000.0, 0.2, t -> 0.0);
        Cycles cycles = Cycles.of(u.base(), Optional.of(u), 60.0);
        assertFalse(cycles.isTracked());
        assertEquals(60.0, cycles.hertz(), 0.0);
        assertEquals(12, cycles.windows().size());
    }

    @Test
    void missingSamplesAreLeftOutAndTooManyGiveNothing() {
        Signal u = Waves.of(3200.0, 0.1, t -> Waves.wave(10.0, 50.0, 20.0, t));
        double[] holes = new double[u.size()];
        for (int i = 0; i < holes.length; i++) {
            holes[i] = i % 5 == 0 ? Double.NaN : u.value(i);
        }
        Window w = Cycles.of(u.base(), Optional.empty(), 50.0).windows().get(1);
        near(w.phasor(u).orElseThrow(), w.phasor(Signal.of(u.base(), holes)).orElseThrow(), 1e-9);
        for (int i = 0; i < holes.length; i++) {
            holes[i] = i % 3 == 0 ? u.value(i) : Double.NaN;
        }
        assertTrue(w.phasor(Signal.of(u.base(), holes)).isEmpty());
    }

    @Test
    void noWindowLiesAcrossAChangeOfPace() {
        double[] t = new double[900];
        for (int i = 1; i < t.length; i++) {
            t[i] = t[i - 1] + (i <= 400 ? 1e-3 : 2.5e-4);
        }
        TimeBase base = TimeBase.of(t);
        assertEquals(List.of(0, 401), base.pieces().stream().map(Piece::from).toList());
        for (Window w : Cycles.of(base, Optional.empty(), 50.0).windows()) {
            assertEquals(base.pieceAt(w.from()), base.pieceAt(w.to() - 1));
        }
    }

    /** Seeded: any steady wave with harmonics and noise. */
    @Test
    void lawTrackedFrequencyStaysWithinTheNoise() {
        for (long seed = 1; seed <= 60; seed++) {
            Random random = new Random(seed);
            double nominal = random.nextBoolean() ? 50.0 : 60.0;
            double hertz = nominal * (0.95 + 0.1 * random.nextDouble());
            double rate = nominal * (16 + random.nextInt(120)) + random.nextDouble();
            double third = 0.1 * random.nextDouble();
            double fifth = 0.1 * random.nextDouble();
            double noise = 1e-3;
            double degrees = 360.0 * random.nextDouble();
            Signal u = Waves.of(
                    rate,
                    0.4,
                    t -> Waves.wave(1.0, hertz, degrees, t)
                            + Waves.wave(third, 3 * hertz, 5.0, t)
                            + Waves.wave(fifth, 5 * hertz, 9.0, t)
                            + noise * random.nextGaussian());
            Cycles cycles = Cycles.of(u.base(), Optional.of(u), nominal);
            assertTrue(cycles.isTracked(), "seed " + seed);
            assertEquals(hertz, cycles.hertz(), 3e-3 * nominal / 50.0 * 4.0, "seed " + seed);
            for (Window w : cycles.windows()) {
                assertEquals(1.0, w.phasor(u).orElseThrow().magnitude(), 5e-3, "seed " + seed);
            }
        }
    }

    static void near(Complex expected, Complex found, double within) {
        assertEquals(0.0, found.minus(expected).magnitude(), within, () -> "expected " + expected + ", got " + found);
    }
}
