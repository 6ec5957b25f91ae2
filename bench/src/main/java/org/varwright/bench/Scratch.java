package org.varwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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

    @Override
    public void close() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(folder);
    }
}
