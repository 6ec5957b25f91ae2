package org.varwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.job.Sha256;
import org.varwright.json.Json;

/** The job as a file: begun, added to, merged; nothing that stands is ever lost or overwritten. */
class JobIT {
    private static final String BANK =
            Session.DEMO.resolve("corbel-reach-3.bank.yaml").toString();
    private static final String ORDER =
            "{\"access\": [\"bay 3\"], \"origin\": {\"kind\": \"as-found\"}, \"reason\": \"units to be measured\"}";

    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path folder;

    private Path begun(String name) {
        Path file = folder.resolve(name);
        Session session = Session.run(
                "job",
                "new",
                file.toString(),
                "--bank",
                BANK,
                "--title",
                "alarm",
                "--name",
                "spring",
                "--by",
                "R. Imhof");
        assertEquals(0, session.code(), session.err());
        return file;
    }

    private static Session add(Path file, String device, String type, String body) {
        return Session.run("job", "add", file.toString(), type, "--by", "R. Imhof", "--device", device, "--body", body);
    }

    @Test
    void aStepIsConfirmedAndShown() throws IOException {
        Path file = begun("a.job.jsonl");
        assertEquals(0, add(file, "desk", "order-made", ORDER).code());
        byte[] before = Files.readAllBytes(file);
        Session bare = Session.run("job", "confirm", file.toString(), "1", "--by", "R. Imhof");
        assertEquals(2, bare.code());
        assertTrue(bare.err().contains("read, scan or type the label"), bare.err());
        assertTrue(bare.err().contains("second person"), bare.err());
        assertTrue(Arrays.equals(before, Files.readAllBytes(file)), "what is refused is not written");
        Session full = Session.run(
                "job",
                "confirm",
                file.toString(),
                "1",
                "--by",
                "R. Imhof",
                "--second",
                "T. Okafor",
                "--label",
                "CR-BK3",
                "--ticked",
                "bank: Corbel Reach bank 3 (labelled CR-BK3)",
                "--ticked",
                "compartment: bay 3 (labelled CR3-B3)",
                "--json");
        assertEquals(0, full.code(), full.err());
        Json.Obj order = (Json.Obj) ((Json.Obj) Json.parse(full.out())).get("order");
        assertEquals(Json.of(2), order.get("next"));
        assertEquals(Json.of("way-in"), order.get("phase"));
    }

    @Test
    void aJobIsNeverBegunOverAnother() throws IOException {
        Path file = begun("a.job.jsonl");
        byte[] before = Files.readAllBytes(file);
        Session again =
                Session.run("job", "new", file.toString(), "--bank", BANK, "--title", "other", "--by", "R. Imhof");
        assertEquals(2, again.code());
        assertTrue(again.err().contains("never begun over another"), again.err());
        assertTrue(Arrays.equals(before, Files.readAllBytes(file)));
    }

    @Test
    void aBankThatCanNotBeReadLeavesNoFile() throws IOException {
        Path bad = Files.writeString(folder.resolve("bad.bank.yaml"), "format: varwright/1\nname: x\n");
        Path file = folder.resolve("b.job.jsonl");
        Session session = Session.run(
                "job", "new", file.toString(), "--bank", bad.toString(), "--title", "t", "--by", "R. Imhof");
        assertEquals(2, session.code());
        assertFalse(Files.exists(file));
    }

    @Test
    void aTornLineStaysAndTheNextEventStandsOnItsOwnLine() throws IOException {
        Path file = begun("a.job.jsonl");
        Files.writeString(file, Files.readString(file) + "{\"id\":\"desk");
        assertEquals(1, Session.run("job", "show", file.toString()).code());
        assertEquals(
                1, add(file, "desk", "noted", "{\"text\": \"after the cut\"}").code());
        List<String> lines = Files.readAllLines(file);
        assertEquals(3, lines.size());
        assertEquals("{\"id\":\"desk", lines.get(1));
        Session shown = Session.run("job", "show", file.toString());
        assertTrue(shown.out().contains("line 2 can't be read"), shown.out());
    }

