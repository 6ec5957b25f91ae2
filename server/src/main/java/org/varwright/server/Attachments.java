package org.varwright.server;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
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

/** Photos and files, each under the hash of what is in it. */
final class Attachments {
    static final long LARGEST_BYTES = 25L * 1024 * 1024;
    static final Pattern HASH = Pattern.compile("[0-9a-f]{64}");

    private final Path folder;

    private Attachments(Path folder) {
        this.folder = folder;
    }

    static Attachments in(Path folder) throws IOException {
        Files.createDirectories(folder);
        return new Attachments(folder);
    }

    /** The file of that hash; empty where there is none. */
    Optional<Path> find(String sha256) {
        return Optional.of(path(sha256)).filter(Files::exists);
    }

    /**
     * Keeps what the stream gives, in bounded memory; it is on disk when this returns.
     *
     * @return false where it was there already
     * @throws Refusal 413 where it is too large, 422 where its hash is another one
     */
    boolean keep(String sha256, InputStream content) throws IOException {
        Path target = path(sha256);
        if (Files.exists(target)) {
            return false;
        }
        Path part = Files.createTempFile(folder, "part-", "");
        try {
            String found = copy(content, part);
            if (!found.equals(sha256)) {
                throw Refusal.of(
                        422,
                        "the content has the hash " + found + ", not " + sha256
                                + "; it was changed on its way, send it again");
            }
            Files.createDirectories(folderOf(target));
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
            force(folderOf(target));
            return true;
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private static String copy(InputStream content, Path part) throws IOException {
        DigestInputStream in = new DigestInputStream(content, sha256());
        try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE);
                OutputStream out = Channels.newOutputStream(channel)) {
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
                out.write(buffer, 0, n);
            }
            channel.force(true);
        }
        return HexFormat.of().formatHex(in.getMessageDigest().digest());
    }

    /** A new name in a folder is on disk only when the folder is. */
    private static void force(Path folder) throws IOException {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
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
