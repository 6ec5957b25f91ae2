package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.varwright.problem.Problem;

/** Laws between writer and reader that hold for any recording; a failure prints the seed that repeats it. */
class RoundTripLawTest {
    private static final int CASES = Integer.getInteger("varwright.cases", 150);

    /** What a format may add to a time: half a microsecond, where only stamps tell. */
    private static final double HALF_MICROSECOND = 0.5000001e-6;

    @Test
    void whatWasWrittenIsReadToHalfAStepOfItsFormat() {
        for (long seed = 1; seed <= CASES; seed++) {
            Recording recording = recording(new SplittableRandom(seed));
            for (Revision revision : Revision.values()) {
                for (DataFormat format : DataFormat.values()) {
                    if (revision == Revision.C2013 || format.valueBytes() < 4) {
                        String at = "seed " + seed + " " + revision + " " + format;
                        same(recording, read(RecordWriter.write(recording, revision, format)), format, at);
                    }
                }
            }
        }
    }

    @Test
    void whatWasReadIsWrittenAndReadWithoutAChange() {
        for (long seed = 1; seed <= CASES; seed++) {
            Recording recording = recording(new SplittableRandom(seed));
            for (DataFormat format : DataFormat.values()) {
                Recording once = read(RecordWriter.write(recording, Revision.C2013, format));
                Recording twice = read(RecordWriter.write(once, Revision.C2013, format));
                String at = "seed " + seed + " " + format;
                assertEquals(once.analogs(), twice.analogs(), at);
                assertEquals(once.statuses(), twice.statuses(), at);
                assertEquals(once.seconds(), twice.seconds(), at);
                assertEquals(once.timing(), twice.timing(), at);
                assertEquals(once.origin(), twice.origin(), at);
            }
        }
    }

    @Test
    void aCombinedFileSaysWhatItsPartsSay() {
        for (long seed = 1; seed <= CASES; seed++) {
            Recording recording = recording(new SplittableRandom(seed));
            for (DataFormat format : DataFormat.values()) {
                WrittenRecord written = RecordWriter.write(recording, Revision.C2013, format);
                Recording parts = read(written);
                Recording combined =
                        RecordReader.readCombined(Source.of("a.cff", Bytes.of(written.combined())), ReadOptions.ALL);
                String at = "seed " + seed + " " + format;
                assertEquals(parts.analogs(), combined.analogs(), at);
                assertEquals(parts.statuses(), combined.statuses(), at);
                assertEquals(parts.seconds(), combined.seconds(), at);
                assertEquals(parts.timing(), combined.timing(), at);
                assertEquals(recording.header(), combined.header(), at);
            }
        }
    }

    /** Version control and mail change line ends of text: to LF alone, to CR alone. */
    @Test
    void lineEndsChangeNothing() {
        for (long seed = 1; seed <= CASES; seed++) {
            Recording recording = recording(new SplittableRandom(seed));
            WrittenRecord written = RecordWriter.write(recording, Revision.C1999, DataFormat.ASCII);
            Recording plain = read(written);
            for (String end : List.of("\n", "\r", "\r\r\n")) {
                Recording other = RecordReader.read(
                        RecordFiles.of(
                                source("a.cfg", with(written.configuration(), end)),
                                source("a.dat", with(written.data(), end))),
                        ReadOptions.ALL);
                String at = "seed " + seed + " end " + end.length() + "/" + (int) end.charAt(0);
                assertEquals(plain.analogs(), other.analogs(), at);
                assertEquals(plain.statuses(), other.statuses(), at);
                assertEquals(plain.seconds(), other.seconds(), at);
                assertEquals(plain.timing(), other.timing(), at);
            }
        }
    }

