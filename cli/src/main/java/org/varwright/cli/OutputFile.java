package org.varwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.varwright.disk.DiskTrouble;
import org.varwright.disk.DurableFile;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** Writes files that a person names: whole or not at all. */
final class OutputFile {
    private OutputFile() {}

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
    static <T> T stream(Path path, DurableFile.Writing<T> writing) {
        Place place = new Place(path.toString(), 0, 0, "");
        if (Files.isDirectory(path)) {
            throw new VarwrightException(Message.FILE_IS_A_FOLDER, place);
        }
        try {
            return DurableFile.write(path, writing);
        } catch (IOException e) {
            throw new VarwrightException(Message.FILE_UNWRITABLE, place, DiskTrouble.of(e));
        }
    }
}
