package org.varwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.varwright.disk.DiskTrouble;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** Reads files that a person names. */
final class InputFile {
    /** No file of this product is near it; a larger one is the wrong file. */
    private static final int LARGEST_BYTES = 16 * 1024 * 1024;

    private InputFile() {}

    /**
     * Requires a file.
     *
     * @throws VarwrightException {@code FILE_MISSING}, {@code FILE_IS_A_FOLDER}
     */
    static Place require(Path path) {
        Place place = new Place(path.toString(), 0, 0, "");
        if (!Files.exists(path)) {
            throw new VarwrightException(Message.FILE_MISSING, place);
        }
        if (Files.isDirectory(path)) {
            throw new VarwrightException(Message.FILE_IS_A_FOLDER, place);
        }
        return place;
    }

    /**
     * The bytes of the file, in bounded memory.
     *
     * @throws VarwrightException {@code FILE_…}: missing, a folder, unreadable, too large
     */
    static byte[] read(Path path) {
        Place place = require(path);
        try (InputStream in = Files.newInputStream(path)) {
            byte[] bytes = in.readNBytes(LARGEST_BYTES + 1);
            if (bytes.length > LARGEST_BYTES) {
                throw new VarwrightException(
                        Message.FILE_NOT_OURS,
                        place,
                        String.valueOf(Files.size(path) / (1024 * 1024)),
                        String.valueOf(LARGEST_BYTES / (1024 * 1024)));
            }
            return bytes;
        } catch (IOException e) {
            throw new VarwrightException(Message.FILE_UNREADABLE, place, DiskTrouble.of(e));
        }
    }
}