    @Test
    void aWindowIsAPartOfTheWhole() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Recording recording = recording(random);
            WrittenRecord written = RecordWriter.write(recording, Revision.C2013, DataFormat.BINARY32);
            Recording whole = read(written);
            int first = random.nextInt(whole.seconds().size());
            int last = random.nextInt(first, whole.seconds().size());
            double from = whole.seconds().at(first);
            double to = whole.seconds().at(last);
            Recording part = RecordReader.read(files(written), ReadOptions.ALL.window(from, to));
            String at = "seed " + seed;
            assertEquals(last - first + 1, part.seconds().size(), at);
            for (int c = 0; c < whole.analogs().size(); c++) {
                for (int i = first; i <= last; i++) {
                    assertEquals(
                            whole.analogs().get(c).values().at(i),
                            part.analogs().get(c).values().at(i - first),
                            at);
                }
            }
        }
    }

    private static void same(Recording expected, Recording actual, DataFormat format, String at) {
        assertEquals(
                List.of(),
                actual.remarks().stream()
                        .map(Problem::print)
                        .filter(r -> !isMeant(r))
                        .toList(),
                at);
        assertEquals(expected.analogs().size(), actual.analogs().size(), at);
        for (int c = 0; c < expected.analogs().size(); c++) {
            Analog written = expected.analogs().get(c);
            Analog read = actual.analogs().get(c);
            assertEquals(written.name(), read.name(), at);
            assertEquals(written.unit(), read.unit(), at);
            for (int i = 0; i < written.values().size(); i++) {
                double value = written.values().at(i);
                double step = format == DataFormat.FLOAT32
                        ? Math.ulp((float) value)
                        : Math.abs(read.scale().multiplier());
                String where = at + " channel " + (c + 1) + " sample " + i;
                if (Double.isNaN(value)) {
                    assertTrue(Double.isNaN(read.values().at(i)), where);
                } else {
                    assertEquals(value, read.values().at(i), 0.5000001 * step, where);
                }
            }
        }
        assertEquals(
                expected.statuses().stream().map(Status::bits).toList(),
                actual.statuses().stream().map(Status::bits).toList(),
                at);
        for (int i = 0; i < expected.seconds().size(); i++) {
            assertEquals(expected.seconds().at(i), actual.seconds().at(i), HALF_MICROSECOND, at + " sample " + i);
        }
        assertEquals(
                expected.triggerSeconds().orElseThrow(),
                actual.triggerSeconds().orElseThrow(),
                2.0 * HALF_MICROSECOND,
                at);
    }

    /** The writer has no other word for a ratio that isn't known. */
    private static boolean isMeant(String remark) {
        return remark.contains("ratio of 1:1");
    }

    private static Recording read(WrittenRecord written) {
        return RecordReader.read(files(written), ReadOptions.ALL);
    }

    private static RecordFiles files(WrittenRecord written) {
        return RecordFiles.of(
                        Source.of("a.cfg", Bytes.of(written.configuration())),
                        Source.of("a.dat", Bytes.of(written.data())))
                .withHeader(Source.of("a.hdr", Bytes.of(written.header())));
    }

    private static Source source(String name, String text) {
        return Source.of(name, Bytes.of(text.getBytes(StandardCharsets.UTF_8)));
    }

    private static String with(byte[] text, String end) {
        return new String(text, StandardCharsets.UTF_8).replace("\r\n", end);
    }

    /** Any recording: a few channels of any size, some values missing, names beyond ASCII, an odd rate. */
    private static Recording recording(SplittableRandom random) {
        int samples = random.nextInt(2, 60);
        double rate = random.nextBoolean()
                ? random.nextInt(1, 100) * 60.0
                : Math.rint(1e6 * random.nextDouble(50.0, 20_000.0)) / 1e6;
        RecordDraft draft = new RecordDraft(
                        random.nextBoolean() ? "Plover Hill" : "Überlandwerk Grünholz",
                        "REC " + random.nextInt(100),
                        random.nextBoolean() ? 50.0 : 60.0,
                        rate,
                        new Instant(
                                random.nextInt(1995, 2060),
                                random.nextInt(1, 13),
                                random.nextInt(1, 29),
                                random.nextInt(24),
                                random.nextInt(60),
                                random.nextInt(60),
                                1000 * random.nextInt(1_000_000)))
                .triggered(Math.rint(random.nextInt(samples) / rate * 1e6) / 1e6)
                .header(random.nextBoolean() ? "" : "what the relay said\r\nin two lines");
        int analogs = random.nextInt(1, 6);
        for (int c = 0; c < analogs; c++) {
            double size = Math.exp(random.nextDouble(Math.log(1e-6), Math.log(1e6)));
            double[] values = new double[samples];
            for (int i = 0; i < samples; i++) {
                values[i] = random.nextInt(20) == 0 ? Double.NaN : size * random.nextDouble(-1.0, 1.0);
            }
            Ratio ratio = switch (random.nextInt(3)) {
                case 0 -> Ratio.UNKNOWN;
                case 1 -> new Ratio(Ratio.Side.PRIMARY, 1.0 + random.nextInt(5000), 5.0);
                default -> new Ratio(Ratio.Side.SECONDARY, 1.0 + random.nextInt(5000), 1.0);
            };
            draft.analog(
                    "channel " + c,
                    "ABC".substring(c % 3, c % 3 + 1),
                    random.nextBoolean() ? "A" : "kV",
                    ratio,
                    values);
        }
        int statuses = random.nextInt(0, 36);
        for (int c = 0; c < statuses; c++) {
            boolean[] states = new boolean[samples];
            for (int i = 0; i < samples; i++) {
                states[i] = random.nextBoolean();
            }
            draft.status("state " + c, "", states);
        }
        Recording recording = draft.build();
        assertTrue(recording.seconds().size() == samples);
        return recording;
    }
}
