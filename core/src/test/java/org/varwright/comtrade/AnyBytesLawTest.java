package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.varwright.problem.VarwrightException;

/**
 * Whatever the bytes are, the reader gives a recording that holds together or says what is wrong: records of every format, broken by a seeded hand. A failure
 * prints the seed that repeats it; such seeds are kept.
 */
class AnyBytesLawTest {
    private static final int CASES = Integer.getInteger("varwright.cases", 4000);
    /** Few, so that a size that no data prove can't hide. */
    private static final long VALUES = 100_000L;

    private static final List<byte[]> STRANGE = List.of(
            bytes("99999999999"),
            bytes("-1"),
            bytes("1e308"),
            bytes("NaN"),
            bytes("2147483647A"),
            bytes(",,,,,,,,,,,,,,"),
            bytes("\r\n\r\n"),
            bytes("--- file type: DAT BINARY: 999999999999 ---\r\n"),
            bytes("--- file type: CFG ---\n"),
            bytes("1999"),
            bytes("\u001a\u001a"),
            bytes("\u0000"),
            bytes("ASCII"),
            bytes("BINARY32"),
            new byte[] {(byte) 0xFF, (byte) 0xFE},
            new byte[] {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF},
            new byte[] {(byte) 0x81, (byte) 0x30, (byte) 0x84});

