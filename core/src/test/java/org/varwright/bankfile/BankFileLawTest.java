package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.problem.Problem;
import org.varwright.quantity.Dimension;
import org.varwright.quantity.Reading;

/** Laws that hold for any bytes and any bank. Each run has a seed, which a failure prints. */
class BankFileLawTest {
    private static final List<String> TOKENS = List.of(
            "",
            "~",
            "null",
            "[]",
            "{}",
            "[",
            "]",
            "{",
            "}",
            "-",
            "- ",
            "?",
            "? ",
            ":",
            ": ",
            "#",
            "|",
            ">",
            ">-\n",
            "'",
            "\"",
            "&a ",
            "*a",
            "!!str ",
            "!x ",
            "%YAML 1.2\n",
            "---\n",
            "...\n",
            "\t",
            "\r",
            "\u0085",
            "\u2028",
            "\ufeff",
            "\u00b5",
            "\ud83d\ude00",
            "@",
            "`",
            "NaN",
            "-1",
            "0",
            "1e309 kV",
            "-0 %",
            "999999999999",
            "\\x",
            "\"\\ud800\"",
            "\u0000",
            "/",
            "stage 1",
            "24-1",
            "ground",
            "earth",
            "off",
            "closed",
            "withdrawn",
            "\n",
            "\n\n  ",
            "    ",
            "x".repeat(2000),
            "<<: ",
            "1000",
            "0x10",
            "delta",
            "bridge-grounded");

    private static void forSeeds(int count, Consumer<Random> law) {
        for (long seed = 1; seed <= count; seed++) {
            try {
                law.accept(new Random(seed));
            } catch (RuntimeException | StackOverflowError | AssertionError e) {
                throw new AssertionError("seed " + seed, e);
            }
        }
    }

    private static void readSafely(byte[] bytes) {
        BankReading reading = BankFile.read("fuzz.yaml", bytes);
        assertEquals(reading.errors().isEmpty(), reading.bank().isPresent());
        for (List<Problem> problems : List.of(reading.errors(), reading.warnings())) {
            for (Problem problem : problems) {
                String line = problem.print();
                assertTrue(line.startsWith("fuzz.yaml:"), line);
                assertFalse(line.contains("\n") || line.length() > 3000, line);
            }
        }
        reading.bank().ifPresent(bank -> assertSameAgain(bank));
    }

    private static void assertSameAgain(Bank bank) {
        String text = BankFile.write(bank);
        BankReading again = BankFile.read("again.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertEquals(List.of(), again.errors().stream().map(Problem::print).toList());
        String[] lines = text.split("\n", -1);
        String[] linesAgain = BankFile.write(again.requireBank()).split("\n", -1);
        for (int i = 0; i < lines.length; i++) {
            assertEquals(lines[i], linesAgain[i]);
        }
        assertEquals(bank, again.requireBank());
    }

    @Test
    void brokenBytesGiveErrorsAndNothingElse() {
        byte[] good = BankFileTest.example("tamarack-flats-2.bank.yaml");
        assertTimeout(
                Duration.ofMinutes(2),
                () -> forSeeds(700, random -> {
                    byte[] bytes = good.clone();
                    int changes = 1 + random.nextInt(4);
                    for (int i = 0; i < changes; i++) {
                        int at = random.nextInt(bytes.length);
                        switch (random.nextInt(3)) {
                            case 0 -> bytes[at] = (byte) random.nextInt(256);
                            case 1 -> bytes[at] = (byte) (32 + random.nextInt(95));
                            default -> bytes = cut(bytes, at, Math.min(bytes.length, at + random.nextInt(40)));
                        }
                    }
                    readSafely(bytes);
                }));
    }

    private static byte[] cut(byte[] bytes, int from, int to) {
        byte[] out = Arrays.copyOf(bytes, bytes.length - (to - from));
        System.arraycopy(bytes, to, out, from, bytes.length - to);
        return out.length == 0 ? bytes : out;
    }

    @Test
    void strangeTokensGiveErrorsAndNothingElse() {
        List<String> files = BankFileTest.ALL.stream()
                .map(n -> new String(BankFileTest.example(n), StandardCharsets.UTF_8))
                .toList();
        assertTimeout(
                Duration.ofMinutes(2),
                () -> forSeeds(700, random -> {
                    String text = files.get(random.nextInt(files.size()));
                    int changes = 1 + random.nextInt(3);
                    for (int i = 0; i < changes; i++) {
                        String token = TOKENS.get(random.nextInt(TOKENS.size()));
                        int at = random.nextInt(text.length());
                        int value = text.indexOf(random.nextBoolean() ? ": " : ", ", at);
                        if (random.nextBoolean() && value > 0) {
                            int end = value + 2;
                            while (end < text.length() && ",}]\n".indexOf(text.charAt(end)) < 0) {
                                end++;
                            }
                            text = text.substring(0, value + 2) + token + text.substring(end);
                        } else {
                            text = text.substring(0, at) + token + text.substring(at);
                        }
                    }
                    readSafely(text.getBytes(StandardCharsets.UTF_8));
                }));
    }

    @Test
    void linesInAnyOrderGiveErrorsAndNothingElse() {
        List<String> lines = Arrays.asList(BadFileTest.GOOD.split("\n"));
        forSeeds(300, random -> {
            String[] mixed = lines.toArray(new String[0]);
            for (int i = 0; i < 1 + random.nextInt(6); i++) {
                int a = random.nextInt(mixed.length);
                int b = random.nextInt(mixed.length);
                String kept = mixed[a];
                mixed[a] = mixed[b];
                mixed[b] = random.nextInt(3) == 0 ? "" : kept;
            }
            readSafely(String.join("\n", mixed).getBytes(StandardCharsets.UTF_8));
        });
    }

    @Test
    void anyBankIsWrittenSoThatItIsReadBackTheSame() {
        forSeeds(300, random -> {
            String text = RandomBankText.of(random);
            BankReading reading = BankFile.read("random.yaml", text.getBytes(StandardCharsets.UTF_8));
            assertEquals(
                    List.of(), reading.errors().stream().map(Problem::print).toList(), text);
            assertSameAgain(reading.requireBank());
        });
    }

    @Test
    void anyNumberIsWrittenSoThatItIsReadBackTheSame() {
        forSeeds(300, random -> {
            for (Dimension dimension : Dimension.values()) {
                if (dimension == Dimension.FRACTION) {
                    continue; // below: only what has been read can be written, because percent has no unit of 1
                }
                double value = (1.0 + random.nextDouble()) * Math.pow(10.0, random.nextInt(12) - 6);
                String text = Written.quantity(value, dimension);
                assertEquals(new Reading.Value(value), dimension.parse(text), text);
            }
            double percent = random.nextInt(100) + random.nextInt(1000) / 1000.0;
            double read = ((Reading.Value) Dimension.FRACTION.parse(percent + " %")).si();
            assertEquals(new Reading.Value(read), Dimension.FRACTION.parse(Written.quantity(read, Dimension.FRACTION)));
        });
    }

    @Test
    void blanksBetweenTheSlashesOfAPositionDoNotMatter() {
        assertEquals(
                BadFileTest.read(BadFileTest.GOOD).requireBank(),
                BadFileTest.read(BadFileTest.changed("at: stage 2/A/u1", "at: stage 2 / a /U1"))
                        .requireBank());
    }
}
