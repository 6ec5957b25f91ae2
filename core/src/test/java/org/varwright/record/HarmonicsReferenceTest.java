package org.varwright.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.varwright.comtrade.Analog;
import org.varwright.comtrade.Bytes;
import org.varwright.comtrade.DataFormat;
import org.varwright.comtrade.Instant;
import org.varwright.comtrade.Ratio;
import org.varwright.comtrade.ReadOptions;
import org.varwright.comtrade.RecordDraft;
import org.varwright.comtrade.RecordFiles;
import org.varwright.comtrade.RecordReader;
import org.varwright.comtrade.RecordWriter;
import org.varwright.comtrade.Recording;
import org.varwright.comtrade.Revision;
import org.varwright.comtrade.Source;
import org.varwright.comtrade.WrittenRecord;
import org.varwright.json.Json;
import org.varwright.waveform.Components;
import org.varwright.waveform.Signal;
import org.varwright.waveform.TimeBase;
import org.varwright.waveform.Waves;
import org.varwright.waveform.Window;

/**
 * REC-1 against values from outside. A twin is synthesised here from harmonics that are known because they were put in. Where the folder {@code
 * shared/reference/records} stands beside the checkout or beside one of its parents, one-cycle transforms that another program took of the public records in
 * it ({@code expected_dft.json} there) are held against ours as well; nothing of it is part of the project.
 */
class HarmonicsReferenceTest {
    @Test
    void aWrittenAndReadWaveGivesTheHarmonicsThatWerePutIn() {
        double[] rms = {100.0, 3.0, 8.0, 1.0, 20.0, 0.5, 14.0};
        double[] values = new double[640];
        for (int i = 0; i < values.length; i++) {
            values[i] = 5.0;
            for (int k = 1; k <= rms.length; k++) {
                values[i] += Waves.wave(rms[k - 1], 50.0 * k, 11.0 * k, i / 3200.0);
            }
        }
        Recording written = new RecordDraft("", "", 50.0, 3200.0, new Instant(2024, 3, 9, 14, 5, 7, 0))
                .analog("IA", "A", "A", new Ratio(Ratio.Side.PRIMARY, 600.0, 5.0), values)
                .build();
        WrittenRecord files = RecordWriter.write(written, Revision.C2013, DataFormat.FLOAT32);
        Recording read = RecordReader.readCombined(Source.of("twin.cff", Bytes.of(files.combined())), ReadOptions.ALL);
        Components c = components(read, 0, 64, 64, 13);
        assertEquals(5.0, c.dc(), 1e-5);
        for (int k = 1; k <= 13; k++) {
            assertEquals(k <= rms.length ? rms[k - 1] : 0.0, c.order(k).magnitude(), 2e-5, "order " + k);
        }
    }

    private static Components components(Recording recording, int channel, int from, int count, int orders) {
        TimeBase base = TimeBase.of(recording.seconds().toArray());
        Analog analog = recording.analogs().get(channel);
        Signal signal = Signal.of(base, analog.values().toArray());
        double step = (base.seconds(from + count - 1) - base.seconds(from)) / (count - 1);
        double middle = 0.5 * (base.seconds(from) + base.seconds(from + count - 1));
        return new Window(from, count, middle, step, 1.0 / (count * step), false)
                .components(signal, orders)
                .orElseThrow();
    }

    @TestFactory
    Stream<DynamicTest> publicRecords() throws IOException {
        Optional<Path> folder = folder();
        List<DynamicTest> tests = new ArrayList<>();
        int found = 0;
        if (folder.isPresent()) {
            Json.Arr all = (Json.Arr)
                    Json.parse(Files.readString(folder.get().resolve("expected_dft.json"), StandardCharsets.UTF_8));
            for (Json item : all.items()) {
                Json.Obj entry = (Json.Obj) item;
                Path file = folder.get().resolve(((Json.Str) entry.get("file")).value());
                if (Files.exists(file)) {
                    found++;
                    tests.add(DynamicTest.dynamicTest(
                            file.getFileName() + " " + entry.get("channel").print() + " at "
                                    + (int) number(entry, "start_index"),
                            () -> held(file, entry)));
                }
            }
        }
        int stored = found;
        tests.add(DynamicTest.dynamicTest(
                folder.isPresent() ? "the folder has some of them" : "no folder of public records here: the twin alone",
                () -> assertTrue(folder.isEmpty() || stored >= 5, "only " + stored)));
        return tests.stream();
    }

    private static void held(Path file, Json.Obj entry) throws IOException {
        Recording recording = RecordReader.read(
                RecordFiles.of(
                        Source.of("cfg", Bytes.of(Files.readAllBytes(file))),
                        Source.of("dat", Bytes.of(Files.readAllBytes(data(file))))),
                ReadOptions.ALL);
        List<Json> expected = ((Json.Arr) entry.get("dc_then_rms_of_harmonics")).items();
        Components c = components(
                recording,
                (int) number(entry, "channel_index"),
                (int) number(entry, "start_index"),
                (int) number(entry, "window"),
                expected.size() - 1);
        // nine digits are printed; stamps cut to whole microseconds move the samples of some records by 1e-4 of a step
        double within = 2e-5 * number(entry, "window_rms");
        assertEquals(Math.abs(((Json.Num) expected.getFirst()).value()), Math.abs(c.dc()), within, "dc");
        for (int k = 1; k < expected.size(); k++) {
            assertEquals(((Json.Num) expected.get(k)).value(), c.order(k).magnitude(), within, "order " + k);
        }
        assertEquals(number(entry, "window_rms"), c.rms(), 1e-7 * number(entry, "window_rms"), "rms");
        assertEquals(number(entry, "window_peak_abs"), c.peak(), 1e-7 * number(entry, "window_peak_abs"), "peak");
    }

    private static double number(Json.Obj entry, String name) {
        return ((Json.Num) entry.get(name)).value();
    }

    /** The {@code .dat} beside a {@code .cfg}, in capitals or not. */
    private static Path data(Path file) throws IOException {
        String name = file.getFileName().toString();
        String wanted = name.substring(0, name.lastIndexOf('.')) + ".dat";
        try (Stream<Path> files = Files.list(file.resolveSibling(""))) {
            return files.filter(f -> f.getFileName().toString().equalsIgnoreCase(wanted))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static Optional<Path> folder() {
        for (Path at = Path.of("").toAbsolutePath(); at != null; at = at.getParent()) {
            Path folder = at.resolve("shared/reference/records");
            if (Files.isDirectory(folder)) {
                return Optional.of(folder);
            }
        }
        return Optional.empty();
    }
}
