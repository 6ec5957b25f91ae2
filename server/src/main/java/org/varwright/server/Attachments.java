package org.varwright.server;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import java.util.regex.Pattern;
import org.varwright.disk.DurableFile;

/** Photos and files, each under the hash of what is in it. */
final class Attachments {
    static final long LARGEST_BYTES = 25L * 1024 * 1024;
    static final Pattern HASH = Pattern.compile("[0-9a-f]{64}");

    private static final String PART = "part-";

    private final Path folder;

    private Attachments(Path folder) {
        this.folder = folder;
    }

    /** The folder; made where it is missing, and cleared of uploads that a killed server left half done. */
    static Attachments in(Path folder) throws IOException {
        Files.createDirectories(folder);
        try (DirectoryStream<Path> parts = Files.newDirectoryStream(folder, PART + "*")) {
            for (Path part : parts) {
                Files.deleteIfExists(part);
            }
        }
        return new Attachments(folder);
    }

    /** The file of that hash; empty where there is none, or where it was damaged on the disk: then it can be sent again. */
    Optional<Path> find(String sha256) {
        Path file = path(sha256);
        return isWhole(file, sha256) ? Optional.of(file) : Optional.empty();
    }

    private static boolean isWhole(Path file, String sha256) {
        if (!Files.isRegularFile(file)) {
            return false;
        }
        try (DigestInputStream in = new DigestInputStream(Files.newInputStream(file), sha256())) {
            in.transferTo(OutputStream.nullOutputStream());
            return HexFormat.of().formatHex(in.getMessageDigest().digest()).equals(sha256);
        } catch (IOException e) {
            return false;
        }
    }

    /**
     * Keeps what the stream gives, in bounded memory; it is on disk when this returns.
     *
     * @return false where it was there already
     * @throws Refusal 413 where it is too large, 422 where its hash is another one, 507 or 503 where the disk does not take it
     * @throws IOException where the stream ends too early
     */
    boolean keep(String sha256, InputStream content) throws IOException {
        Path target = path(sha256);
        if (isWhole(target, sha256)) {
            return false;
        }
        Path part = disk(() -> Files.createTempFile(folder, PART, ""));
        try {
            String found = copy(content, part);
            if (!found.equals(sha256)) {
                throw Refusal.of(
                        422,
                        "the content has the hash " + found + ", not " + sha256
                                + "; it was changed on its way, send it again");
            }
            disk(() -> {
                Files.createDirectories(folderOf(target));
                Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
                DurableFile.forceFolder(folderOf(target));
                return target;
            });
            return true;
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /** Something done on this disk, whose faults are not those of the sender. */
    private interface DiskWork<T> {
        T done() throws IOException;
    }

    private static <T> T disk(DiskWork<T> work) {
        try {
            return work.done();
        } catch (IOException e) {
            throw StorageFault.of(e).refusal();
        }
    }

    private static String copy(InputStream content, Path part) throws IOException {
        DigestInputStream in = new DigestInputStream(content, sha256());
        try (FileChannel channel = disk(() -> FileChannel.open(part, StandardOpenOption.WRITE))) {
            byte[] buffer = new byte[64 * 1024];
            long size = 0;
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                size += n;
                if (size > LARGEST_BYTES) {
                    throw Refusal.of(
                            413,
                            "an attachment has at most " + LARGEST_BYTES / (1024 * 1024)
                                    + " MB; make the photo smaller");
                }
                write(channel, ByteBuffer.wrap(buffer, 0, n));
            }
            disk(() -> {
                channel.force(true);
                return channel;
            });
        }
        return HexFormat.of().formatHex(in.getMessageDigest().digest());
    }

    private static void write(FileChannel channel, ByteBuffer bytes) {
        while (bytes.hasRemaining()) {
            disk(() -> channel.write(bytes));
        }
    }

    private Path path(String sha256) {
        if (!HASH.matcher(sha256).matches()) {
            throw Refusal.of(404, "an attachment is named by its SHA-256, 64 small hexadecimal digits");
        }
        return folder.resolve(sha256.substring(0, 2)).resolve(sha256);
    }

    private static Path folderOf(Path file) {
        return file.resolveSibling("");
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new UncheckedIOException(new IOException(e));
        }
    }
}
