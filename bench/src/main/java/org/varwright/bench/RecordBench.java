package org.varwright.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.varwright.comtrade.Bytes;
import org.varwright.comtrade.DataFormat;
import org.varwright.comtrade.ReadOptions;
import org.varwright.comtrade.RecordFiles;
import org.varwright.comtrade.RecordReader;
import org.varwright.comtrade.RecordWriter;
import org.varwright.comtrade.Recording;
import org.varwright.comtrade.Revision;
import org.varwright.comtrade.Source;
import org.varwright.comtrade.WrittenRecord;

/** How fast the samples of a large record are decoded, beside reading the same bytes and beside the JDK's own number parsing. */
final class RecordBench {
    private static final int SAMPLES = 400_000;
    private static final int ANALOGS = RecordSubject.ANALOGS;
    private static final int STATUSES = RecordSubject.STATUSES;
    private static final int RUNS = 7;
    private static final double WARM_UP_SECONDS = 3.0;

    private RecordBench() {}

    static String text() throws IOException {
        try (Scratch scratch = Scratch.in(Path.of("bench", "target"))) {
            Recording recording = RecordSubject.recording(SAMPLES);
            List<String> rows = new ArrayList<>();
            for (DataFormat format : List.of(DataFormat.BINARY, DataFormat.FLOAT32, DataFormat.ASCII)) {
                rows.add(row(recording, format, scratch.folder()));
            }
            return String.format(Locale.ROOT, """
                            A record of %d analog and %d status channels, %s samples, written by `RecordWriter` and read from a file that the system holds in memory. Decoding is
                            `RecordReader.read` in a warm JVM on one core: configuration, two passes over the data (one for stamps and counts, one for values), every value scaled
                            and kept as a double, every state as a bit. Reading is the same file through the same channel in blocks of 64 KiB, once, nothing done with it. The JDK:
                            `BufferedReader.readLine`, fields cut at commas, `Double.parseDouble` of stamps and values, states by their character, one pass, the values kept the same
                            way; its values must be ours, or there would be no figures. From the disk: the file read past the system's cache (`O_DIRECT`, blocks of 1 MiB), time of the
                            clock, median of five; what lies beneath, such as the host of a virtual machine, may still hold it. A first opening waits for the disk and then for the decoding;
                            every later one finds the file in memory. MB/s are 10⁶ bytes of the data file over the median of %d runs, processor time but for the disk's.
                            """, ANALOGS, STATUSES, "400 000", RUNS) + """

                    | format | data, MB | decoding, least / median / most | decoding, MB/s | reading, MB/s | from the disk, MB/s | the JDK's parsing, MB/s | times the JDK |
                    | --- | --: | --- | --: | --: | --: | --: | --: |
                    """ + String.join("\n", rows);
        }
    }

    private static String row(Recording recording, DataFormat format, Path folder) throws IOException {
        Revision revision = format == DataFormat.FLOAT32 ? Revision.C2013 : Revision.C1999;
        WrittenRecord written = RecordWriter.write(recording, revision, format);
        Path data = Files.write(folder.resolve(format + ".dat"), written.data());
        double megabytes = Files.size(data) * 1e-6;
        try (FileChannel channel = FileChannel.open(data)) {
            Bytes bytes = bytes(channel);
            RecordFiles files = RecordFiles.of(
                    Source.of("bench.cfg", Bytes.of(written.configuration())), Source.of("bench.dat", bytes));
            Times decoding = Times.of(() -> RecordReader.read(files, ReadOptions.ALL), WARM_UP_SECONDS, RUNS);
            Times reading = Times.of(() -> readAlone(bytes), 1.0, RUNS);
            OptionalDouble direct = DirectRead.seconds(data);
            String disk = direct.isEmpty()
                    ? "not measurable here"
                    : String.format(Locale.ROOT, "%.0f", megabytes / direct.getAsDouble());
            String jdk = "";
            String times = "";
            if (format == DataFormat.ASCII) {
                requireSame(RecordReader.read(files, ReadOptions.ALL), parsed(data));
                Times parsing = Times.of(() -> parsed(data), WARM_UP_SECONDS, RUNS);
                jdk = rate(megabytes, parsing);
                times = String.format(Locale.ROOT, "%.1f", parsing.cpu() / decoding.cpu());
            }
            return String.format(
                    Locale.ROOT,
                    "| %s | %.1f | %s | %s | %s | %s | %s | %s |",
                    format,
                    megabytes,
                    decoding.cpuText(),
                    rate(megabytes, decoding),
                    rate(megabytes, reading),
                    disk,
                    jdk,
                    times);
        }
    }

    private static String rate(double megabytes, Times times) {
        return String.format(Locale.ROOT, "%.0f", megabytes / times.cpu());
    }

    private static Bytes bytes(FileChannel channel) throws IOException {
        long size = channel.size();
        return new Bytes() {
            @Override
            public long size() {
                return size;
            }

            @Override
            public int read(long from, byte[] into, int at, int count) {
                try {
                    return Math.max(0, channel.read(ByteBuffer.wrap(into, at, count), from));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }
        };
    }

    private static Long readAlone(Bytes bytes) {
        byte[] block = new byte[1 << 16];
        long at = 0;
        while (true) {
            int read = bytes.read(at, block, 0, block.length);
            if (read == 0) {
                return at;
            }
            at += read;
        }
    }

    /** Values of all channels by the JDK's means alone, before they are scaled. */
    private static double[][] parsed(Path data) {
        double[][] values = new double[ANALOGS][SAMPLES];
        double[] stamps = new double[SAMPLES];
        boolean[][] states = new boolean[STATUSES][SAMPLES];
        try (BufferedReader reader = Files.newBufferedReader(data, StandardCharsets.US_ASCII)) {
            int sample = 0;
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                int from = line.indexOf(',') + 1;
                int to = line.indexOf(',', from);
                stamps[sample] = Double.parseDouble(line.substring(from, to));
                for (int c = 0; c < ANALOGS; c++) {
                    from = to + 1;
                    to = line.indexOf(',', from);
                    values[c][sample] = Double.parseDouble(line.substring(from, to));
                }
                for (int c = 0; c < STATUSES; c++) {
                    states[c][sample] = line.charAt(to + 1 + 2 * c) == '1';
                }
                sample++;
            }
            return values;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void requireSame(Recording ours, double[][] theirs) {
        for (int c = 0; c < ANALOGS; c++) {
            for (int i = 0; i < SAMPLES; i++) {
                double value = ours.analogs().get(c).scale().value(theirs[c][i]);
                if (value != ours.analogs().get(c).values().at(i)) {
                    throw new IllegalStateException("channel " + c + " sample " + i
                            + ": the JDK reads another value; figures of different answers can't be compared");
                }
            }
        }
    }
}
