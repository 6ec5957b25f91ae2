package org.varwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.varwright.disk.DiskTrouble;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** A folder of jobs. */
final class JobFolder {
    static final String ENDING = ".job.jsonl";

    private JobFolder() {}

    /**
     * Its jobs by name.
     *
     * @throws VarwrightException {@code FOLDER_MISSING}, {@code FILE_UNREADABLE}
     */
    static List<Path> files(Path folder) {
        Place place = new Place(folder.toString(), 0, 0, "");
        if (!Files.isDirectory(folder)) {
            throw new VarwrightException(Message.FOLDER_MISSING, place);
        }
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(f -> f.toString().endsWith(ENDING)).sorted().toList();
        } catch (IOException e) {
            throw new VarwrightException(Message.FILE_UNREADABLE, place, DiskTrouble.of(e));
        }
    }
}
