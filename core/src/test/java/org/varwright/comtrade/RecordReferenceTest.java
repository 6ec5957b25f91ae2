package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.varwright.json.Json;

/**
 * Records against values from outside. Twins are synthesised here, of sine waves whose least, largest and rms value are known from their formula. Where the
 * folder {@code shared/reference/records} stands beside the checkout or beside one of its parents, every public record in it is held as well against the
 * values that an independent program decoded from it ({@code expected.json} there); nothing of it is part of the project.
 */
class RecordReferenceTest {
    private static final double DIGITS = 2e-8;
    private static final CodePages RUNTIME = (name, bytes) ->
            Charset.isSupported(name) ? Optional.of(new String(bytes, Charset.forName(name))) : Optional.empty();

    /** What the independent program says otherwise than the standard; the standard wins. */
    private static final Map<String, String> STANDARD_WINS = Map.of(
            // Its stamps start at -41663 µs and its first line equals its trigger. C37.111 counts stamps from the first
            // sample, so none may be
            // negative; that one is 0 at the trigger is the only reading in which both lines and stamps hold.
            "tshort__COMTRADE.jl/test/data/1999-ascii-pq.cfg", "trigger_offset_s");

    @TestFactory
    Stream<DynamicTest> twins() {
        List<DynamicTest> tests = new ArrayList<>();
        for (Revision revision : Revision.values()) {
            for (DataFormat format : DataFormat.values()) {
                if (revision == Revision.C2013 || format.valueBytes() < 4) {
                    tests.add(DynamicTest.dynamicTest(revision + " " + format, () -> twin(revision, format)));
                }
            }
        }
        return tests.stream();
    }

    /** Ten whole cycles of 60 Hz, 64 samples each: first and largest samples are exact points of the wave. */
    private static void twin(Revision revision, DataFormat format) {
        double[] amperes = new double[640];
        boolean[] closed = new boolean[640];
        for (int i = 0; i < 640; i++) {
            amperes[i] = 120.0 * Math.cos(2.0 * Math.PI * i / 64.0);
            closed[i] = i >= 200;
        }
        Recording written = new RecordDraft("Plover Hill", "REC 1", 60.0, 3840.0, new Instant(2024, 3, 9, 14, 5, 7, 0))
                .analog("IA", "A", "A", new Ratio(Ratio.Side.PRIMARY, 600.0, 5.0), amperes)
                .status("CLOSED", "A", closed)
                .triggered(0.1)
                .build();
        WrittenRecord files = RecordWriter.write(written, revision, format);
        Recording read = RecordReader.read(
                RecordFiles.of(
                        Source.of("a.cfg", Bytes.of(files.configuration())),
                        Source.of("a.dat", Bytes.of(files.data()))),
                ReadOptions.ALL);
        Samples values = read.analogs().getFirst().values();
        double step = 120.0 / 32767.0;
        assertEquals(640, values.size());
        assertEquals(120.0, values.largest(), step);
        assertEquals(-120.0, values.least(), step);
        assertEquals(120.0 / Math.sqrt(2.0), values.rms(), step);
        assertEquals(440, read.statuses().getFirst().bits().ones());
        assertEquals(1, read.statuses().getFirst().bits().changes());
        assertEquals(639 / 3840.0, read.seconds().at(639), 1e-12);
        assertEquals(0.1, read.triggerSeconds().orElseThrow(), 1e-9);
    }

