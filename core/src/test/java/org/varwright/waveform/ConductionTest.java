package org.varwright.waveform;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** REC-5. */
class ConductionTest {
    private static List<Conduction.Run> runs(Signal i) {
        return Conduction.of(i, Cycles.of(i.base(), Optional.empty(), 60.0), 0.5);
    }

    @Test
    void aCurrentThatStopsAtItsZero() {
        double stop = 9.25 / 60.0;
        Signal i = Waves.of(7680.0, 0.3, t -> t < stop ? Waves.wave(50.0, 60.0, 0.0, t) : 0.0);
        Conduction.Run run = runs(i).getFirst();
        assertEquals(1, runs(i).size());
        assertTrue(run.fromBegin());
        assertFalse(run.toEnd());
        assertEquals(stop, run.stopSeconds(), 1.0 / 7680.0);
    }

    @Test
    void aCurrentThatStartsAnywhere() {
        for (long seed = 1; seed <= 60; seed++) {
            Random random = new Random(seed);
            double start = 0.1 + 0.05 * random.nextDouble();
            double offset = 0.8 * (random.nextDouble() - 0.5);
            double degrees = 360.0 * random.nextDouble();
            Signal i = Waves.of(
                    7680.0,
                    0.3,
                    t -> offset
                            + 0.05 * random.nextGaussian()
                            + (t < start
                                    ? 0.0
                                    : Waves.wave(50.0, 60.0, degrees, t)
                                            + 400.0
                                                    * Math.exp(-(t - start) / 2e-3)
                                                    * Math.sin(2.0 * Math.PI * 620.0 * (t - start))));
            List<Conduction.Run> runs = runs(i);
            assertEquals(1, runs.size(), "seed " + seed + " " + runs);
            assertEquals(start, runs.getFirst().startSeconds(), 1.5 / 7680.0, "seed " + seed);
            assertTrue(runs.getFirst().toEnd(), "seed " + seed);
        }
    }

    @Test
    void conductingAgainIsAnotherRun() {
        double stop = 6.25 / 60.0;
        double again = stop + 0.5 / 60.0;
        Signal i = Waves.of(
                7680.0,
                0.3,
                t -> t < stop
                        ? Waves.wave(50.0, 60.0, 0.0, t)
                        : t >= again && t < again + 0.5 / 60.0 ? Waves.wave(50.0, 60.0, 0.0, t) : 0.0);
        List<Conduction.Run> runs = runs(i);
        assertEquals(2, runs.size(), runs.toString());
        assertEquals(again, runs.get(1).startSeconds(), 1.5 / 7680.0);
        assertEquals(again + 0.5 / 60.0, runs.get(1).stopSeconds(), 1.5 / 7680.0);
    }

    @Test
    void theTailOfATransformerIsNoCurrent() {
        double stop = 6.25 / 60.0;
        Signal i = Waves.of(
                7680.0, 0.3, t -> t < stop ? Waves.wave(50.0, 60.0, 0.0, t) : 9.0 * Math.exp(-(t - stop) / 0.04));
        assertEquals(stop, runs(i).getFirst().stopSeconds(), 2.0 / 7680.0);
        assertEquals(1, runs(i).size());
    }

    @Test
    void noiseIsNoCurrent() {
        Random random = new Random(7);
        assertEquals(List.of(), runs(Waves.of(7680.0, 0.3, t -> 0.1 * random.nextGaussian())));
    }

    @Test
    void aCurrentWithoutPauseRunsFromBeginToEnd() {
        Signal i = Waves.of(1200.0, 0.5, t -> Waves.wave(50.0, 60.0, 0.0, t) + Waves.wave(12.0, 300.0, 10.0, t));
        assertEquals(1, runs(i).size());
        assertTrue(runs(i).getFirst().fromBegin() && runs(i).getFirst().toEnd());
    }

    /** Relays with 12 or 16 samples a cycle: a zero on the first or last sample is no switching. */
    @Test
    void fewSamplesACycleThatBeginAndEndAtAZero() {
        for (int samples : new int[] {8, 12, 16, 20}) {
            for (double degrees = 0.0; degrees < 360.0; degrees += 7.5) {
                double at = degrees;
                Signal i = Waves.of(60.0 * samples, 12.0 / 60.0, t -> Waves.wave(50.0, 60.0, at, t));
                List<Conduction.Run> runs = runs(i);
                assertEquals(1, runs.size(), samples + " at " + degrees + " " + runs);
                assertTrue(
                        runs.getFirst().fromBegin() && runs.getFirst().toEnd(),
                        samples + " at " + degrees + " " + runs);
            }
        }
    }

    /** A channel that shows 5 A with nothing flowing (its zero is off): the current starts and stops where it does, not where the channel leaves 0. */
    @Test
    void anOffsetOfTheChannelIsNoCurrent() {
        for (double offset : new double[] {5.0, -5.0}) {
            double start = 6.25 / 60.0;
            double stop = 12.25 / 60.0;
            Signal i = Waves.of(
                    7680.0, 0.3, t -> offset + (t >= start && t < stop ? Waves.wave(50.0, 60.0, 0.0, t) : 0.0));
            List<Conduction.Run> runs = runs(i);
            assertEquals(1, runs.size(), offset + " " + runs);
            assertEquals(start, runs.getFirst().startSeconds(), 1.5 / 7680.0, offset + " " + runs);
            assertEquals(stop, runs.getFirst().stopSeconds(), 1.5 / 7680.0, offset + " " + runs);
            assertFalse(runs.getFirst().fromBegin() || runs.getFirst().toEnd());
        }
    }

    /** The threshold is 3 % of 70.7 A, 2.1 A: one sample of 4 A is a spark of the recorder, one of 40 A is a burst. */
    @Test
    void oneSampleAloneIsABurstWhereItIsLarge() {
        for (double spike : new double[] {4.0, -40.0, 40.0}) {
            Signal i = Waves.of(
                    7680.0,
                    0.4,
                    t -> t < 0.15 + 0.1 / 60.0
                            ? Waves.wave(50.0, 60.0, 0.0, t)
                            : Math.abs(t - 0.3) < 5e-5 ? spike : 0.0);
            List<Conduction.Run> runs = runs(i);
            assertEquals(Math.abs(spike) > 6.4 ? 2 : 1, runs.size(), spike + " " + runs);
            if (runs.size() == 2) {
                assertEquals(0.3, runs.get(1).startSeconds(), 1.5 / 7680.0);
                assertEquals(1, runs.get(1).to() - runs.get(1).from());
                assertTrue(runs.get(1).seconds() < 2.0 / 7680.0, runs.toString());
            }
        }
    }
}
