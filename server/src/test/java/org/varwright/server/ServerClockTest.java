package org.varwright.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A clock that jumps can't hurt a server that has none: neither it nor the report reads the time. Times come from the lines that devices wrote. */
class ServerClockTest {
    private static final List<String> CLOCKS = List.of(
            "currentTimeMillis",
            "Instant.now",
            "LocalDate.now",
            "LocalDateTime.now",
            "ZonedDateTime.now",
            "java.time.Clock",
            "new Date(");

    @Test
    void noSourceReadsAClock() throws IOException {
        int read = 0;
        for (Path sources : List.of(Path.of("src", "main", "java"), Path.of("..", "report", "src", "main", "java"))) {
            try (Stream<Path> files = Files.walk(sources)) {
                for (Path file :
                        files.filter(f -> f.toString().endsWith(".java")).toList()) {
                    String text = Files.readString(file);
                    read++;
                    assertEquals(
                            List.of(), CLOCKS.stream().filter(text::contains).toList(), file.toString());
                }
            }
        }
        assertTrue(read > 60, "only " + read + " sources were found");
    }
}
