package org.varwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/**
 * A folder for the files of other programs, deleted when closed.
 *
 * @param folder the folder
 */
record Scratch(Path folder) implements AutoCloseable {
    static Scratch create() throws IOException {
        return new Scratch(Files.createTempDirectory("varwright-bench"));
    }

    /** On the disk that holds this folder. */
    static Scratch in(Path parent) throws IOException {
        return new Scratch(Files.createTempDirectory(Files.createDirectories(parent), "scratch"));
    }

    @Override
    public void close() throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
