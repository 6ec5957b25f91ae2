package org.varwright.archive;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Collections;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.varwright.disk.DiskTrouble;
import org.varwright.job.JobEvent;
import org.varwright.job.JobLog;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** A job archive that is being read. Whoever wrote it, it is read in bounded memory, and no name in it becomes a path. */
public final class OpenArchive implements AutoCloseable {
    private static final int MEGABYTE = 1024 * 1024;
    private static final int LARGEST_LOG_BYTES = 16 * MEGABYTE;
    private static final int LARGEST_ATTACHMENT_BYTES = 25 * MEGABYTE;
    private static final int MOST_ENTRIES = 2_000;

    private final Path file;
    private final ZipFile zip;
    private final ZipEntry logEntry;
    private final Map<String, ZipEntry> attachments;

    private OpenArchive(Path file, ZipFile zip, ZipEntry logEntry, Map<String, ZipEntry> attachments) {
        this.file = file;
        this.zip = zip;
        this.logEntry = logEntry;
        this.attachments = attachments;
    }

    /**
     * Opens an archive and looks at every name in it.
     *
     * @throws VarwrightException {@code ARCHIVE_NOT_ONE}, {@code ARCHIVE_ENTRY}
     */
    public static OpenArchive of(Path file) {
        Place place = new Place(file.toString(), 0, 0, "");
        try {
            ZipFile zip = new ZipFile(file.toFile(), StandardCharsets.UTF_8);
            boolean isGood = false;
            try {
                OpenArchive archive = of(file, zip, place);
                isGood = true;
                return archive;
            } finally {
                if (!isGood) {
                    zip.close();
                }
            }
        } catch (ZipException e) {
            throw new VarwrightException(Message.ARCHIVE_NOT_ONE, place, "it is no ZIP file that can be read");
        } catch (IOException e) {
            throw new VarwrightException(Message.FILE_UNREADABLE, place, DiskTrouble.of(e));
        }
    }

    private static OpenArchive of(Path file, ZipFile zip, Place place) {
        List<? extends ZipEntry> entries = Collections.list(zip.entries());
        if (entries.size() > MOST_ENTRIES) {
            throw new VarwrightException(
                    Message.ARCHIVE_NOT_ONE,
                    place,
                    "it has " + entries.size() + " entries, at most " + MOST_ENTRIES + " are read");
        }
        Optional<ZipEntry> log = Optional.empty();
        Map<String, ZipEntry> attachments = new LinkedHashMap<>();
        for (ZipEntry entry : entries) {
            String name = entry.getName();
            if (isLog(name) && log.isEmpty()) {
                log = Optional.of(entry);
            } else if (name.matches(JobArchive.FOLDER + "[0-9a-f]{64}")) {
                if (attachments.put(name.substring(JobArchive.FOLDER.length()), entry) != null) {
                    throw new VarwrightException(Message.ARCHIVE_ENTRY, place, name);
                }
            } else if (!name.equals(JobArchive.FOLDER)) {
                throw new VarwrightException(Message.ARCHIVE_ENTRY, place, name);
            }
        }
        return new OpenArchive(
                file,
                zip,
                log.orElseThrow(() -> new VarwrightException(
                        Message.ARCHIVE_NOT_ONE, place, "there is no NAME" + JobArchive.LOG_ENDING + " in it")),
                attachments);
    }

    private static boolean isLog(String name) {
        return name.endsWith(JobArchive.LOG_ENDING)
                && JobEvent.isName(name.substring(0, name.length() - JobArchive.LOG_ENDING.length()));
    }

    /**
     * The log.
     *
     * @throws VarwrightException {@code ARCHIVE_LARGE}, {@code ARCHIVE_JOB}, or what is wrong with the log as a whole
     */
    public JobLog log() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        copy(logEntry, LARGEST_LOG_BYTES, out);
        JobLog log = JobLog.read(file + " [" + logEntry.getName() + "]", out.toString(StandardCharsets.UTF_8));
        if (!logEntry.getName().equals(log.job() + JobArchive.LOG_ENDING)) {
            throw new VarwrightException(Message.ARCHIVE_JOB, place(), logEntry.getName(), log.job());
        }
        return log;
    }

    /** Hashes of the attachments in it, as they stand in it. */
    public List<String> attachments() {
        return List.copyOf(attachments.keySet());
    }

    /**
     * Copies an attachment. What was written is to be thrown away where this throws.
     *
     * @throws UncheckedIOException where it can't be written there
     * @throws VarwrightException {@code ARCHIVE_CHANGED} where its content has another hash, {@code ARCHIVE_LARGE}
     */
    public void copy(String sha256, OutputStream out) {
        ZipEntry entry = attachments.get(sha256);
        if (entry == null) {
            throw new IllegalArgumentException("no attachment " + sha256);
        }
        if (!copy(entry, LARGEST_ATTACHMENT_BYTES, out).equals(sha256)) {
            throw new VarwrightException(Message.ARCHIVE_CHANGED, place(), sha256);
        }
    }

    /** Copies no more than that many bytes, whatever the archive says of its sizes; the hash of what was copied. */
    private String copy(ZipEntry entry, int most, OutputStream out) {
        try (InputStream in = zip.getInputStream(entry)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            CRC32 sum = new CRC32();
            byte[] buffer = new byte[64 * 1024];
            long size = 0;
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                size += n;
                if (size > most) {
                    throw new VarwrightException(
                            Message.ARCHIVE_LARGE, place(), entry.getName(), String.valueOf(most / MEGABYTE));
                }
                digest.update(buffer, 0, n);
                sum.update(buffer, 0, n);
                put(out, buffer, n);
            }
            // The library holds no entry against its sum.
            if (sum.getValue() != entry.getCrc()) {
                throw new ZipException("its checksum does not fit");
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (ZipException e) {
            throw new VarwrightException(
                    Message.ARCHIVE_NOT_ONE, place(), entry.getName() + " can't be unpacked: " + e.getMessage());
        } catch (IOException e) {
            throw new VarwrightException(
                    Message.ARCHIVE_NOT_ONE, place(), entry.getName() + " can't be copied: " + e.getMessage());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** A fault where it goes to is not one of the archive. */
    private static void put(OutputStream out, byte[] buffer, int count) {
        try {
            out.write(buffer, 0, count);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Place place() {
        return new Place(file.toString(), 0, 0, "");
    }

    @Override
    public void close() {
        try {
            zip.close();
        } catch (IOException e) {
            throw new VarwrightException(Message.FILE_UNREADABLE, place(), DiskTrouble.of(e));
        }
    }
}