    @TestFactory
    Stream<DynamicTest> publicRecords() throws IOException {
        Optional<Path> folder = folder();
        List<DynamicTest> tests = new ArrayList<>();
        tests.add(DynamicTest.dynamicTest(
                folder.map(f -> "the folder has records").orElse("no folder of public records here: twins alone"),
                () -> {
                    if (folder.isPresent()) {
                        assertTrue(expected(folder.get()).members().size() > 20);
                    } else {
                        twin(Revision.C1999, DataFormat.BINARY);
                    }
                }));
        if (folder.isPresent()) {
            expected(folder.get()).members().forEach((name, values) -> {
                tests.add(DynamicTest.dynamicTest(
                        name,
                        () -> same(
                                (Json.Obj) values,
                                read(folder.get().resolve(name), false),
                                STANDARD_WINS.getOrDefault(name, ""))));
                tests.add(DynamicTest.dynamicTest(
                        name + " with CR LF",
                        () -> same(
                                (Json.Obj) values,
                                read(folder.get().resolve(name), true),
                                STANDARD_WINS.getOrDefault(name, ""))));
            });
        }
        return tests.stream();
    }

    private static void same(Json.Obj expected, Recording read, String standardWins) {
        Compared compared = new Compared(standardWins);
        compared.text("station", expected, read.station());
        compared.text("device", expected, read.device());
        compared.number("revision", expected, read.revision().year());
        compared.text("file_type", expected, read.origin().format().name());
        compared.number("line_frequency", expected, read.hertz());
        compared.number("samples", expected, read.seconds().size());
        compared.text("first", expected, nanos(read.timing().start()));
        compared.text("trigger", expected, nanos(read.timing().trigger()));
        compared.number(
                "last_time_best_s", expected, read.seconds().at(read.seconds().size() - 1));
        compared.number("analog_count", expected, read.analogs().size());
        compared.number("status_count", expected, read.statuses().size());
        double offset = expected.get("trigger_offset_s") instanceof Json.Num n ? n.value() : Double.NaN;
        if (read.triggerSeconds().isPresent()) {
            compared.number("trigger_offset_s", expected, read.triggerSeconds().getAsDouble());
        } else {
            boolean outside =
                    offset < 0.0 || offset > read.seconds().at(read.seconds().size() - 1);
            compared.that("trigger_offset_s", outside, "the trigger at " + offset + " s was not taken");
        }
        List<Json> analogs = ((Json.Arr) expected.get("analog")).items();
        for (int i = 0; i < Math.min(analogs.size(), read.analogs().size()); i++) {
            analog(
                    compared.in("analog " + (i + 1) + " "),
                    (Json.Obj) analogs.get(i),
                    read.analogs().get(i));
        }
        List<Json> statuses = ((Json.Arr) expected.get("status")).items();
        for (int i = 0; i < Math.min(statuses.size(), read.statuses().size()); i++) {
            status(
                    compared.in("status " + (i + 1) + " "),
                    (Json.Obj) statuses.get(i),
                    read.statuses().get(i));
        }
        assertEquals(List.of(), compared.differences());
    }

    private static void analog(Compared compared, Json.Obj expected, Analog read) {
        Samples values = read.values();
        compared.text("name", expected, read.name());
        compared.text("phase", expected, read.phase());
        compared.text("ccbm", expected, read.component());
        compared.text("unit", expected, read.unit());
        compared.number("a", expected, read.scale().multiplier());
        compared.number("b", expected, read.scale().offset());
        compared.number("skew_us", expected, read.skewSeconds() * 1e6);
        compared.number("primary", expected, read.ratio().primary());
        compared.number("secondary", expected, read.ratio().secondary());
        compared.text(
                "ps",
                expected,
                switch (read.ratio().side()) {
                    case PRIMARY -> "P";
                    case SECONDARY -> "S";
                    case UNKNOWN -> "";
                });
        compared.number("samples", expected, values.size());
        compared.number("missing", expected, values.missing());
        double size = Math.max(Math.abs(values.least()), Math.abs(values.largest()));
        compared.near("min", expected, values.least(), size);
        compared.near("max", expected, values.largest(), size);
        compared.near("rms", expected, values.rms(), size);
        compared.near("first", expected, values.at(0), size);
        compared.near("last", expected, values.at(values.size() - 1), size);
    }

