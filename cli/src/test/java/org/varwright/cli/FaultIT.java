package org.varwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import jdk.jfr.Recording;
import jdk.jfr.consumer.RecordedEvent;
import jdk.jfr.consumer.RecordingFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.disk.DurableFile;
import org.varwright.job.Sha256;

/** A full disk, lost permission, a shut pipe, a kill in the middle: files are old or new, never half, and the message says what to do. */
@SuppressWarnings("NullAway.Init") // JUnit sets them
class FaultIT {
    private static final String BANK =
            Session.DEMO.resolve("corbel-reach-3.bank.yaml").toString();
    private static final String OLD = "what stood there before";

    @TempDir
    private Path folder;

    @TempDir
    private Path notes;

    private Path job;

    @BeforeEach
    void aJob() {
        job = folder.resolve("a.job.jsonl");
        done("job", "new", job.toString(), "--bank", BANK, "--title", "alarm", "--name", "spring", "--by", "R. Imhof");
    }

    private static void done(String... args) {
        Session session = Session.run(args);
        assertEquals(0, session.code(), session.err());
    }

    private static String[] note(Path file, String text) {
        return new String[] {
            "job", "add", file.toString(), "noted", "--by", "R. Imhof", "--body", "{\"text\": \"" + text + "\"}"
        };
    }

    private static void assertRefused(Session session, String said) {
        assertEquals(2, session.code(), session.err());
        assertTrue(session.err().contains(said), session.err());
        assertFalse(session.err().contains("fault in the program"), session.err());
    }

    private List<String> names() throws IOException {
        try (var files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .map(f -> folder.relativize(f).toString())
                    .sorted()
                    .toList();
        }
    }

    private Path archive(String photo) throws IOException {
        String hash = Sha256.of(photo);
        Path own = Files.createDirectories(folder.resolve("own"));
        Files.writeString(own.resolve(hash), photo);
        done(
                "job",
                "add",
                job.toString(),
                "attached",
                "--by",
                "R. Imhof",
                "--body",
                "{\"name\": \"a.jpg\", \"mediaType\": \"image/jpeg\", \"sha256\": \"" + hash + "\", \"bytes\": "
                        + photo.length() + "}");
        Path zip = folder.resolve("spring.zip");
        done(exported(zip));
        return zip;
    }

    /** The command that puts the job and its own attachments into an archive. */
    private String[] exported(Path zip) {
        return new String[] {
            "job",
            "export",
            job.toString(),
            "--attachments",
            folder.resolve("own").toString(),
            "-o",
            zip.toString()
        };
    }

    // ---- no room

    /** The event would fit by half: nothing of it stays, the log is whole, and it goes on when there is room. */
    @Test
    void anEventThatDoesNotFitLeavesTheLogAsItWas() throws Exception {
        byte[] before = Files.readAllBytes(job);
        String[] wanted = note(job, "x".repeat(400));
        assertRefused(
                ChildProcess.withRoomFor(notes, before.length + 100).run(wanted),
                "what stood there before still stands");
        assertArrayEquals(before, Files.readAllBytes(job));
        done(wanted);
        done("job", "show", job.toString());
    }

    @Test
    void anOutputThatDoesNotFitLeavesTheOldFile() throws Exception {
        Path zip = archive("x".repeat(300_000));
        Path svg = Files.writeString(folder.resolve("bank.svg"), OLD);
        Path pdf = Files.writeString(folder.resolve("job.pdf"), OLD);
        Path into = folder.resolve("into").resolve("b.job.jsonl");
        byte[] archived = Files.readAllBytes(zip);
        List<String> before = names();
        String[][] commands = {
            {"draw", BANK, "-o", svg.toString()},
            {"report", job.toString(), "-o", pdf.toString()},
            exported(zip),
            {
                "job",
                "merge",
                job.toString(),
                "-o",
                folder.resolve("merged.job.jsonl").toString()
            },
            {"job", "import", zip.toString(), "-o", into.toString()},
        };
        for (String[] command : commands) {
            Session full = ChildProcess.withRoomFor(notes, 6_000).run(command);
            assertRefused(full, "Make room");
            assertEquals(before, names(), command[0] + ": no half file");
        }
        assertEquals(OLD, Files.readString(svg));
        assertEquals(OLD, Files.readString(pdf));
        assertArrayEquals(archived, Files.readAllBytes(zip));
    }

