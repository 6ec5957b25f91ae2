package org.varwright.waveform;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** REC-9. */
class ThinnedTest {
    @Test
    void noPeakIsLostAndTimesRise() {
        for (long seed = 1; seed <= 40; seed++) {
            Random random = new Random(seed);
            Signal x = Waves.of(10000.0, 1.0, t -> random.nextGaussian());
            double from = 0.3 * random.nextDouble();
            double to = from + 0.5 * random.nextDouble();
            int points = 4 + random.nextInt(300);
            Thinned thinned = Thinned.of(x, from, to, points);
            assertTrue(thinned.seconds().length <= Math.max(4, points), "seed " + seed);
            double largest = 0.0;
            for (int i = 0; i < thinned.values().length; i++) {
                largest = Math.max(largest, Math.abs(thinned.values()[i]));
                assertTrue(i == 0 || thinned.seconds()[i] > thinned.seconds()[i - 1], "seed " + seed);
                assertTrue(thinned.seconds()[i] >= from && thinned.seconds()[i] <= to, "seed " + seed);
            }
            int end = x.indexAt(to);
            assertEquals(x.largest(x.indexAt(from), end), largest, 0.0, "seed " + seed);
        }
    }

    @Test
    void fewSamplesAreKeptAsTheyAre() {
        Signal x = Waves.of(10.0, 1.0, t -> t);
        assertEquals(11, Thinned.of(x, 0.0, 1.0, 50).values().length);
    }

    /** By hand: eight samples in two shares; of each the least and the greatest, as they follow each other. */
    @Test
    void ofEachShareTheLeastAndTheGreatest() {
        double[] values = {3, 1, 4, 2, 9, Double.NaN, 5, 7};
        Signal x = Signal.of(Waves.of(1.0, 7.0, t -> 0.0).base(), values);
        Thinned thinned = Thinned.of(x, 0.0, 7.0, 4);
        assertArrayEquals(new double[] {1, 2, 4, 6}, thinned.seconds());
        assertArrayEquals(new double[] {1, 4, 9, 5}, thinned.values());
        // both ends belong to it, and what lies outside doesn't
        assertArrayEquals(new double[] {2, 3, 4}, Thinned.of(x, 1.5, 4.0, 4).seconds());
        assertArrayEquals(new double[] {2, 3}, Thinned.of(x, 2.0, 3.9, 4).seconds());
        assertArrayEquals(new double[0], Thinned.of(x, 7.5, 9.0, 4).seconds());
        // a share without a sample that is there is shown as a hole; one that is level by one point
        double[] holes = {1, 1, 1, 1, Double.NaN, Double.NaN, Double.NaN, Double.NaN};
        Thinned hole = Thinned.of(Signal.of(x.base(), holes), 0.0, 7.0, 4);
        assertArrayEquals(new double[] {0, 4}, hole.seconds());
        assertArrayEquals(new double[] {1, Double.NaN}, hole.values());
    }
}
