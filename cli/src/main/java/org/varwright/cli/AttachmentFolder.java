package org.varwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.varwright.disk.DiskTrouble;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.report.InputFile;
import org.varwright.report.Photos;

/** Attachments in a folder, each under the hash of what is in it: {@code HASH}, or {@code ab/HASH} as the server keeps them. */
final class AttachmentFolder implements Photos {
    /** What the server takes, too. */
    static final int LARGEST_BYTES = 25 * 1024 * 1024;

    private final Path folder;

    /**
     * The attachments of a folder.
     *
     * @throws VarwrightException {@code FOLDER_MISSING} where there is no such folder
     */
    AttachmentFolder(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw new VarwrightException(Message.FOLDER_MISSING, new Place(folder.toString(), 0, 0, ""));
        }
        this.folder = folder;
    }

    /** The bytes, where a file of that name holds just what the name says. */
    @Override
    public Optional<byte[]> find(String sha256) {
        return file(sha256).map(AttachmentFolder::bytes);
    }

    /** The file, where it holds just what its name says. */
    Optional<Path> file(String sha256) {
        if (!sha256.matches("[0-9a-f]{64}")) {
            return Optional.empty();
        }
        for (Path file : List.of(
                folder.resolve(sha256), folder.resolve(sha256.substring(0, 2)).resolve(sha256))) {
            if (Files.isRegularFile(file)) {
                byte[] bytes = bytes(file);
                if (bytes.length <= LARGEST_BYTES
                        && InputFile.of("", "", bytes).sha256().equals(sha256)) {
                    return Optional.of(file);
                }
            }
        }
        return Optional.empty();
    }

    private static byte[] bytes(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(LARGEST_BYTES + 1);
        } catch (IOException e) {
            throw new VarwrightException(
                    Message.FILE_UNREADABLE, new Place(file.toString(), 0, 0, ""), DiskTrouble.of(e));
        }
    }
}