    /** A device that is always full, by the kernel's own word for it; a device is written into, not replaced. */
    @Test
    void aDeviceThatIsFull() throws Exception {
        assertRefused(Session.run("draw", BANK, "-o", "/dev/full"), "No space left on device");
        assertFalse(Files.isRegularFile(Path.of("/dev/full")));
        done("draw", BANK, "-o", "/dev/null");
        assertFalse(Files.isRegularFile(Path.of("/dev/null")));
    }

    /** SQLite's machine code is unpacked at each start: with no room for it a whole database was called damaged. */
    @Test
    void noRoomForTemporaryFilesIsNoDamageOfTheDatabase() throws Exception {
        Path data = folder.resolve("data");
        try (RunningCommand serve = new RunningCommand("serve", "--data", data.toString(), "--port", "0")) {
            assertEquals(0, serve.stop());
        }
        byte[] before = Files.readAllBytes(data.resolve("varwright.sqlite"));
        Session full = ChildProcess.withRoomFor(notes, 400_000).run("serve", "--data", data.toString(), "--port", "0");
        assertRefused(full, "folder for temporary files");
        assertFalse(full.err().contains("damaged"), full.err());
        assertArrayEquals(before, Files.readAllBytes(data.resolve("varwright.sqlite")));
    }

    // ---- standard output

    @Test
    void anAnswerThatCanNotBePrintedIsNotPassedOffAsDone() throws Exception {
        assertRefused(
                ChildProcess.plain(notes).run(new File("/dev/full"), "check", BANK),
                "the answer can't be printed whole");
        assertRefused(
                ChildProcess.plain(notes).inShell("exec \"$@\" >&-", "check", BANK),
                "the answer can't be printed whole");
        // Who reads has seen enough.
        Session enough = ChildProcess.plain(notes).inShell("\"$@\" | true; exit ${PIPESTATUS[0]}", "check", BANK);
        assertEquals(0, enough.code(), enough.err());
        assertEquals("", enough.err());
        Session withoutInput = ChildProcess.plain(notes).inShell("exec \"$@\" <&-", "check", BANK);
        assertEquals(0, withoutInput.code(), withoutInput.err());
    }

    // ---- no permission, wrong things in the place

    @Test
    void aFolderThatMayNotBeWritten() throws Exception {
        Path locked = Files.createDirectories(folder.resolve("locked"));
        Path svg = Files.writeString(locked.resolve("bank.svg"), OLD);
        Path log = Files.copy(job, locked.resolve("b.job.jsonl"));
        Files.setPosixFilePermissions(log, PosixFilePermissions.fromString("r--r--r--"));
        Files.setPosixFilePermissions(locked, PosixFilePermissions.fromString("r-xr-xr-x"));
        ChildProcess child = ChildProcess.withoutOverride(notes);
        try {
            assertRefused(child.run("draw", BANK, "-o", svg.toString()), "permission denied");
            assertRefused(
                    child.run("draw", BANK, "-o", locked.resolve("new.svg").toString()), "permission denied");
            assertRefused(child.run(note(log, "late")), "permission denied");
        } finally {
            Files.setPosixFilePermissions(locked, PosixFilePermissions.fromString("rwxr-xr-x"));
        }
        assertEquals(OLD, Files.readString(svg));
        assertArrayEquals(Files.readAllBytes(job), Files.readAllBytes(log));
    }