    @Test
    void aChangedLineIsShownWithExitOne() throws IOException {
        Path file = begun("a.job.jsonl");
        assertEquals(0, add(file, "desk", "noted", "{\"text\": \"all well\"}").code());
        assertEquals(0, add(file, "desk", "noted", "{\"text\": \"still\"}").code());
        Files.writeString(file, Files.readString(file).replace("all well", "not well"));
        Session shown = Session.run("job", "show", file.toString());
        assertEquals(1, shown.code());
        assertTrue(shown.out().contains("desk:3 does not follow"), shown.out());
    }

    @Test
    void twoDevicesMergeInEitherOrder() throws IOException {
        Path a = begun("a.job.jsonl");
        Path b = Files.copy(a, folder.resolve("b.job.jsonl"));
        add(a, "tablet-a", "noted", "{\"text\": \"from a\"}");
        add(b, "tablet-b", "noted", "{\"text\": \"from b\"}");
        Path ab = folder.resolve("ab.job.jsonl");
        Path ba = folder.resolve("ba.job.jsonl");
        assertEquals(
                0,
                Session.run("job", "merge", a.toString(), b.toString(), "-o", ab.toString())
                        .code());
        assertEquals(
                0,
                Session.run("job", "merge", b.toString(), a.toString(), ab.toString(), "-o", ba.toString())
                        .code());
        assertEquals(Files.readString(ab), Files.readString(ba));
        assertTrue(
                Files.readString(ab).contains("from a") && Files.readString(ab).contains("from b"));
    }

    private Path attached(Path file, String content) throws IOException {
        String hash = Sha256.of(content);
        Path own = Files.createDirectories(folder.resolve("own"));
        Files.writeString(own.resolve(hash), content);
        assertEquals(
                0,
                add(
                                file,
                                "desk",
                                "attached",
                                "{\"name\": \"a.jpg\", \"mediaType\": \"image/jpeg\", \"sha256\": \"" + hash
                                        + "\", \"bytes\": " + content.length() + "}")
                        .code());
        return own;
    }

    @Test
    void aJobGoesOutAsOneFileAndComesBack() throws IOException {
        Path file = begun("a.job.jsonl");
        Path own = attached(file, "a photo");
        Path zip = folder.resolve("spring.zip");
        Session without = Session.run("job", "export", file.toString(), "-o", zip.toString());
        assertEquals(1, without.code(), "an attachment is not at hand");
        assertTrue(without.err().contains("is not at hand"), without.err());
        Session whole =
                Session.run("job", "export", file.toString(), "--attachments", own.toString(), "-o", zip.toString());
        assertEquals(0, whole.code(), whole.err());
        Path back = folder.resolve("back").resolve("b.job.jsonl");
        Session taken = Session.run("job", "import", zip.toString(), "-o", back.toString());
        assertEquals(0, taken.code(), taken.err());
        assertEquals(Files.readString(file), Files.readString(back));
        assertEquals(
                "a photo", Files.readString(back.resolveSibling("attachments").resolve(Sha256.of("a photo"))));
        add(back, "tablet", "noted", "{\"text\": \"written here\"}");
        assertEquals(
                0,
                Session.run("job", "import", zip.toString(), "-o", back.toString())
                        .code());
        assertTrue(Files.readString(back).contains("written here"), "merged, never overwritten");
        assertEquals(
                2,
                Session.run(
                                "job",
                                "import",
                                zip.toString(),
                                "-o",
                                begunAs("other").toString())
                        .code(),
                "another job is not mixed in");
    }

    private Path begunAs(String name) {
        Path file = folder.resolve(name + ".job.jsonl");
        assertEquals(
                0,
                Session.run("job", "new", file.toString(), "--bank", BANK, "--title", "t", "--by", "R. Imhof")
                        .code());
        return file;
    }

