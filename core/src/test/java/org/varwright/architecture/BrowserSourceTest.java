package org.varwright.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What compiles for the browser and fails there when it runs; each was found by a shared vector. */
class BrowserSourceTest {
    private static final Map<String, String> FORBIDDEN = Map.of(
            ".distinct()",
            "the browser's streams let equal items through: collect into a set",
            "%%",
            "the browser's formatter takes an argument for a doubled percent sign: append \" %\"",
            "\\\\p{",
            "the browser's regular expressions know no Unicode classes: test the characters by hand",
            "java.util.Base64",
            "the browser's decoder lets texts through that are none: task.Base64 doesn't");

    @Test
    void coreUsesNothingThatFailsInTheBrowserWhenItRuns() throws IOException {
        List<Path> sources;
        try (Stream<Path> walk = Files.walk(Path.of("src", "main", "java"))) {
            sources = walk.filter(path -> path.toString().endsWith(".java"))
                    .sorted()
                    .toList();
        }
        assertTrue(sources.size() > 50, "sources not found");
        List<String> found = new ArrayList<>();
        for (Path source : sources) {
            String text = Files.readString(source);
            FORBIDDEN.forEach((what, why) -> {
                if (text.contains(what)) {
                    found.add(source + ": " + why);
                }
            });
        }
        assertEquals(List.of(), found);
    }
}