    @Test
    void aFolderOrAFileInTheWrongPlace() throws Exception {
        Path there = Files.createDirectories(folder.resolve("there"));
        assertRefused(Session.run("draw", BANK, "-o", there.toString()), "this is a folder");
        Path file = Files.writeString(folder.resolve("file"), OLD);
        assertRefused(
                Session.run("draw", BANK, "-o", file.resolve("x.svg").toString()), "a file where a folder is needed");
        assertEquals(OLD, Files.readString(file));
        assertRefused(Session.run("job", "show", there.toString()), "this is a folder");
    }

    // ---- killed

    /** Killed while the new file is being written, and at any other moment: the old one or the new one, whole. */
    @Test
    void killedWhileItWrites() throws Exception {
        long seed = 20_261_125L;
        Random random = new Random(seed);
        String photo = "x".repeat(20_000_000);
        Path zip = archive(photo);
        byte[] whole = Files.readAllBytes(zip);
        byte[] old = Arrays.copyOf(OLD.getBytes(StandardCharsets.UTF_8), OLD.length());
        int inTheMiddle = 0;
        for (int round = 0; round < 5; round++) {
            Files.write(zip, old);
            Process export = ChildProcess.plain(notes).start(exported(zip));
            while (export.isAlive() && parts().isEmpty()) {
                Thread.onSpinWait();
            }
            export.waitFor(random.nextInt(8), TimeUnit.MILLISECONDS);
            export.destroyForcibly().waitFor();
            byte[] stands = Files.readAllBytes(zip);
            assertTrue(
                    Arrays.equals(stands, old) || Arrays.equals(stands, whole),
                    "seed " + seed + ", round " + round + ": half a file of " + stands.length + " bytes");
            inTheMiddle += parts().isEmpty() ? 0 : 1;
        }
        assertTrue(inTheMiddle > 0, "no kill fell into the writing");
        done(exported(zip));
        assertArrayEquals(whole, Files.readAllBytes(zip));
        assertEquals(List.of(), parts(), "what the killed ones left is cleared away");
    }

    private List<String> parts() throws IOException {
        return names().stream().filter(name -> name.endsWith(".part")).toList();
    }

    /** Killed while it takes in an archive: the job that was there stands, and taking it in again ends well. */
    @Test
    void killedWhileItImports() throws Exception {
        Path zip = archive("x".repeat(20_000_000));
        Path into = folder.resolve("into");
        Path target = Files.createDirectories(into).resolve("b.job.jsonl");
        done(
                "job",
                "import",
                zip.toString(),
                "-o",
                target.toString(),
                "--attachments",
                folder.resolve("own").toString());
        done(note(target, "only here"));
        byte[] before = Files.readAllBytes(target);
        for (int round = 0; round < 3; round++) {
            Process child = ChildProcess.plain(notes).start("job", "import", zip.toString(), "-o", target.toString());
            while (child.isAlive() && parts().isEmpty()) {
                Thread.onSpinWait();
            }
            child.waitFor(5L * round, TimeUnit.MILLISECONDS);
            child.destroyForcibly().waitFor();
            assertArrayEquals(before, Files.readAllBytes(target), "round " + round);
        }
        done("job", "import", zip.toString(), "-o", target.toString());
        assertTrue(Files.readString(target).contains("only here"));
        assertEquals(List.of(), parts());
    }

    /** A name in a folder survives a power cut only when the folder itself was forced, after the name came into it: seen in the runtime's own record of forces. */
    @Test
    void whatIsImportedIsOnTheDiskByItsName() throws Exception {
        Path zip = archive("a photograph");
        Path target = Files.createDirectories(folder.resolve("into")).resolve("b.job.jsonl");
        Path seen = folder.resolve("seen.jfr");
        try (Recording recording = new Recording()) {
            recording.enable("jdk.FileForce").withoutThreshold();
            recording.start();
            done("job", "import", zip.toString(), "-o", target.toString());
            recording.stop();
            recording.dump(seen);
        }
        List<String> forced = RecordingFile.readAllEvents(seen).stream()
                .filter(e -> e.getEventType().getName().equals("jdk.FileForce"))
                .sorted(Comparator.comparing(RecordedEvent::getStartTime))
                .map(e -> String.valueOf(e.getString("path")))
                .toList();
        Path attachments = target.resolveSibling("attachments");
        int photo = forced.indexOf(DurableFile.partOf(attachments.resolve(Sha256.of("a photograph")))
                .toString());
        assertTrue(photo >= 0, "the photograph itself: " + forced);
        assertTrue(
                forced.lastIndexOf(attachments.toString()) > photo, "then the folder that it was moved in: " + forced);
        assertTrue(
                forced.contains(attachments.resolveSibling("").toString()),
                "the folder of the job, with the new folder's name: " + forced);
    }

