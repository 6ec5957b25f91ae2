package org.varwright.waveform;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** REC-4. */
class ChangesTest {
    @Test
    void aStepIsFoundToTheSampleAndNothingElse() {
        for (long seed = 1; seed <= 40; seed++) {
            Random random = new Random(seed);
            double at = 0.1 + 0.2 * random.nextDouble();
            double hertz = 58.0 + 4.0 * random.nextDouble();
            double after = random.nextBoolean() ? 0.5 : 1.6;
            Signal i = Waves.of(
                    5760.0,
                    0.5,
                    t -> Waves.wave(t < at ? 100.0 : 100.0 * after, hertz, t < at ? 0.0 : 70.0, t)
                            + 0.2 * random.nextGaussian());
            Cycles cycles = Cycles.of(i.base(), Optional.of(i), 60.0);
            List<Changes.Change> changes = Changes.of(i, cycles);
            assertEquals(1, changes.size(), "seed " + seed + " " + changes);
            assertEquals(at, changes.getFirst().seconds(), 5.0 / 5760.0, "seed " + seed);
            assertEquals(at, changes.getFirst().settledSeconds(), 0.003, "seed " + seed);
        }
    }

    @Test
    void anOffNominalWaveIsNoChange() {
        Signal u = Waves.of(960.0, 1.0, t -> Waves.wave(100.0, 59.3, 0.0, t) + Waves.wave(4.0, 5 * 59.3, 0.0, t));
        assertEquals(List.of(), Changes.of(u, Cycles.of(u.base(), Optional.of(u), 60.0)));
    }

    @Test
    void aSmallSensorThatWakesUpIsFound() {
        Random random = new Random(5);
        Signal n = Waves.of(
                3840.0,
                0.5,
                t -> (t < 0.25 ? 0.02 : 1.0) * Waves.wave(14.0, 60.0, 0.0, t) + 0.02 * random.nextGaussian());
        Signal u = Waves.of(3840.0, 0.5, t -> Waves.wave(7200.0, 60.0, 0.0, t));
        List<Changes.Change> changes = Changes.of(n, Cycles.of(n.base(), Optional.of(u), 60.0));
        assertEquals(1, changes.size(), changes.toString());
        assertEquals(0.25, changes.getFirst().seconds(), 0.001);
    }
}
