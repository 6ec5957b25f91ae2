package org.varwright.archive;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.varwright.job.Fact;
import org.varwright.job.JobLog;
import org.varwright.job.LoggedEvent;

/**
 * Writes a job as one ZIP file: {@code NAME.job.jsonl}, then {@code attachments/HASH} by hash. Nothing in it is squeezed and every entry has the same time, so that the same
 * job is the same bytes, whoever writes it.
 */
public final class JobArchive {
    static final String LOG_ENDING = ".job.jsonl";
    static final String FOLDER = "attachments/";

    private static final LocalDateTime ANY_TIME = LocalDateTime.of(2000, 1, 1, 0, 0);

    private JobArchive() {}

    /** Where attachments lie. */
    @FunctionalInterface
    public interface Source {
        /** The file with that content; empty where it is not at hand. */
        Optional<Path> find(String sha256);
    }

    /** Hashes of everything that the log names, sorted: attachments, and photographs of steps. */
    public static List<String> attachments(JobLog log) {
        TreeSet<String> hashes = new TreeSet<>();
        for (LoggedEvent event : log.events()) {
            switch (event.event().fact()) {
                case Fact.Attached attached -> hashes.add(attached.sha256());
                case Fact.StepConfirmed confirmed -> confirmed.photo().ifPresent(hashes::add);
                default -> {
                    // names no file
                }
            }
        }
        hashes.removeIf(hash -> !hash.matches("[0-9a-f]{64}"));
        return List.copyOf(hashes);
    }

    /**
     * Writes the archive and leaves the stream open.
     *
     * @return hashes of attachments that are not at hand, and so not in it
     */
    public static List<String> write(JobLog log, Source source, OutputStream out) throws IOException {
        List<String> missing = new ArrayList<>();
        ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
        zip.setMethod(ZipOutputStream.STORED);
        byte[] lines = log.text().getBytes(StandardCharsets.UTF_8);
        CRC32 sum = new CRC32();
        sum.update(lines);
        zip.putNextEntry(entry(log.job() + LOG_ENDING, lines.length, sum.getValue()));
        zip.write(lines);
        zip.closeEntry();
        for (String hash : attachments(log)) {
            Optional<Path> file = source.find(hash);
            if (file.isEmpty()) {
                missing.add(hash);
            } else {
                zip.putNextEntry(entry(FOLDER + hash, Files.size(file.get()), sum(file.get())));
                Files.copy(file.get(), zip);
                zip.closeEntry();
            }
        }
        zip.finish();
        return missing;
    }

    private static ZipEntry entry(String name, long size, long sum) {
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(ANY_TIME);
        entry.setSize(size);
        entry.setCompressedSize(size);
        entry.setCrc(sum);
        return entry;
    }

    private static long sum(Path file) throws IOException {
        CRC32 sum = new CRC32();
        try (InputStream in = Files.newInputStream(file)) {
            byte[] buffer = new byte[64 * 1024];
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                sum.update(buffer, 0, n);
            }
        }
        return sum.getValue();
    }
}
