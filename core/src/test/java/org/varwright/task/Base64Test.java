package org.varwright.task;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class Base64Test {
    /** RFC 4648, section 10. */
    @ParameterizedTest
    @CsvSource({"'',''", "f,Zg==", "fo,Zm8=", "foo,Zm9v", "foob,Zm9vYg==", "fooba,Zm9vYmE=", "foobar,Zm9vYmFy"})
    void theVectorsOfTheStandard(String bytes, String text) {
        assertArrayEquals(
                bytes.getBytes(StandardCharsets.US_ASCII), Base64.decode(text).orElseThrow());
    }

    @ParameterizedTest
    @ValueSource(strings = {"*", "A", "AA", "AAA", "A===", "====", "Zm9v\n", "Zh==", "Zm9", "Zm=v", "Zm9vÄÄÄÄ", "Zm-_"})
    void whatIsNoneIsRefused(String text) {
        assertTrue(Base64.decode(text).isEmpty(), text);
    }

    /** As the runtime's own decoder has it. */
    @Test
    void anyBytesComeBack() {
        for (long seed = 1; seed <= 200; seed++) {
            byte[] bytes = new byte[(int) seed];
            new SplittableRandom(seed).nextBytes(bytes);
            String text = java.util.Base64.getEncoder().encodeToString(bytes);
            assertArrayEquals(bytes, Base64.decode(text).orElseThrow(), "seed " + seed);
            assertEquals(seed, Base64.decode(text).orElseThrow().length);
        }
    }
}
