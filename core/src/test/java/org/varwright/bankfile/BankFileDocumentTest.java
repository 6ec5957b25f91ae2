package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.varwright.problem.Problem;

/** What the manual shows is what the reader reads. */
class BankFileDocumentTest {
    private static String manual() {
        try {
            return Files.readString(Path.of("..", "docs", "bank-file.md"));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void theExampleInTheManualIsRight() {
        List<String> found = new ArrayList<>();
        Matcher matcher = Pattern.compile("(?s)```yaml\n(.*?)```").matcher(manual());
        while (matcher.find()) {
            found.add(matcher.group(1));
        }
        assertEquals(1, found.size());
        BankReading reading = BankFile.read("bank-file.md", found.getFirst().getBytes(StandardCharsets.UTF_8));
        assertEquals(List.of(), reading.errors().stream().map(Problem::print).toList());
        assertEquals(List.of(), reading.warnings().stream().map(Problem::print).toList());
        assertEquals(6, reading.requireBank().positions().size());
    }

    @Test
    void everyKeyIsInTheManual() {
        String manual = manual();
        for (Section section : Section.ALL) {
            for (String key : section.readableKeys()) {
                assertTrue(
                        Pattern.compile("[`{, ]" + Pattern.quote(key) + "[`:,} ]")
                                .matcher(manual)
                                .find(),
                        section.name() + "." + key + " is not in docs/bank-file.md");
            }
        }
    }
}
