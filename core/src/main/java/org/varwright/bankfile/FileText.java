package org.varwright.bankfile;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.varwright.problem.Message;
import org.varwright.problem.Place;

/** Bytes of a file into text: UTF-8 with or without byte order mark, and nothing guessed. */
final class FileText {
    /** What Windows-1252 has at 0x80 to 0x9f; U+FFFD where it has nothing. */
    private static final String WINDOWS_80_TO_9F =
            "\u20ac\ufffd\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\ufffd\u017d\ufffd"
                    + "\ufffd\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\ufffd\u017e\u0178";

    private FileText() {}

    static Optional<String> decode(byte[] content, Findings findings) {
        String file = findings.file();
        if (content.length > BankFile.MAXIMUM_BYTES) {
            findings.error(
                    Message.FILE_TOO_LARGE,
                    new Place(file, 0, 0, ""),
                    String.valueOf(content.length),
                    String.valueOf(BankFile.MAXIMUM_BYTES));
            return Optional.empty();
        }
        if (content.length >= 2
                && ((at(content, 0) == 0xff && at(content, 1) == 0xfe)
                        || (at(content, 0) == 0xfe && at(content, 1) == 0xff))) {
            findings.error(Message.NOT_UTF8_BUT_UTF16, new Place(file, 1, 1, ""));
            return Optional.empty();
        }
        int start = content.length >= 3 && at(content, 0) == 0xef && at(content, 1) == 0xbb && at(content, 2) == 0xbf
                ? 3
                : 0;
        if (!check(content, start, findings)) {
            return Optional.empty();
        }
        String text = new String(content, start, content.length - start, StandardCharsets.UTF_8);
        if (text.isBlank()) {
            findings.error(Message.FILE_EMPTY, new Place(file, 1, 1, ""));
            return Optional.empty();
        }
        return Optional.of(text);
    }

    private static boolean check(byte[] content, int start, Findings findings) {
        int line = 1;
        int column = 1;
        int i = start;
        boolean good = true;
        while (i < content.length) {
            int b = at(content, i);
            int length = sequenceLength(content, i);
            Place place = new Place(findings.file(), line, column, "");
            if (length == 0) {
                findings.error(Message.NOT_UTF8, place, hex(b), windows(b));
                return false;
            }
            boolean c1 = length == 2 && b == 0xc2 && at(content, i + 1) < 0xa0 && at(content, i + 1) != 0x85;
            if ((b < 0x20 && b != '\t' && b != '\n' && b != '\r') || b == 0x7f || c1) {
                findings.error(Message.CONTROL_CHARACTER, place, hex(c1 ? at(content, i + 1) : b));
                good = false;
            }
            if (b == '\n') {
                line++;
                column = 1;
            } else {
                column++;
            }
            i += length;
        }
        return good;
    }

    /** Bytes of the character that starts at {@code i}; 0 where there is none by RFC 3629. */
    private static int sequenceLength(byte[] content, int i) {
        int b = at(content, i);
        if (b < 0x80) {
            return 1;
        }
        int length = b >= 0xc2 && b <= 0xdf ? 2 : b >= 0xe0 && b <= 0xef ? 3 : b >= 0xf0 && b <= 0xf4 ? 4 : 0;
        if (length == 0 || i + length > content.length) {
            return 0;
        }
        for (int k = 1; k < length; k++) {
            if ((at(content, i + k) & 0xc0) != 0x80) {
                return 0;
            }
        }
        int second = at(content, i + 1);
        boolean outside = (b == 0xe0 && second < 0xa0)
                || (b == 0xed && second > 0x9f)
                || (b == 0xf0 && second < 0x90)
                || (b == 0xf4 && second > 0x8f);
        return outside ? 0 : length;
    }

    private static String windows(int b) {
        char c = b < 0xa0 ? WINDOWS_80_TO_9F.charAt(b - 0x80) : (char) b;
        return c == '\ufffd' ? "nor Windows-1252" : "it looks like Windows-1252, where it is \"" + c + "\"";
    }

    private static String hex(int b) {
        return "0x" + Character.forDigit(b >> 4, 16) + Character.forDigit(b & 0xf, 16);
    }

    private static int at(byte[] content, int i) {
        return content[i] & 0xff;
    }
}
