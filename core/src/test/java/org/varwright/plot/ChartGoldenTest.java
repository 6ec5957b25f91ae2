package org.varwright.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** One chart to the letter. After an intended change, run with {@code -Dvarwright.record=true} and look at the picture before committing it. */
class ChartGoldenTest {
    private static final Path GOLDEN = Path.of("src/test/resources/plot/decay.svg");

    @Test
    void theDecaySample() throws IOException {
        String svg = Samples.decay().svg(Width.PAGE);
        if (Boolean.getBoolean("varwright.record")) {
            Files.writeString(GOLDEN, svg);
        }
        assertEquals(Files.readString(GOLDEN), svg);
    }
}
