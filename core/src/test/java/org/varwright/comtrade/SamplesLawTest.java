package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Samples and states against their naive twins, any number of them, some missing. A failure prints its seed. */
class SamplesLawTest {
    @Test
    void leastLargestRmsAndMissing() {
        for (long seed = 1; seed <= 300; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            double size = Math.pow(10.0, random.nextInt(-200, 200));
            double[] values = new double[random.nextInt(12)];
            for (int i = 0; i < values.length; i++) {
                values[i] = random.nextInt(4) == 0 ? Double.NaN : size * random.nextDouble(-1.0, 1.0);
            }
            Samples samples = Samples.of(values);
            double[] there = Arrays.stream(values).filter(v -> !Double.isNaN(v)).toArray();
            String at = "seed " + seed;
            assertEquals(values.length - there.length, samples.missing(), at);
            assertEquals(Arrays.stream(there).min().orElse(Double.NaN), samples.least(), at);
            assertEquals(Arrays.stream(there).max().orElse(Double.NaN), samples.largest(), at);
            double rms = size
                    * Math.sqrt(Arrays.stream(there)
                            .map(v -> v / size * (v / size))
                            .average()
                            .orElse(Double.NaN));
            assertEquals(rms, samples.rms(), 1e-12 * size, at);
            assertEquals(samples, Samples.of(values), at);
            assertEquals(samples.hashCode(), Samples.of(values).hashCode(), at);
            if (values.length > 0) {
                double[] other = values.clone();
                other[random.nextInt(other.length)] = 7.0 * size;
                assertNotEquals(samples, Samples.of(other), at);
            }
        }
        assertEquals(0.0, Samples.of(0.0, 0.0).rms());
    }

    @Test
    void samplesCantBeChangedFromOutside() {
        double[] values = {1.0, 2.0};
        Samples samples = Samples.of(values);
        values[0] = 9.0;
        samples.toArray()[1] = 9.0;
        assertEquals(Samples.of(1.0, 2.0), samples);
    }

    @Test
    void statesOnesAndChanges() {
        for (long seed = 1; seed <= 300; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            boolean[] states = new boolean[random.nextInt(200)];
            int ones = 0;
            int changes = 0;
            for (int i = 0; i < states.length; i++) {
                states[i] = random.nextInt(3) == 0;
                ones += states[i] ? 1 : 0;
                changes += i > 0 && states[i] != states[i - 1] ? 1 : 0;
            }
            Bits bits = Bits.of(states);
            assertEquals(states.length, bits.size());
            for (int i = 0; i < states.length; i++) {
                assertEquals(states[i], bits.at(i), "seed " + seed + " " + i);
            }
            assertEquals(ones, bits.ones(), "seed " + seed);
            assertEquals(changes, bits.changes(), "seed " + seed);
            assertEquals(bits, Bits.of(states));
            assertEquals(bits.hashCode(), Bits.of(states).hashCode());
            assertNotEquals(bits, Bits.of(Arrays.copyOf(states, states.length + 1)));
            assertThrows(IndexOutOfBoundsException.class, () -> bits.at(states.length));
            assertThrows(IndexOutOfBoundsException.class, () -> bits.at(-1));
        }
    }

    /** Columns that grow keep everything; more than are allowed are not taken. */
    @Test
    void columnsThatGrow() {
        for (int most : new int[] {1, 1023, 1024, 1025, 5000}) {
            Columns columns = new Columns(1, 70, 0, most);
            for (int i = 0; i < most; i++) {
                assertEquals(i, columns.size());
                assertTrue(!columns.isFull());
                columns.add(i, new double[] {0.0, 2.0 * i}, new int[] {1}, new long[] {1L << (i % 64), i % 64});
            }
            assertTrue(columns.isFull());
            assertEquals(most, columns.size());
            assertEquals(most - 1.0, columns.seconds().at(most - 1));
            assertEquals(most, columns.seconds().size());
            Samples values = columns.values(0, Scale.of(3.0, 1.0));
            for (int i = 0; i < most; i++) {
                assertEquals(6.0 * i + 1.0, values.at(i));
                for (int s : new int[] {0, 63, 64, 69}) {
                    boolean due = s < 64 ? i % 64 == s : (i % 64 >> (s - 64) & 1) == 1;
                    assertEquals(due, columns.states(s).at(i), most + " sample " + i + " state " + s);
                }
            }
            assertEquals(most, values.size());
        }
        Columns infinite = new Columns(1, 0, 1, 10);
        infinite.add(0.0, new double[] {1e308}, new int[] {0}, new long[0]);
        assertTrue(Double.isNaN(infinite.values(0, Scale.of(10.0, 0.0)).at(0)), "beyond a double is missing");
    }

    /** Parts of parts of bytes are those of the whole. */
    @Test
    void partsOfBytes() {
        for (long seed = 1; seed <= 300; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            byte[] all = new byte[random.nextInt(1, 40)];
            random.nextBytes(all);
            int from = random.nextInt(all.length);
            int length = random.nextInt(all.length + 5);
            Bytes part = Bytes.of(all).part(from, length);
            byte[] due = Arrays.copyOfRange(all, from, Math.min(all.length, from + length));
            assertEquals(due.length, part.size(), "seed " + seed);
            assertTrue(Arrays.equals(due, part.all()), "seed " + seed);
            byte[] into = new byte[50];
            int at = random.nextInt(due.length + 2);
            int read = part.read(at, into, 3, 40);
            assertEquals(Math.max(0, due.length - at), read, "seed " + seed);
            for (int i = 0; i < 50; i++) {
                byte is = i >= 3 && i < 3 + read ? due[at + i - 3] : 0;
                assertEquals(is, into[i], "seed " + seed + " " + i);
            }
        }
    }
}
