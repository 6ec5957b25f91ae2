package org.varwright.cli;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** Writes files that a person names: whole or not at all. */
final class OutputFile {
    private OutputFile() {}

    /** Writes into a stream and gives a result. */
    interface Writing<T> {
        T to(OutputStream out) throws IOException;
    }

    /** Writes bytes as {@link #stream} does. */
    static void write(Path path, byte[] bytes) {
        stream(path, out -> {
            out.write(bytes);
            return bytes.length;
        });
    }

    /**
     * Writes beside the target first and then moves into place, so that a full disk or a crash leaves the old file as it was.
     *
     * @throws VarwrightException {@code FILE_IS_A_FOLDER} or {@code FILE_UNWRITABLE}
     */
    static <T> T stream(Path path, Writing<T> writing) {
        Place place = new Place(path.toString(), 0, 0, "");
        if (Files.isDirectory(path)) {
            throw new VarwrightException(Message.FILE_IS_A_FOLDER, place);
        }
        Path folder = path.resolveSibling("");
        try {
            Files.createDirectories(folder.toAbsolutePath());
            Path part = folder.resolve("." + path.getFileName() + ".part");
            try {
                T result;
                try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(part))) {
                    result = writing.to(out);
                }
                Files.move(part, path, StandardCopyOption.REPLACE_EXISTING);
                return result;
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (IOException e) {
            throw new VarwrightException(Message.FILE_UNWRITABLE, place, String.valueOf(e.getMessage()));
        }
    }
}
