package org.varwright.archive;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.job.Fact;
import org.varwright.job.JobLog;
import org.varwright.job.Sha256;
import org.varwright.job.Walk;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

/** A job as one file goes out and comes back as it was; a file that is something else is refused, whatever it promises. */
@SuppressWarnings("NullAway.Init") // JUnit sets it
class JobArchiveTest {
    private static final String PHOTO = "a photo of bay 2";
    private static final String HASH = Sha256.of(PHOTO);
    private static final String OTHER = Sha256.of("not here");

    @TempDir
    private Path folder;

    private static JobLog log() throws IOException {
        Walk walk = new Walk("tablet-a", JobLog.empty("spring"), 1_795_000_000_000L);
        walk.yes(new Fact.Opened(
                "alarm",
                Files.readString(Path.of("..", "examples", "tamarack-flats-2.bank.yaml")),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
        walk.yes(new Fact.Attached("a.jpg", "image/jpeg", HASH, PHOTO.length()));
        walk.yes(new Fact.Attached("b.jpg", "image/jpeg", OTHER, 3));
        return walk.job().log();
    }

    private Optional<Path> find(String hash) {
        try {
            return hash.equals(HASH) ? Optional.of(Files.writeString(folder.resolve("x"), PHOTO)) : Optional.empty();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private byte[] written() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertEquals(List.of(OTHER), JobArchive.write(log(), this::find, out));
        return out.toByteArray();
    }

    private Path file(byte[] bytes) throws IOException {
        return Files.write(folder.resolve("job.zip"), bytes);
    }

    @Test
    void itComesBackAsItWas() throws IOException {
        try (OpenArchive archive = OpenArchive.of(file(written()))) {
            assertEquals(log().text(), archive.log().text());
            assertEquals(List.of(HASH), archive.attachments());
            ByteArrayOutputStream photo = new ByteArrayOutputStream();
            archive.copy(HASH, photo);
            assertEquals(PHOTO, photo.toString(StandardCharsets.UTF_8));
        }
    }

    @Test
    void theSameJobIsTheSameBytes() throws IOException {
        assertArrayEquals(written(), written());
    }

    /** Entries in the order given. */
    @SafeVarargs
    @SuppressWarnings("varargs")
    private final Path zip(Map.Entry<String, byte[]>... entries) throws IOException {
        return zip(List.of(entries));
    }

    private Path zip(List<Map.Entry<String, byte[]>> entries) throws IOException {
        Path file = folder.resolve("made.zip");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            for (Map.Entry<String, byte[]> entry : entries) {
                zip.putNextEntry(new ZipEntry(entry.getKey()));
                zip.write(entry.getValue());
                zip.closeEntry();
            }
        }
        return file;
    }

    private static Map.Entry<String, byte[]> entry(String name, String content) {
        return Map.entry(name, content.getBytes(StandardCharsets.UTF_8));
    }

    private static Message refusal(Path file) {
        VarwrightException e = assertThrows(VarwrightException.class, () -> {
            try (OpenArchive archive = OpenArchive.of(file)) {
                archive.log();
                for (String hash : archive.attachments()) {
                    archive.copy(hash, OutputStream.nullOutputStream());
                }
            }
        });
        return e.problems().getFirst().message();
    }

    /** Squeezed by another program it is the same job. */
    @Test
    void whoPackedItAnewChangedNothing() throws IOException {
        try (OpenArchive archive =
                OpenArchive.of(zip(entry("attachments/" + HASH, PHOTO), entry("spring.job.jsonl", log().text())))) {
            assertEquals(log().hash(), archive.log().hash());
        }
    }

    @Test
    void aNameThatIsNoneOfItsOwnIsRefused() throws IOException {
        for (String name : List.of(
                "../evil",
                "attachments/../../evil",
                "/etc/passwd",
                "attachments/" + HASH + "/x",
                "attachments\\" + HASH,
                "C:\\evil",
                "readme.txt",
                "second.job.jsonl",
                "sub/autumn.job.jsonl",
                "attachments/" + HASH.toUpperCase(java.util.Locale.ROOT))) {
            Path file = zip(entry("spring.job.jsonl", log().text()), entry(name, "x"));
            assertEquals(Message.ARCHIVE_ENTRY, refusal(file), name);
        }
        assertEquals(Message.ARCHIVE_ENTRY, refusal(zip(entry("..job.jsonl", log().text()))));
    }

    @Test
    void contentThatIsNotWhatItsNameSaysIsRefused() throws IOException {
        assertEquals(
                Message.ARCHIVE_CHANGED,
                refusal(zip(entry("spring.job.jsonl", log().text()), entry("attachments/" + HASH, "another photo"))));
        assertEquals(Message.ARCHIVE_JOB, refusal(zip(entry("autumn.job.jsonl", log().text()))));
        assertEquals(Message.JOB_EMPTY, refusal(zip(entry("spring.job.jsonl", "no event\n"))));
    }

    /** Thirty megabytes of noughts squeeze to thirty kilobytes; no more than an attachment may have is unpacked. */
    @Test
    void aBombIsNotUnpacked() throws IOException {
        byte[] noughts = new byte[30 * 1024 * 1024];
        assertEquals(
                Message.ARCHIVE_LARGE,
                refusal(zip(entry("spring.job.jsonl", log().text()), Map.entry("attachments/" + HASH, noughts))));
        assertEquals(Message.ARCHIVE_LARGE, refusal(zip(Map.entry("spring.job.jsonl", noughts))));
    }

    @Test
    void manyEntriesAreNotRead() throws IOException {
        List<Map.Entry<String, byte[]>> entries = new ArrayList<>();
        for (int i = 0; i <= 2_000; i++) {
            entries.add(entry("attachments/" + Sha256.of("n" + i), ""));
        }
        assertEquals(Message.ARCHIVE_NOT_ONE, refusal(zip(entries)));
    }

    @Test
    void whatIsNoArchiveIsSaid() throws IOException {
        byte[] good = written();
        assertEquals(Message.ARCHIVE_NOT_ONE, refusal(file(new byte[0])));
        assertEquals(Message.ARCHIVE_NOT_ONE, refusal(file("a letter".getBytes(StandardCharsets.UTF_8))));
        assertEquals(Message.ARCHIVE_NOT_ONE, refusal(file(Arrays.copyOf(good, good.length / 2))));
        assertEquals(Message.ARCHIVE_NOT_ONE, refusal(zip(entry("attachments/" + HASH, PHOTO))));
    }

    /** A byte changed anywhere is told, or changes nothing that was read. */
    @Test
    void noChangedByteIsTakenForTheJob() throws IOException {
        byte[] good = written();
        int told = 0;
        for (int at = 0; at < good.length; at += 7) {
            byte[] bad = good.clone();
            bad[at] ^= 0x41;
            try (OpenArchive archive = OpenArchive.of(file(bad))) {
                JobLog log = archive.log();
                for (String hash : archive.attachments()) {
                    archive.copy(hash, OutputStream.nullOutputStream());
                }
                assertEquals(log().hash(), log.hash(), "byte " + at);
            } catch (VarwrightException e) {
                told++;
            }
        }
        assertTrue(told > good.length / 7 / 2, told + " of " + good.length / 7 + " were told");
    }
}