    @Test
    void anArchiveThatIsWrongWritesNothing() throws IOException {
        Path file = begun("a.job.jsonl");
        Path own = attached(file, "a photo");
        Path zip = folder.resolve("spring.zip");
        assertEquals(
                0,
                Session.run("job", "export", file.toString(), "--attachments", own.toString(), "-o", zip.toString())
                        .code());
        byte[] bytes = Files.readAllBytes(zip);
        byte[] bad = new String(bytes, StandardCharsets.ISO_8859_1)
                .replace("a photo", "a phota")
                .getBytes(StandardCharsets.ISO_8859_1);
        Files.write(zip, bad);
        Path back = Files.createDirectories(folder.resolve("back"));
        Session refused = Session.run(
                "job",
                "import",
                zip.toString(),
                "-o",
                back.resolve("b.job.jsonl").toString());
        assertEquals(2, refused.code());
        try (var left = Files.walk(back)) {
            assertEquals(List.of(), left.filter(Files::isRegularFile).toList());
        }
        assertEquals(
                2, Session.run("job", "import", "none.zip", "-o", "x.job.jsonl").code());
    }

    @Test
    void jobsOfAFolderAreListed() throws IOException {
        begun("a.job.jsonl");
        Session all = Session.run("job", "list", folder.toString());
        assertEquals(0, all.code(), all.err());
        assertTrue(all.out().contains("open, no order of work"), all.out());
        Files.writeString(folder.resolve("b.job.jsonl"), "no event\n");
        Session bad = Session.run("job", "list", folder.toString(), "--json");
        assertEquals(1, bad.code());
        Json.Arr jobs = (Json.Arr) ((Json.Obj) Json.parse(bad.out())).get("jobs");
        assertEquals(2, jobs.items().size());
        assertEquals(2, Session.run("job", "list", "nowhere").code());
    }

    @Test
    void dueVisitsOfAFolderAreListed() throws IOException {
        Path file = begun("a.job.jsonl");
        Session none = Session.run("job", "due", folder.toString(), "--on", "2090-05-12");
        assertEquals(0, none.code(), none.err());
        assertTrue(none.out().contains("none is agreed"), none.out());
        Session said = Session.run(
                "job", "visit", file.toString(), "--by", "R. Imhof", "--date", "2090-05-12", "--for", "gaskets");
        assertEquals(0, said.code(), said.err());
        assertTrue(said.out().contains("2090-05-12: gaskets (R. Imhof)"), said.out());
        Session again = Session.run(
                "job",
                "visit",
                file.toString(),
                "--by",
                "L. Brandt",
                "--device",
                "phone",
                "--date",
                "2090-06-01",
                "--for",
                "later");
        assertEquals(0, again.code(), again.err());
        Session day = Session.run("job", "due", folder.toString(), "--on", "2090-06-01", "--json");
        assertEquals(0, day.code(), day.err());
        assertTrue(day.out().contains("\"today\""), day.out());
        Session late = Session.run("job", "due", folder.toString(), "--on", "2090-06-03");
        assertEquals(1, late.code());
        assertTrue(late.out().contains("OVERDUE by 2 days"), late.out());
        assertTrue(Session.run("job", "list", folder.toString()).out().contains("2090-06-01"));
        assertEquals(
                2,
                Session.run("job", "visit", file.toString(), "--by", "x", "--date", "2016-05-12", "--for", "slip")
                        .code());
        Files.writeString(folder.resolve("b.job.jsonl"), "no event\n");
        Session hidden = Session.run("job", "due", folder.toString(), "--on", "2090-05-01");
        assertEquals(1, hidden.code(), "a job that can't be read may hide a visit");
        assertTrue(hidden.out().contains("b.job.jsonl"), hidden.out());
    }

    private Path read(String name) throws IOException {
        Path file = begun(name);
        String body = Json.object()
                .put("file", "readings.csv")
                .put("text", Files.readString(Session.DEMO.resolve("corbel-reach-3.readings.csv")))
                .build()
                .print();
        assertEquals(0, add(file, "desk", "readings-imported", body).code());
        return file;
    }

    private static Json.Obj json(int code, String... arguments) {
        Session session = Session.run(arguments);
        assertEquals(code, session.code(), session.err());
        return (Json.Obj) Json.parse(session.out());
    }

