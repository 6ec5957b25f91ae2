package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers read out of bytes against {@link Double#parseDouble}, to the last bit. */
class NumberScannerOracleTest {
    private static final int CASES = 20_000;

    private final NumberScanner scanner = new NumberScanner();

    @Test
    void everyDecimalNumberIsReadToTheLastBit() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            String text = any(random);
            String padded = " \t".repeat(random.nextInt(3)) + text + " ".repeat(random.nextInt(3));
            double due = Double.parseDouble(text);
            double found = scan(padded);
            if (Double.isInfinite(due)) {
                assertTrue(Double.isNaN(found), "seed " + seed + " " + text);
                assertFalse(scanner.isNumber(), "seed " + seed + " " + text);
            } else {
                assertEquals(due, found, "seed " + seed + " " + text);
                assertTrue(scanner.isNumber() && !scanner.isEmpty(), "seed " + seed + " " + text);
            }
        }
    }

    /** Where the shortest way to a number stops being exact: 2^53, powers of ten beyond 22. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "0",
                "-0",
                "+7",
                "7.",
                ".5",
                "-.5e-3",
                "9007199254740991",
                "9007199254740992",
                "9007199254740993",
                "900719925474099.3",
                "0.9007199254740993",
                "1e22",
                "1e23",
                "1e-22",
                "1e-23",
                "123456789e22",
                "123456789e-30",
                "1E5",
                "1e+5",
                "1e05",
                "1.7976931348623157e308",
                "4.9e-324",
                "1e-400",
                "00000000000000000000001",
                "0.00000000000000000000000000001",
                "99999",
                "-99999.999"
            })
    void edges(String text) {
        assertEquals(Double.parseDouble(text), scan(text), text);
        assertTrue(scanner.isNumber(), text);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "-",
                "+",
                ".",
                "e5",
                "1e",
                "1e+",
                "1e-",
                "1.2.3",
                "1 2",
                "--1",
                "1e5.0",
                "1e5x",
                "x",
                "0x10",
                "NaN",
                "Infinity",
                "1e309",
                "-1e999",
                "1d",
                "1f",
                "/",
                ":"
            })
    void whatIsNoNumberIsNone(String text) {
        assertTrue(Double.isNaN(scan(text)), text);
        assertFalse(scanner.isNumber() || scanner.isEmpty(), text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "\t ", "\u001a", "\u0000 "})
    void blanksAreNothing(String text) {
        assertTrue(Double.isNaN(scan(text)), text);
        assertTrue(scanner.isEmpty() && !scanner.isNumber(), text);
    }

    /** Only what lies between the two places counts, whatever stands around it. */
    @Test
    void neighboursDontCount() {
        byte[] bytes = "12,345,67".getBytes(StandardCharsets.US_ASCII);
        assertEquals(345.0, scanner.scan(bytes, 3, 6));
        assertEquals(4.0, scanner.scan(bytes, 4, 5));
    }

    private double scan(String text) {
        byte[] bytes = ("5" + text + "5").getBytes(StandardCharsets.ISO_8859_1);
        return scanner.scan(bytes, 1, bytes.length - 1);
    }

    private static String any(SplittableRandom random) {
        StringBuilder text = new StringBuilder();
        text.append(new String[] {"", "", "-", "+"}[random.nextInt(4)]);
        int before = random.nextInt(0, 20);
        int after = random.nextInt(before == 0 ? 1 : 0, 20);
        digits(text, before, random);
        if (after > 0 || random.nextInt(5) == 0) {
            text.append('.');
            digits(text, after, random);
        }
        if (random.nextInt(3) == 0) {
            text.append(random.nextBoolean() ? 'e' : 'E')
                    .append(new String[] {"", "-", "+"}[random.nextInt(3)])
                    .append(random.nextInt(random.nextInt(10) == 0 ? 400 : 30));
        }
        return text.toString();
    }

    private static void digits(StringBuilder text, int count, SplittableRandom random) {
        for (int i = 0; i < count; i++) {
            text.append((char) ('0' + random.nextInt(10)));
        }
    }
}
