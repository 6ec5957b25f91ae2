package org.varwright.comtrade;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;

/**
 * Makes text of bytes whose code page no file states: UTF-8 where they are valid UTF-8, else the page that the bytes look most like. Numbers and commas are
 * the same in all of them.
 */
final class TextDecoder {
    static final String ASCII = "ASCII";
    static final String UTF_8 = "UTF-8";
    static final String WESTERN = "windows-1252";
    static final String CYRILLIC = "windows-1251";
    static final String CYRILLIC_DOS = "cp866";
    static final String CHINESE = "GB18030";

    /** Windows-1252 from 0x80 to 0x9F, by the registry of character sets at unicode.org; U+FFFD where it has none. */
    private static final String WESTERN_HIGH =
            "\u20AC\uFFFD\u201A\u0192\u201E\u2026\u2020\u2021\u02C6\u2030\u0160\u2039\u0152\uFFFD\u017D\uFFFD"
                    + "\uFFFD\u2018\u2019\u201C\u201D\u2022\u2013\u2014\u02DC\u2122\u0161\u203A\u0153\uFFFD\u017E\u0178";

    /** Windows-1251 from 0x80 to 0xBF; the alphabet follows. */
    private static final String CYRILLIC_HIGH =
            "\u0402\u0403\u201A\u0453\u201E\u2026\u2020\u2021\u20AC\u2030\u0409\u2039\u040A\u040C\u040B\u040F"
                    + "\u0452\u2018\u2019\u201C\u201D\u2022\u2013\u2014\uFFFD\u2122\u0459\u203A\u045A\u045C\u045B\u045F"
                    + "\u00A0\u040E\u045E\u0408\u00A4\u0490\u00A6\u00A7\u0401\u00A9\u0404\u00AB\u00AC\u00AD\u00AE\u0407"
                    + "\u00B0\u00B1\u0406\u0456\u0491\u00B5\u00B6\u00B7\u0451\u2116\u0454\u00BB\u0458\u0405\u0455\u0457";

    /** Code page 866 from 0xB0 to 0xDF: drawing characters. */
    private static final String DOS_LINES =
            "\u2591\u2592\u2593\u2502\u2524\u2561\u2562\u2556\u2555\u2563\u2551\u2557\u255D\u255C\u255B\u2510"
                    + "\u2514\u2534\u252C\u251C\u2500\u253C\u255E\u255F\u255A\u2554\u2569\u2566\u2560\u2550\u256C\u2567"
                    + "\u2568\u2564\u2565\u2559\u2558\u2552\u2553\u256B\u256A\u2518\u250C\u2588\u2584\u258C\u2590\u2580";

    /** Code page 866 from 0xF0. */
    private static final String DOS_LAST =
            "\u0401\u0451\u0404\u0454\u0407\u0457\u040E\u045E\u00B0\u2219\u00B7\u221A\u2116\u00A4\u25A0\u00A0";

    private final String name;
    private final CodePages more;

    private TextDecoder(String name, CodePages more) {
        this.name = name;
        this.more = more;
    }

    static TextDecoder of(String name, CodePages more) {
        return new TextDecoder(name, more);
    }

    static TextDecoder looksLike(byte[] bytes, CodePages more) {
        return new TextDecoder(guess(bytes), more);
    }

    String name() {
        return name;
    }

    /** Whether the page was told by the bytes alone and may be wrong. */
    boolean isGuess() {
        return !name.equals(ASCII) && !name.equals(UTF_8);
    }

    /** Whether it can make text. */
    boolean isKnown() {
        return own(name, new byte[0]).isPresent()
                || more.decode(name, new byte[0]).isPresent();
    }

    /** The text; characters that the page doesn't have, and all beyond ASCII of a page that is not known, as U+FFFD. */
    String decode(byte[] bytes) {
        return own(name, bytes).or(() -> more.decode(name, bytes)).orElseGet(() -> table(bytes, b -> '\uFFFD'));
    }

    private static Optional<String> own(String name, byte[] bytes) {
        return switch (name.toLowerCase(Locale.ROOT)) {
            case "ascii", "us-ascii", "utf-8", "utf8" -> Optional.of(new String(bytes, StandardCharsets.UTF_8));
            case "iso-8859-1", "latin1" -> Optional.of(table(bytes, b -> (char) b));
            case "windows-1252", "cp1252" ->
                Optional.of(table(bytes, b -> b < 0xA0 ? WESTERN_HIGH.charAt(b - 0x80) : (char) b));
            case "windows-1251", "cp1251" ->
                Optional.of(
                        table(bytes, b -> b < 0xC0 ? CYRILLIC_HIGH.charAt(b - 0x80) : (char) ('\u0410' + (b - 0xC0))));
            case "cp866", "ibm866" -> Optional.of(table(bytes, TextDecoder::dos));
            default -> Optional.empty();
        };
    }

    private static char dos(int b) {
        if (b < 0xB0) {
            return (char) ('\u0410' + (b - 0x80));
        }
        if (b < 0xE0) {
            return DOS_LINES.charAt(b - 0xB0);
        }
        return b < 0xF0 ? (char) ('\u0440' + (b - 0xE0)) : DOS_LAST.charAt(b - 0xF0);
    }

    /** What a byte of 0x80 or more means. */
    private interface High {
        char of(int b);
    }

    private static String table(byte[] bytes, High high) {
        StringBuilder text = new StringBuilder(bytes.length);
        for (byte b : bytes) {
            int c = b & 0xFF;
            text.append(c < 0x80 ? (char) c : high.of(c));
        }
        return text.toString();
    }

    private static String guess(byte[] bytes) {
        int high = 0;
        int runs = 0;
        int single = 0;
        int oddRuns = 0;
        int common = 0;
        int dosLetters = 0;
        int windowsLetters = 0;
        for (int i = 0; i < bytes.length; ) {
            int end = i;
            while (end < bytes.length && bytes[end] < 0) {
                int c = bytes[end] & 0xFF;
                boolean lead = (end - i) % 2 == 0;
                common += lead && c >= 0xB0 && c <= 0xD7 ? 1 : 0;
                dosLetters += c <= 0xAF || (c >= 0xE0 && c <= 0xEF) ? 1 : 0;
                windowsLetters += c >= 0xC0 ? 1 : 0;
                end++;
            }
            if (end > i) {
                runs++;
                high += end - i;
                single += end - i == 1 ? 1 : 0;
                oddRuns += (end - i) % 2;
            }
            i = Math.max(end, i + 1);
        }
        if (high == 0) {
            return ASCII;
        }
        if (isUtf8(bytes)) {
            return UTF_8;
        }
        // two bytes a character, mostly of the first level of the table, whose lead bytes are 0xB0 to 0xD7
        if (oddRuns * 20 <= runs && common * 4 >= high) {
            return CHINESE;
        }
        if (single * 2 >= runs) {
            return WESTERN;
        }
        return dosLetters > windowsLetters ? CYRILLIC_DOS : CYRILLIC;
    }

    private static boolean isUtf8(byte[] bytes) {
        for (int i = 0; i < bytes.length; ) {
            int c = bytes[i] & 0xFF;
            int more = c < 0x80
                    ? 0
                    : c >= 0xC2 && c < 0xE0 ? 1 : c >= 0xE0 && c < 0xF0 ? 2 : c >= 0xF0 && c < 0xF5 ? 3 : -1;
            if (more < 0 || i + more >= bytes.length) {
                return false;
            }
            for (int k = 1; k <= more; k++) {
                if ((bytes[i + k] & 0xC0) != 0x80) {
                    return false;
                }
            }
            i += more + 1;
        }
        return true;
    }
}