    /** A log of before meters were stated in it: judged as a table is without {@code --meter}. */
    @Test
    void aLogWithoutTheMetersIsJudgedByTheUsualLimits() throws IOException {
        Path file = read("a.job.jsonl");
        String table = Session.DEMO.resolve("corbel-reach-3.readings.csv").toString();
        Json.Obj ofLog = json(1, "survey", file.toString(), "--json");
        Json.Obj ofTable = json(1, "survey", BANK, table, "--json");
        assertEquals(ofTable.get("units").print(), ofLog.get("units").print());
        assertEquals(Json.of(0.01), ofLog.get("meterLimit"));
        assertTrue(Session.run("survey", file.toString()).out().contains("nobody has stated it"));
        assertTrue(Session.run("job", "show", file.toString()).out().contains("nobody has stated it"));
    }

    @Test
    void theMetersThatALogStatesJudgeItsReadingsEverywhere() throws IOException {
        Path file = read("a.job.jsonl");
        String job = file.toString();
        Session bare = Session.run("job", "meter", job, "--by", "R. Imhof", "--limit", "3");
        assertEquals(2, bare.code());
        assertTrue(bare.err().contains("has no unit"), bare.err());
        assertEquals(
                2,
                Session.run("job", "meter", job, "--by", "R. Imhof", "--limit", "30 %")
                        .code());
        assertEquals(
                0,
                Session.run("job", "meter", job, "--by", "R. Imhof", "--limit", "2 %")
                        .code());
        Session phone = Session.run("job", "meter", job, "--by", "L. Brandt", "--device", "phone", "--limit", "3 %");
        assertEquals(0, phone.code(), phone.err());
        assertTrue(phone.out().contains("every meter not stated by name: ±3 % (L. Brandt)"), phone.out());
        assertFalse(phone.out().contains("±2 %"), "its place is taken");
        assertEquals(
                0,
                Session.run("job", "meter", job, "--by", "R. Imhof", "--instrument", "Bridge 4", "--limit", "0.3 %")
                        .code());
        Json.Obj survey = json(1, "survey", job, "--json");
        assertEquals(Json.of(0.03), survey.get("meterLimit"));
        assertEquals(Json.of(0.003), ((Json.Obj) survey.get("meterLimits")).get("bridge 4"));
        Json.Obj byOption = json(
                1,
                "survey",
                BANK,
                Session.DEMO.resolve("corbel-reach-3.readings.csv").toString(),
                "--meter",
                "3 %",
                "--json");
        assertEquals(byOption.get("units").print(), survey.get("units").print());
        Path report = folder.resolve("report.json");
        assertEquals(0, Session.run("report", job, "-o", report.toString()).code());
        Json.Obj reported = (Json.Obj) ((Json.Obj) Json.parse(Files.readString(report))).get("survey");
        assertEquals(survey.print(), reported.print());
        Session fit = Session.run("fit", job);
        assertTrue(fit.out().contains("Bridge 4: ±0.3 % (R. Imhof)"), fit.out() + fit.err());
        assertEquals(
                Json.parse(Files.readString(report)) instanceof Json.Obj all
                        ? all.get("fit").print()
                        : "",
                json(fit.code(), "fit", job, "--json").print());
    }

    @Test
    void aJobHasItsOwnReadingsAndMeters() throws IOException {
        String job = begun("a.job.jsonl").toString();
        String table = Session.DEMO.resolve("corbel-reach-3.readings.csv").toString();
        Session none = Session.run("survey", job);
        assertEquals(2, none.code());
        assertTrue(none.err().contains("no readings are in this job"), none.err());
        Session both = Session.run("survey", job, table);
        assertEquals(2, both.code());
        assertTrue(both.err().contains("a job log has its own readings"), both.err());
        assertEquals(2, Session.run("fit", job, "--meter", "1 %").code());
        Session missing = Session.run("survey", BANK);
        assertEquals(2, missing.code());
        assertTrue(missing.err().contains("READINGS"), missing.err());
        assertEquals(
                0,
                Session.run("draw", job, "-o", folder.resolve("x.svg").toString())
                        .code());
    }

