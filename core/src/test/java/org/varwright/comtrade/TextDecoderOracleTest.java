package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Code pages against the runtime's, byte by byte; which page a file looks like, by names that stand in one. */
class TextDecoderOracleTest {
    /** A page of the runtime, for those that the core doesn't have. */
    private static final CodePages RUNTIME = (name, bytes) ->
            name.equals("GB18030") ? Optional.of(new String(bytes, Charset.forName(name))) : Optional.empty();

    @Test
    void everyByteOfAPageIsWhatTheRuntimeMakesOfIt() {
        Map<String, String> pages = Map.of(
                "windows-1252", "windows-1252",
                "cp1252", "windows-1252",
                "Windows-1251", "windows-1251",
                "cp1251", "windows-1251",
                "cp866", "IBM866",
                "IBM866", "IBM866",
                "iso-8859-1", "ISO-8859-1",
                "latin1", "ISO-8859-1");
        byte[] all = new byte[256];
        for (int i = 0; i < all.length; i++) {
            all[i] = (byte) i;
        }
        pages.forEach((ours, theirs) -> {
            TextDecoder decoder = TextDecoder.of(ours, CodePages.NONE);
            assertTrue(decoder.isKnown(), ours);
            String due = new String(all, Charset.forName(theirs));
            String found = decoder.decode(all);
            for (int i = 0; i < all.length; i++) {
                assertEquals(due.charAt(i), found.charAt(i), ours + " " + Integer.toHexString(i));
            }
        });
        for (String name : List.of("ASCII", "us-ascii", "UTF-8", "utf8")) {
            assertEquals(
                    "Ü€", TextDecoder.of(name, CodePages.NONE).decode("Ü€".getBytes(StandardCharsets.UTF_8)), name);
        }
    }

    @Test
    void aPageThatIsNotKnownShowsItsAsciiAndSaysSo() {
        TextDecoder decoder = TextDecoder.of("EBCDIC", CodePages.NONE);
        assertFalse(decoder.isKnown());
        assertEquals("a\uFFFDb", decoder.decode(new byte[] {'a', (byte) 0x81, 'b'}));
        assertTrue(TextDecoder.of("GB18030", RUNTIME).isKnown());
        assertEquals("母线", TextDecoder.of("GB18030", RUNTIME).decode("母线".getBytes(Charset.forName("GB18030"))));
    }

    @Test
    void namesAreOfThePageThatTheyLookMostLike() {
        looksLike("ASCII", "Plover Hill", StandardCharsets.US_ASCII);
        looksLike("UTF-8", "Grünholz", StandardCharsets.UTF_8);
        looksLike("UTF-8", "母线电压", StandardCharsets.UTF_8);
        looksLike("windows-1252", "Grünholz, Übergabe", StandardCharsets.ISO_8859_1);
        looksLike("windows-1251", "Подстанция Северная", Charset.forName("windows-1251"));
        looksLike("cp866", "Подстанция Северная", Charset.forName("IBM866"));
        looksLike("GB18030", "母线电压", Charset.forName("GB18030"));
    }

    private static void looksLike(String page, String text, Charset charset) {
        TextDecoder found = TextDecoder.looksLike(text.getBytes(charset), RUNTIME);
        assertEquals(page, found.name(), text);
        assertEquals(text, found.decode(text.getBytes(charset)));
        assertEquals(!page.equals("ASCII") && !page.equals("UTF-8"), found.isGuess(), page);
    }

    /** Every length of UTF-8, its first and last characters; cut or broken bytes are no UTF-8. */
    @Test
    void utf8IsToldFromWhatOnlyLooksLikeIt() {
        for (int c : new int[] {0x80, 0x7FF, 0x800, 0xFFFD, 0x10000, 0x10FFFF}) {
            byte[] bytes = new String(Character.toChars(c)).getBytes(StandardCharsets.UTF_8);
            assertEquals("UTF-8", TextDecoder.looksLike(bytes, CodePages.NONE).name(), Integer.toHexString(c));
            byte[] cut = java.util.Arrays.copyOf(bytes, bytes.length - 1);
            assertFalse(TextDecoder.looksLike(cut, CodePages.NONE).name().equals("UTF-8"), Integer.toHexString(c));
            for (int i = 1; i < bytes.length; i++) {
                byte[] broken = bytes.clone();
                broken[i] = 'x';
                assertFalse(
                        TextDecoder.looksLike(broken, CodePages.NONE).name().equals("UTF-8"),
                        Integer.toHexString(c) + " " + i);
            }
        }
        for (int lead : new int[] {0x80, 0xBF, 0xC0, 0xC1, 0xF5, 0xFF}) {
            byte[] bytes = {(byte) lead, (byte) 0x80, (byte) 0x80, (byte) 0x80, 'a'};
            assertFalse(TextDecoder.looksLike(bytes, CodePages.NONE).name().equals("UTF-8"), Integer.toHexString(lead));
        }
    }
}
