package org.varwright.waveform;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

/** REC-2 at its edges: what counts as a steady wave, where windows lie, and which frequency holds at a time. */
class CyclesEdgesTest {
    private static Cycles cycles(Signal u, double nominal) {
        return Cycles.of(u.base(), Optional.of(u), nominal);
    }

    /** A tenth off is found, a fifth is no supply's frequency. */
    @Test
    void howFarAFrequencyIsBelieved() {
        for (double part : new double[] {0.9, 0.95, 1.05, 1.1}) {
            Signal u = Waves.of(6000.0, 0.5, t -> Waves.wave(100.0, 60.0 * part, 10.0, t));
            assertTrue(cycles(u, 60.0).isTracked(), "" + part);
            assertEquals(60.0 * part, cycles(u, 60.0).hertz(), 1e-6);
        }
        for (double part : new double[] {0.8, 1.2}) {
            Signal u = Waves.of(6000.0, 0.5, t -> Waves.wave(100.0, 60.0 * part, 10.0, t));
            assertFalse(cycles(u, 60.0).isTracked(), "" + part);
            assertEquals(60.0, cycles(u, 60.0).hertz());
        }
    }

    /** Windows follow each other without a hole, whole cycles in one piece, four samples or more. */
    @Test
    void windowsFollowEachOther() {
        Signal u = Waves.of(6000.0, 0.205, t -> Waves.wave(100.0, 60.0, 10.0, t));
        Cycles cycles = cycles(u, 60.0);
        assertEquals(12, cycles.windows().size(), "12.3 cycles");
        for (int i = 0; i < 12; i++) {
            Window w = cycles.windows().get(i);
            assertEquals(100 * i, w.from());
            assertEquals(100, w.count());
            assertEquals((100 * i + 49.5) / 6000.0, w.middleSeconds(), 1e-12);
            assertEquals(1.0 / 6000.0, w.stepSeconds(), 1e-12);
            assertTrue(w.isTracked());
        }
        assertEquals(
                1,
                cycles(Waves.of(6000.0, 99.0 / 6000.0, t -> Waves.wave(1.0, 60.0, 0.0, t)), 60.0)
                        .windows()
                        .size());
        assertEquals(
                0,
                cycles(Waves.of(6000.0, 98.0 / 6000.0, t -> Waves.wave(1.0, 60.0, 0.0, t)), 60.0)
                        .windows()
                        .size());
        assertEquals(
                10,
                Cycles.of(Waves.of(240.0, 0.17, t -> 0.0).base(), Optional.empty(), 60.0)
                        .windows()
                        .size());
        assertEquals(
                0,
                Cycles.of(Waves.of(180.0, 0.17, t -> 0.0).base(), Optional.empty(), 60.0)
                        .windows()
                        .size());
    }

    /** A weak remainder behind a dead channel is no reference, nor is one whose two halves differ or that is full of noise. */
    @Test
    void whatIsNoSteadyWaveIsNotMeasured() {
        Signal weak = Waves.of(6000.0, 0.4, t -> (t < 0.2 ? 1.0 : 0.05) * Waves.wave(100.0, 60.3, 0.0, t));
        for (Window w : cycles(weak, 60.0).windows()) {
            assertTrue(w.middleSeconds() > 0.17 || w.isTracked(), w.toString());
            assertTrue(w.middleSeconds() < 0.2 || !w.isTracked(), w.toString());
        }
        Signal grows = Waves.of(6000.0, 0.4, t -> Math.exp(5.0 * t) * Waves.wave(100.0, 60.3, 0.0, t));
        assertFalse(cycles(grows, 60.0).isTracked(), "8 % more each cycle");
        Signal steady = Waves.of(6000.0, 0.4, t -> Math.exp(1.0 * t) * Waves.wave(100.0, 60.3, 0.0, t));
        assertTrue(cycles(steady, 60.0).isTracked(), "1.7 % more each cycle");
    }

    @Test
    void theFrequencyOfTheNearestWindowHolds() {
        Signal u = Waves.of(6000.0, 0.5, t -> Waves.wave(100.0, t < 0.25 ? 59.0 : 61.0, t < 0.25 ? 0.0 : -180.0, t));
        Cycles cycles = cycles(u, 60.0);
        assertEquals(59.0, cycles.hertzAt(-1.0), 1e-6);
        assertEquals(59.0, cycles.hertzAt(0.1), 1e-6);
        assertEquals(61.0, cycles.hertzAt(0.45), 1e-6);
        assertEquals(61.0, cycles.hertzAt(9.0), 1e-6);
        assertEquals(
                50.0,
                Cycles.of(TimeBase.of(new double[0]), Optional.empty(), 50.0).hertzAt(0.0));
    }

    /** One cycle around a time, moved into the record at its ends; none in a piece that is shorter than a cycle. */
    @Test
    void oneCycleAroundATime() {
        Signal u = Waves.of(6000.0, 0.1, t -> Waves.wave(100.0, 60.0, 0.0, t));
        Cycles cycles = cycles(u, 60.0);
        for (double at : new double[] {0.03, 0.05, 0.0512}) {
            Window w = cycles.around(at).orElseThrow();
            assertEquals(100, w.count());
            assertEquals(at, w.middleSeconds(), 1.0 / 6000.0);
            assertEquals(u.indexAt(at) - 50, w.from());
        }
        assertEquals(0, cycles.around(-5.0).orElseThrow().from());
        assertEquals(0, cycles.around(0.001).orElseThrow().from());
        assertEquals(u.size() - 100, cycles.around(0.0999).orElseThrow().from());
        assertEquals(u.size() - 100, cycles.around(5.0).orElseThrow().from());
        Signal brief = Waves.of(6000.0, 98.0 / 6000.0, t -> Waves.wave(100.0, 60.0, 0.0, t));
        assertTrue(cycles(brief, 60.0).around(0.005).isEmpty(), "99 samples of 100");
        assertTrue(Cycles.of(TimeBase.of(new double[0]), Optional.empty(), 60.0)
                .around(0.0)
                .isEmpty());
        assertTrue(Cycles.of(TimeBase.of(new double[] {1.0}), Optional.empty(), 60.0)
                .around(1.0)
                .isEmpty());
        Cycles slow = Cycles.of(Waves.of(180.0, 0.5, t -> 0.0).base(), Optional.empty(), 60.0);
        assertTrue(slow.around(0.2).isEmpty(), "three samples a cycle");
    }
}