    /** Writers are killed one after another; every event whose command had ended with success is in the log. */
    @Test
    void killedWhileItAddsEvents() throws Exception {
        long seed = 20_261_127L;
        Random random = new Random(seed);
        int acknowledged = 0;
        for (int i = 0; i < 8; i++) {
            Process child = ChildProcess.plain(notes).start(note(job, "event number " + i + "."));
            if (i % 2 == 0 && !child.waitFor(300 + random.nextInt(500), TimeUnit.MILLISECONDS)) {
                child.destroyForcibly();
            }
            if (child.waitFor() == 0) {
                acknowledged++;
                assertTrue(Files.readString(job).contains("event number " + i + "."), "seed " + seed + ", event " + i);
            }
        }
        assertTrue(acknowledged >= 4, "half of them were left in peace");
        assertEquals(0, Session.run(note(job, "at last")).code(), "no half line stands in the log");
    }

    // ---- half of a file

    @Test
    void anArchiveCutAnywhereWritesNothing() throws Exception {
        byte[] whole = Files.readAllBytes(archive("a photo of stage 2"));
        Path cut = folder.resolve("cut.zip");
        Path back = Files.createDirectories(folder.resolve("back"));
        for (int k = 1; k <= 24; k++) {
            Files.write(cut, Arrays.copyOf(whole, whole.length * k / 25));
            assertRefused(
                    Session.run(
                            "job",
                            "import",
                            cut.toString(),
                            "-o",
                            back.resolve("b.job.jsonl").toString()),
                    "cut.zip");
            try (var left = Files.walk(back)) {
                assertEquals(List.of(), left.filter(Files::isRegularFile).toList(), "cut at " + k + "/25");
            }
        }
    }

    // ---- two at once

    /** A merge over a log into which somebody writes at the same time loses nothing that was acknowledged. */
    @Test
    void aMergeTakesTurnsWithWriters() throws Exception {
        Path other = Files.copy(job, folder.resolve("b.job.jsonl"));
        done(
                "job",
                "add",
                other.toString(),
                "noted",
                "--by",
                "T. Okafor",
                "--device",
                "tablet-b",
                "--body",
                "{\"text\": \"from b\"}");
        Process merge = ChildProcess.plain(notes)
                .inBackground(
                        "while :; do \"$@\" || exit 9; done",
                        "job",
                        "merge",
                        job.toString(),
                        other.toString(),
                        "-o",
                        job.toString());
        try {
            for (int i = 0; i < 40; i++) {
                done(note(job, "written in between " + i + "."));
            }
        } finally {
            merge.descendants().forEach(ProcessHandle::destroyForcibly);
            merge.destroyForcibly().waitFor();
        }
        String text = Files.readString(job);
        for (int i = 0; i < 40; i++) {
            assertTrue(text.contains("written in between " + i + "."), "event " + i);
        }
        assertTrue(text.contains("from b"));
        done("job", "show", job.toString());
    }

    @Test
    void aMergeNeverReplacesAnotherJob() throws Exception {
        Path other = folder.resolve("other.job.jsonl");
        done("job", "new", other.toString(), "--bank", BANK, "--title", "t", "--name", "autumn", "--by", "R. Imhof");
        byte[] before = Files.readAllBytes(other);
        assertEquals(
                2,
                Session.run("job", "merge", job.toString(), "-o", other.toString())
                        .code());
        assertArrayEquals(before, Files.readAllBytes(other));
    }
}