    @Test
    void aLogIsReported() throws IOException {
        Path file = begun("a.job.jsonl");
        assertEquals(
                0,
                add(file, "desk", "noted", "{\"text\": \"oil under stage 2\"}").code());
        for (String kind : List.of("pdf", "xlsx", "json")) {
            Path target = folder.resolve("report." + kind);
            Session session = Session.run("report", file.toString(), "-o", target.toString());
            assertEquals(0, session.code(), session.err());
            assertTrue(Files.size(target) > 1_000, kind);
        }
        Json.Obj json = (Json.Obj) Json.parse(Files.readString(folder.resolve("report.json")));
        assertEquals(Json.of("Corbel Reach bank 3"), json.get("bank"));
        String target = folder.resolve("r.pdf").toString();
        assertEquals(
                2,
                Session.run("report", file.toString(), "--readings", "x.csv", "-o", target)
                        .code());
        Session nowhere = Session.run("report", file.toString(), "--attachments", "nowhere", "-o", target);
        assertEquals(2, nowhere.code());
        assertTrue(nowhere.err().contains("no such folder"), nowhere.err());
        assertEquals(
                2,
                Session.run("report", BANK, "--attachments", folder.toString(), "-o", target)
                        .code());
        Files.writeString(file, Files.readString(file).replace("\"title\":\"alarm\"", "\"title\":\"other\""));
        add(file, "tablet", "noted", "{\"text\": \"later\"}");
        assertEquals(1, Session.run("report", file.toString(), "-o", target).code(), "a broken chain is said");
    }

    /** Found by JobFoldersLawIT: of two devices' copies only one was asked, and it knew of no visit. */
    @Test
    void aVisitThatOnlyOneCopyKnowsIsDue() throws IOException {
        Path one = begun("a.job.jsonl");
        Path other = Files.copy(one, folder.resolve("b.job.jsonl"));
        for (Path copy : List.of(one, other)) {
            String[] agreed = {
                "job", "visit", copy.toString(), "--by", "R. Imhof", "--date", "2090-05-12", "--for", "gaskets"
            };
            byte[] before = Files.readAllBytes(copy);
            assertEquals(0, Session.run(agreed).code());
            Session due = Session.run("job", "due", folder.toString(), "--on", "2090-05-13");
            assertEquals(1, due.code());
            assertTrue(due.out().contains("OVERDUE by 1 day"), due.out());
            Files.write(copy, before);
        }
    }

    /** Found by JobFoldersLawIT: such a name began a line of its own, and could steer the terminal. */
    @Test
    void theNameOfAFileIsNoPartOfThePage() throws IOException {
        begun("a\u001b[2J\r\nALL DEAD.job.jsonl");
        for (Session session : List.of(
                Session.run("job", "list", folder.toString()),
                Session.run("job", "show", folder.resolve("\u001b[2J").toString()))) {
            assertFalse((session.out() + session.err()).contains("\u001b"), session.out());
            assertFalse((session.out() + session.err()).lines().anyMatch(line -> line.startsWith("ALL DEAD")));
        }
        assertTrue(
                Session.run("job", "list", folder.toString()).out().contains(folder.toString()), "the path as it is");
    }

    /** Two writers at the same time take turns: no number is given twice, no line is lost. */
    @Test
    void writersTakeTurns() throws Exception {
        Path file = begun("a.job.jsonl");
        int each = 8;
        try (ExecutorService pool = Executors.newFixedThreadPool(2)) {
            List<Callable<Integer>> writers = List.of(writer(file, "one", each), writer(file, "two", each));
            for (Future<Integer> done : pool.invokeAll(writers)) {
                assertEquals(each, done.get());
            }
        }
        Session shown = Session.run("job", "show", file.toString(), "--json");
        assertEquals(0, shown.code(), shown.out());
        assertEquals(Json.of(1 + 2 * each), ((Json.Obj) Json.parse(shown.out())).get("events"));
    }

    private static Callable<Integer> writer(Path file, String device, int count) {
        return () -> {
            int written = 0;
            for (int i = 0; i < count; i++) {
                Session session = add(file, device, "noted", "{\"text\": \"" + i + "\"}");
                assertEquals(0, session.code(), session.err());
                written++;
            }
            return written;
        };
    }
}