    private static void status(Compared compared, Json.Obj expected, Status read) {
        compared.text("name", expected, read.name());
        compared.text(
                "normal",
                expected,
                switch (read.normal()) {
                    case ZERO -> "0";
                    case ONE -> "1";
                    case UNKNOWN -> "";
                });
        compared.number("first", expected, read.bits().at(0) ? 1 : 0);
        compared.number("ones", expected, read.bits().ones());
        compared.number("changes", expected, read.bits().changes());
    }

    private static String nanos(Moment moment) {
        return moment.instant()
                .map(i -> i.print().substring(0, 20) + String.format(Locale.ROOT, "%09d", i.nanos()))
                .orElse("");
    }

    private static Recording read(Path file, boolean crlf) throws IOException {
        String name = file.getFileName().toString();
        ReadOptions options = ReadOptions.ALL.codePage(Optional.empty(), RUNTIME);
        if (name.toLowerCase(Locale.ROOT).endsWith(".cff")) {
            // a combined file has binary parts, whose bytes must stay
            return RecordReader.readCombined(Source.of(name, Bytes.of(Files.readAllBytes(file))), options);
        }
        String stem = name.substring(0, name.length() - 4);
        Path data = file.resolveSibling(stem + (name.endsWith(".CFG") ? ".DAT" : ".dat"));
        byte[] configuration = Files.readAllBytes(file);
        boolean isText = new String(configuration, StandardCharsets.ISO_8859_1).matches("(?is).*\nASCII.*");
        return RecordReader.read(
                RecordFiles.of(
                        Source.of(name, Bytes.of(crlf ? crlf(configuration) : configuration)),
                        Source.of(
                                "dat",
                                Bytes.of(crlf && isText ? crlf(Files.readAllBytes(data)) : Files.readAllBytes(data)))),
                options);
    }

    private static byte[] crlf(byte[] text) {
        return new String(text, StandardCharsets.ISO_8859_1)
                .replace("\r\n", "\n")
                .replace("\n", "\r\n")
                .getBytes(StandardCharsets.ISO_8859_1);
    }

    private static Json.Obj expected(Path folder) throws IOException {
        return (Json.Obj) Json.parse(Files.readString(folder.resolve("expected.json")));
    }

    private static Optional<Path> folder() {
        for (Path at = Path.of("").toAbsolutePath(); at != null; at = at.getParent()) {
            Path folder = at.resolve("shared").resolve("reference").resolve("records");
            if (Files.isRegularFile(folder.resolve("expected.json"))) {
                return Optional.of(folder);
            }
        }
        return Optional.empty();
    }

    /** Collects differences, so that one run shows all of a record. */
    private record Compared(String standardWins, String where, List<String> differences) {
        Compared(String standardWins) {
            this(standardWins, "", new ArrayList<>());
        }

        Compared in(String place) {
            return new Compared(standardWins, place, differences);
        }

        void text(String name, Json.Obj expected, String read) {
            String value = expected.get(name) instanceof Json.Str s ? s.value() : "";
            if (name.equals("ps")) {
                // "p" and "s" occur
                value = value.toUpperCase(Locale.ROOT);
            }
            that(name, value.strip().equals(read.strip()), "\"" + read + "\" instead of \"" + value + "\"");
        }

        void number(String name, Json.Obj expected, double read) {
            near(name, expected, read, 0.0);
        }

        /** To the digits that are given, and to those of the largest value where values were scaled and added. */
        void near(String name, Json.Obj expected, double read, double size) {
            double value = expected.get(name) instanceof Json.Num n ? n.value() : Double.NaN;
            boolean same = Double.isNaN(value)
                    ? Double.isNaN(read)
                    : Math.abs(read - value) <= DIGITS * Math.max(Math.abs(value), size);
            that(name, same, read + " instead of " + value);
        }

        void that(String name, boolean holds, String difference) {
            if (!holds && !standardWins.contains(where + name)) {
                differences.add(where + name + ": " + difference);
            }
        }
    }
}