    @Test
    void brokenRecordsAreReadOrRefused() {
        int refused = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            refused += isRefused(seed) ? 1 : 0;
        }
        // Both happen, or the hand would be too soft or too hard to prove anything.
        assertTrue(refused > CASES / 100, refused + " of " + CASES + " refused");
        assertTrue(refused < CASES * 9 / 10, refused + " of " + CASES + " refused");
    }

    /** Found by longer runs: a rate, a multiplier or a stamp that makes times without end. */
    @ParameterizedTest
    @ValueSource(longs = {72_316L})
    void seedsThatOnceFailed(long seed) {
        assertFalse(isRefused(seed), "it is read, with a remark");
    }

    /** Sizes in headers are claims: none of them may take memory before the data prove it. */
    @Test
    void hostileSizesAreRefusedOrIgnored() {
        String claims = """
                S,D,1999
                1999998,999999A,999999D
                60
                1
                1000,4
                """;
        assertTrue(refusal(claims, "1,0,1\n").isPresent());
        String rates = """
                S,D,1999
                1,1A,0D
                1,I,,,A,1,0,0,-9,9,1,1,P
                60
                999999999
                1000,4000000000000
                09/03/2024,14:05:07.025000
                09/03/2024,14:05:07.025000
                ASCII
                1
                """;
        assertFalse(refusal(rates, "1,0,1\n2,1000,2\n").isPresent());
        assertTrue(refusal("\n".repeat(100_000), "1,0,1\n").isPresent());
        assertTrue(refusal(",".repeat(1_000_000), "1,0,1\n").isPresent());
    }

    /** 2.2 GB of data are read block by block; what is asked for is what is kept. */
    @Test
    void twoGigabytesAreReadInAWindowOrRefusedWithWhatToTry() {
        StringBuilder configuration = new StringBuilder("S,D,1999\n1001,1000A,1D\n");
        for (int i = 1; i <= 1000; i++) {
            configuration.append(i).append(",I").append(i).append(",,,A,1,0,0,-32767,32767,1,1,P\n");
        }
        configuration.append(
                "1,TRIP,,,0\n60\n1\n10000,1100000\n09/03/2024,14:05:07.025000\n09/03/2024,14:05:07.025000\nBINARY\n1\n");
        RecordFiles files = RecordFiles.of(
                Source.of("a.cfg", Bytes.of(bytes(configuration.toString()))), Source.of("a.dat", new Sparse()));
        VarwrightException tooMany =
                assertThrows(VarwrightException.class, () -> RecordReader.read(files, ReadOptions.ALL));
        assertTrue(String.valueOf(tooMany.getMessage()).contains("1100000 samples"), tooMany.getMessage());
        Recording part =
                RecordReader.read(files, ReadOptions.ALL.channels(List.of("I2")).window(109.0, 109.0101));
        assertEquals(102, part.seconds().size());
        assertEquals(109.0, part.seconds().at(0), 1e-9);
        assertEquals(4660.0, part.analogs().getFirst().values().at(0));
        assertEquals(0.0, part.analogs().getFirst().values().at(1));
    }

    /** 1 100 000 samples of 2010 bytes, all 0 but the second value of sample 1 090 001. */
    private record Sparse() implements Bytes {
        private static final long MARK = 1_090_000L * 2010L + 8L + 2L;

        @Override
        public long size() {
            return 1_100_000L * 2010L;
        }

        @Override
        public int read(long from, byte[] into, int at, int count) {
            int copied = (int) Math.max(0L, Math.min(count, size() - from));
            Arrays.fill(into, at, at + copied, (byte) 0);
            for (int i = 0; i < 2; i++) {
                if (MARK + i >= from && MARK + i < from + copied) {
                    into[(int) (at + MARK + i - from)] = (byte) (0x1234 >> (8 * i));
                }
            }
            return copied;
        }
    }

    private static Optional<VarwrightException> refusal(String configuration, String data) {
        try {
            RecordReader.read(
                    RecordFiles.of(
                            Source.of("a.cfg", Bytes.of(bytes(configuration))),
                            Source.of("a.dat", Bytes.of(bytes(data)))),
                    ReadOptions.ALL.atMost(VALUES));
            return Optional.empty();
        } catch (VarwrightException e) {
            return Optional.of(e);
        }
    }

    private static boolean isRefused(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Recording recording = recording(random);
        boolean combined = random.nextInt(3) == 0;
        DataFormat format = List.of(DataFormat.values()).get(random.nextInt(4));
        Revision revision = combined || format.valueBytes() == 4
                ? Revision.C2013
                : List.of(Revision.values()).get(random.nextInt(3));
        WrittenRecord written = RecordWriter.write(recording, revision, format);
        ReadOptions options = random.nextBoolean()
                ? ReadOptions.ALL.atMost(VALUES)
                : ReadOptions.ALL.atMost(VALUES).window(random.nextDouble(-0.01, 0.01), random.nextDouble(0.0, 0.02));
        try {
            Recording read = combined
                    ? RecordReader.readCombined(Source.of("a.cff", broken(random, written.combined())), options)
                    : RecordReader.read(
                            RecordFiles.of(
                                            Source.of("a.cfg", broken(random, written.configuration())),
                                            Source.of("a.dat", broken(random, written.data())))
                                    .withHeader(Source.of("a.hdr", broken(random, bytes("what the relay said")))),
                            options);
            holdsTogether(read, "seed " + seed);
            return false;
        } catch (VarwrightException e) {
            assertFalse(String.valueOf(e.getMessage()).isBlank(), "seed " + seed);
            return true;
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            throw new AssertionError("seed " + seed, e);
        }
    }

    private static void holdsTogether(Recording read, String at) {
        assertTrue(read.seconds().size() > 0, at);
        for (int i = 0; i < read.seconds().size(); i++) {
            double seconds = read.seconds().at(i);
            assertTrue(Math.abs(seconds) <= Double.MAX_VALUE, at);
            assertTrue(i == 0 || seconds >= read.seconds().at(i - 1), at + ": time runs backwards at " + i);
        }
        for (Analog analog : read.analogs()) {
            for (double value : analog.values().toArray()) {
                assertTrue(Double.isNaN(value) || Math.abs(value) <= Double.MAX_VALUE, at);
            }
        }
        assertFalse(RecordingText.of(read).isBlank(), at);
        assertFalse(RecordingJson.of(read).build().print().isBlank(), at);
        assertTrue(read.remarks().size() < 400, at);
    }

    private static Bytes broken(SplittableRandom random, byte[] whole) {
        byte[] bytes = whole;
        int hits = random.nextInt(4);
        for (int h = 0; h < hits && bytes.length > 0; h++) {
            int at = random.nextInt(bytes.length);
            int to = Math.min(bytes.length, at + 1 + random.nextInt(40));
            bytes = switch (random.nextInt(6)) {
                case 0 -> flipped(bytes, at, random.nextInt(256));
                case 1 -> joined(Arrays.copyOf(bytes, at), Arrays.copyOfRange(bytes, to, bytes.length));
                case 2 -> Arrays.copyOf(bytes, at);
                case 3 ->
                    joined(
                            Arrays.copyOf(bytes, at),
                            STRANGE.get(random.nextInt(STRANGE.size())),
                            Arrays.copyOfRange(bytes, at, bytes.length));
                case 4 ->
                    joined(
                            Arrays.copyOf(bytes, at),
                            STRANGE.get(random.nextInt(STRANGE.size())),
                            Arrays.copyOfRange(bytes, to, bytes.length));
                default -> joined(Arrays.copyOf(bytes, to), Arrays.copyOfRange(bytes, at, bytes.length));
            };
        }
        return Bytes.of(bytes);
    }

    private static byte[] flipped(byte[] bytes, int at, int value) {
        byte[] flipped = bytes.clone();
        flipped[at] = (byte) value;
        return flipped;
    }

    private static byte[] joined(byte[]... parts) {
        Octets octets = new Octets();
        for (byte[] part : parts) {
            octets.all(part);
        }
        return octets.toArray();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static Recording recording(SplittableRandom random) {
        int samples = random.nextInt(1, 12);
        RecordDraft draft = new RecordDraft("Plover Hill", "REC", 60.0, 1000.0, new Instant(2024, 3, 9, 14, 5, 7, 0))
                .triggered(0.001);
        List<double[]> values = new ArrayList<>();
        for (int c = 0; c < random.nextInt(1, 4); c++) {
            double[] column = new double[samples];
            for (int i = 0; i < samples; i++) {
                column[i] = random.nextDouble(-100.0, 100.0);
            }
            values.add(column);
        }
        values.forEach(v -> draft.analog("I", "A", "A", new Ratio(Ratio.Side.PRIMARY, 600.0, 5.0), v));
        for (int c = 0; c < random.nextInt(0, 20); c++) {
            draft.status("S", "", new boolean[samples]);
        }
        return draft.build();
    }
}
