package org.varwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** Writes files that a person names: whole or not at all. */
final class OutputFile {
    private OutputFile() {}

    /**
     * Writes beside the target first and then moves into place, so that a full disk or a crash leaves the old file as it was.
     *
     * @throws VarwrightException {@code FILE_IS_A_FOLDER} or {@code FILE_UNWRITABLE}
     */
    static void write(Path path, byte[] bytes) {
        Place place = new Place(path.toString(), 0, 0, "");
        if (Files.isDirectory(path)) {
            throw new VarwrightException(Message.FILE_IS_A_FOLDER, place);
        }
        Path folder = path.resolveSibling("");
        try {
            Files.createDirectories(folder.toAbsolutePath());
            Path part = folder.resolve("." + path.getFileName() + ".part");
            try {
                Files.write(part, bytes);
                Files.move(part, path, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (IOException e) {
            throw new VarwrightException(Message.FILE_UNWRITABLE, place, String.valueOf(e.getMessage()));
        }
    }
}
