package org.varwright.waveform;

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
}
