package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;

/** Files that are broken before their meaning is looked at: each fault is named with its place, in bounded time. */
class BadFileTest {
    static final String GOOD = new String(BankFileTest.example("tamarack-flats-2.bank.yaml"), StandardCharsets.UTF_8);

    static BankReading read(String text) {
        return BankFile.read("t.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    static String changed(String from, String to) {
        assertTrue(GOOD.contains(from), "the example no longer has: " + from);
        return GOOD.replace(from, to);
    }

    static List<String> errors(String text) {
        return read(text).errors().stream().map(Problem::print).toList();
    }

    private static Problem only(BankReading reading) {
        assertEquals(
                1,
                reading.errors().size(),
                () -> reading.errors().stream().map(Problem::print).toList().toString());
        assertTrue(reading.bank().isEmpty());
        return reading.errors().getFirst();
    }

    private static void assertOnly(Message message, String text) {
        assertEquals(message, only(read(text)).message());
    }

    @Test
    void anEmptyFileIsRefusedInWords() {
        for (String text : List.of("", "   \n\n", "\ufeff", "# only comments\n#\n")) {
            assertOnly(Message.FILE_EMPTY, text);
        }
        assertOnly(Message.EXPECTED_MAPPING, "# only a comment\n---\n");
        assertOnly(Message.EXPECTED_MAPPING, "hello");
        assertOnly(Message.EXPECTED_MAPPING, "[1, 2]");
    }

    @Test
    void aFileOf50MegabytesIsRefusedUnread() {
        byte[] huge = new byte[50_000_000];
        BankReading reading = assertTimeout(Duration.ofSeconds(1), () -> BankFile.read("huge.yaml", huge));
        assertEquals(Message.FILE_TOO_LARGE, only(reading).message());
        assertEquals(
                "huge.yaml: the file has 50000000 bytes, a bank file at most 2000000; is it the right file?",
                only(reading).print());
    }

    @Test
    void theLargestFileThatIsReadTakesBoundedTime() {
        String text = GOOD + "# " + "x".repeat(BankFile.MAXIMUM_BYTES - GOOD.length() - 100) + "\n";
        assertTrue(
                assertTimeout(Duration.ofSeconds(10), () -> read(text)).bank().isPresent());
        String spares =
                GOOD + "  - {serial: a, unit: U300}\n".repeat((BankFile.MAXIMUM_BYTES - GOOD.length()) / 28 - 2);
        assertEquals(
                Message.SERIAL_TWICE,
                assertTimeout(Duration.ofSeconds(20), () -> read(spares))
                        .errors()
                        .getFirst()
                        .message());
    }

    @Test
    void aByteOrderMarkIsAccepted() {
        Bank bank = read(GOOD).requireBank();
        assertEquals(bank, read("\ufeff" + GOOD).requireBank());
        assertEquals(bank, read(GOOD.replace("\n", "\r\n")).requireBank());
    }

    @Test
    void windows1252IsNamedAndNotGuessed() {
        byte[] windows = changed("Tamarack Flats bank 2", "Bank µ")
                .replace("Ω", "ohm")
                .getBytes(Charset.forName("windows-1252"));
        BankReading reading = BankFile.read("w.yaml", windows);
        assertEquals(
                "w.yaml:2:12: the byte 0xb5 is not UTF-8 (it looks like Windows-1252, where it is \"µ\"); save the file as UTF-8",
                only(reading).print());
        byte[] utf16 = GOOD.getBytes(StandardCharsets.UTF_16);
        assertEquals(
                Message.NOT_UTF8_BUT_UTF16, only(BankFile.read("u.yaml", utf16)).message());
        for (byte[] broken : List.of(
                new byte[] {'a', (byte) 0xc0, (byte) 0x80},
                new byte[] {'a', (byte) 0xed, (byte) 0xa0, (byte) 0x80},
                new byte[] {'a', (byte) 0xf5, (byte) 0x80, (byte) 0x80, (byte) 0x80},
                new byte[] {'a', (byte) 0xe2, (byte) 0x82},
                new byte[] {'a', (byte) 0x80})) {
            assertEquals(Message.NOT_UTF8, only(BankFile.read("b.yaml", broken)).message());
        }
    }

    @Test
    void controlCharactersAreRefusedWhereverTheyStand() {
        Problem problem = read(changed("Tamarack Flats bank 2", "Tamarack\u0007 bank"))
                .errors()
                .getFirst();
        assertEquals(Message.CONTROL_CHARACTER, problem.message());
        assertEquals(2, problem.place().line());
        assertEquals(15, problem.place().column());
        assertEquals(
                List.of(Message.NAME_CHARACTER),
                messages(changed("name: Tamarack Flats bank 2", "name: \"Tamarack\\u202e bank\"")));
        assertEquals(
                List.of(Message.NAME_CHARACTER),
                messages(changed("name: Tamarack Flats bank 2", "name: \"Tamarack\\nbank\"")));
        assertEquals(
                List.of(Message.NAME_CHARACTER), messages(changed("name: Tamarack Flats bank 2", "name: bank 2/3")));
    }

    @Test
    void halfACharacterIsRefused() {
        assertEquals(List.of(Message.NAME_CHARACTER), messages(changed("\"TF21-0007\"", "\"\\ud800\"")));
        assertEquals(List.of(), messages(changed("\"TF21-0007\"", "\"\\ud83d\\udd11\"")));
    }

    static List<Message> messages(String text) {
        return read(text).errors().stream().map(Problem::message).toList();
    }

    @Test
    void tabsAreNamed() {
        Problem problem = only(read(changed("  voltage: 13.8 kV", "\tvoltage: 13.8 kV")));
        assertEquals(Message.TAB_INSTEAD_OF_BLANKS, problem.message());
        assertEquals(6, problem.place().line());
    }

    @Test
    void aliasesAnchorsAndBombsAreRefusedAtOnce() {
        StringBuilder bomb = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
        for (int i = 1; i < 30; i++) {
            String before = "*a" + (i - 1);
            bomb.append("a" + i + ": &a" + i + " [" + (before + ", ").repeat(9) + before + "]\n");
        }
        BankReading reading = assertTimeout(Duration.ofSeconds(2), () -> read(bomb.toString()));
        assertTrue(reading.errors().stream().anyMatch(p -> p.message() == Message.ANCHOR_OR_ALIAS));
        assertTrue(messages(changed("frequency: 60 Hz\n  short", "frequency: &f 60 Hz\n  short"))
                .contains(Message.ANCHOR_OR_ALIAS));
        assertEquals(
                List.of(Message.ANCHOR_OR_ALIAS),
                messages(changed("site: Tamarack Flats pumping station", "site: *here")));
        assertOnly(Message.ANCHOR_OR_ALIAS, "&a a: *a");
    }

    @Test
    void tagsAreRefused() {
        assertEquals(
                List.of(Message.YAML_TAG), messages(changed("standard: IEEE ", "standard: !!java.lang.Runtime IEEE ")));
        assertTrue(messages("!!javax.script.ScriptEngineManager [!!java.net.URL [x]]")
                .contains(Message.YAML_TAG));
    }

    @Test
    void deepNestingIsRefused() {
        assertTrue(assertTimeout(Duration.ofSeconds(2), () -> messages("a: " + "[".repeat(100_000)))
                .contains(Message.NESTED_TOO_DEEP));
        assertTrue(assertTimeout(Duration.ofSeconds(2), () -> messages("{a: ".repeat(1000)))
                .contains(Message.NESTED_TOO_DEEP));
    }

    @Test
    void severalDocumentsAreRefused() {
        Problem problem = only(read(GOOD + "---\nformat: varwright/1\n"));
        assertEquals(Message.SEVERAL_DOCUMENTS, problem.message());
    }

    @Test
    void duplicateKeysAreNamedWithTheFirst() {
        Problem problem = only(read(changed("site: Tamarack", "name: Other\nsite: Tamarack")));
        assertEquals(
                "t.yaml:3:1 name: the key \"name\" stands twice, first in line 2; keep one of them", problem.print());
        assertEquals(
                List.of(Message.EITHER_KEY),
                messages(changed("  grounding: solid ", "  earthing: solid\n  grounding: solid ")));
    }

    @Test
    void brokenSyntaxHasAPlace() {
        Problem problem = only(read(changed("tolerance: [0 %, +10 %]", "tolerance: [0 %, +10 %")));
        assertEquals(Message.YAML_SYNTAX, problem.message());
        assertTrue(problem.place().line() >= 17, problem.print());
        assertEquals(Message.KEY_NOT_TEXT, only(read("[a, b]: c")).message());
        assertEquals(
                Message.YAML_SYNTAX, only(read("{\"format\": \"varwright/1\"")).message());
    }

    @Test
    void textStaysAsWritten() {
        Bank bank = read(changed("U300", "0300")
                        .replace("43-2", "43")
                        .replace("[off, manual, auto]", "[off, 1e3, null_]")
                        .replace("[manual, auto]", "[1e3, null_]"))
                .requireBank();
        assertEquals("0300", bank.unitTypes().getFirst().name());
        assertEquals(
                List.of("off", "1e3", "null_"),
                bank.isolation().orElseThrow().device("43").orElseThrow().positions());
    }

    @Test
    void jsonIsRead() {
        String json = """
                {
                \t"format": "varwright/1", "name": "J", "standard": "IEC",
                \t"system": {"voltage": "11 kV", "frequency": "50 Hz", "earthing": "isolated", "x-over-r": 5},
                \t"unit-types": [{"name": "u\\u0041", "rating": "100 kvar", "voltage": "6.35 kV", "frequency": "50 Hz",
                \t  "tolerance": ["-5 %", "+10 %"]}],
                \t"steps": [{"name": "S1", "connection": "star-earthed", "groups": 1, "units": 2, "unit": "uA"}]
                }
                """;
        BankReading reading = read(json);
        assertEquals(List.of(), reading.errors().stream().map(Problem::print).toList());
        assertEquals("uA", reading.requireBank().stages().getFirst().unit().name());
        assertEquals(5.0, reading.requireBank().system().xOverR().orElseThrow());
    }
}
