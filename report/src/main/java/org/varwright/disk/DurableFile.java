package org.varwright.disk;

import java.io.BufferedOutputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Writes a file beside its place, onto the disk, and then moves it there: whoever looks finds the old one or the new one, never a half. */
public final class DurableFile {
    private static final Pattern PART = Pattern.compile("\\..+\\.([0-9]{1,18})\\.part");

    private DurableFile() {}

    /** Writes into a stream and gives a result. */
    public interface Writing<T> {
        T to(OutputStream out) throws IOException;
    }

    /**
     * Writes; the new file is on disk when this returns. What an earlier process left behind when it was killed is cleared away.
     *
     * @throws IOException where it can't be written; what stood there still stands
     */
    public static <T> T write(Path path, Writing<T> writing) throws IOException {
        if (isDevice(path)) {
            try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(path))) {
                return writing.to(out);
            }
        }
        Path file = Files.exists(path) ? path.toRealPath() : path.toAbsolutePath();
        Path folder = file.resolveSibling("");
        Files.createDirectories(folder);
        clearLeftovers(folder);
        Path part = partOf(file);
        try {
            T result = written(part, writing);
            Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
            forceFolder(folder);
            return result;
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /** Where a file is written before it is moved into place. The process is in the name: two that write the same file never write into one another's part. */
    public static Path partOf(Path file) {
        return file.resolveSibling(
                "." + file.getFileName() + "." + ProcessHandle.current().pid() + ".part");
    }

    /** A device or a pipe is written into; a file moved there would take its place. */
    private static boolean isDevice(Path path) {
        return Files.exists(path) && !Files.isRegularFile(path) && !Files.isDirectory(path);
    }

    private static <T> T written(Path part, Writing<T> writing) throws IOException {
        try (FileChannel channel = FileChannel.open(
                        part,
                        StandardOpenOption.CREATE,
                        StandardOpenOption.TRUNCATE_EXISTING,
                        StandardOpenOption.WRITE);
                OutputStream out = new BufferedOutputStream(new Unbroken(Channels.newOutputStream(channel)))) {
            T result = writing.to(out);
            out.flush();
            channel.force(true);
            return result;
        }
    }

    /** A writer may close its stream; the file is closed only when it is on disk. */
    private static final class Unbroken extends FilterOutputStream {
        Unbroken(OutputStream out) {
            super(out);
        }

        @Override
        public void write(byte[] bytes, int from, int count) throws IOException {
            out.write(bytes, from, count);
        }

        @Override
        public void close() throws IOException {
            flush();
        }
    }

    /**
     * Forces a folder: a new name in it is on disk only then.
     *
     * @throws IOException where the disk fails
     */
    public static void forceFolder(Path folder) throws IOException {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    /**
     * Moves files that are on disk already to their places in one folder; all are on disk there when this returns.
     *
     * @param places by what is moved
     * @throws IOException where that can't be done
     */
    public static void moveAll(Map<Path, Path> places, Path folder) throws IOException {
        for (Map.Entry<Path, Path> place : places.entrySet()) {
            Files.move(place.getKey(), place.getValue(), StandardCopyOption.REPLACE_EXISTING);
        }
        if (!places.isEmpty()) {
            forceFolder(folder);
        }
    }

    /**
     * Deletes parts of processes that are no more.
     *
     * @throws IOException where that can't be done
     */
    public static void clearLeftovers(Path folder) throws IOException {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, ".*.part")) {
            for (Path file : files) {
                Matcher part = PART.matcher(file.getFileName().toString());
                if (part.matches()
                        && ProcessHandle.of(Long.parseLong(part.group(1))).isEmpty()) {
                    Files.deleteIfExists(file);
                }
            }
        }
    }
}
