package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/**
 * The text of a file of unknown encoding.
 *
 * @param text what it says, without byte order mark
 * @param notices what was assumed
 */
record Decoded(String text, List<Problem> notices) {
    /** A table of readings larger than this is refused [bytes]. */
    static final int MAXIMUM_BYTES = 4_000_000;

    /** What Windows-1252 has at 0x80 to 0x9f; the replacement character where it has nothing. */
    private static final String WINDOWS_80_TO_9F =
            "\u20ac\ufffd\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\ufffd\u017d\ufffd"
                    + "\ufffd\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\ufffd\u017e\u0178";

    Decoded {
        notices = List.copyOf(notices);
    }

    /**
     * UTF-8 where the bytes are; UTF-16 by its byte order mark; else Windows-1252, with a notice.
     *
     * @throws VarwrightException {@code TABLE_TOO_LARGE}, {@code TABLE_IS_WORKBOOK}, {@code TABLE_NOT_TEXT}
     */
    static Decoded of(String file, byte[] content) {
        Place whole = new Place(file, 0, 0, "");
        if (content.length > MAXIMUM_BYTES) {
            throw new VarwrightException(
                    Message.TABLE_TOO_LARGE, whole, String.valueOf(content.length), String.valueOf(MAXIMUM_BYTES));
        }
        if (starts(content, 'P', 'K', 3, 4) || starts(content, 0xd0, 0xcf, 0x11, 0xe0)) {
            throw new VarwrightException(Message.TABLE_IS_WORKBOOK, whole);
        }
        List<Problem> notices = new ArrayList<>();
        String text;
        if (starts(content, 0xff, 0xfe) || starts(content, 0xfe, 0xff)) {
            text = utf16(content, at(content, 0) == 0xff);
            notices.add(Problem.of(Message.TABLE_UTF16, whole));
        } else {
            int start = starts(content, 0xef, 0xbb, 0xbf) ? 3 : 0;
            StringBuilder utf8 = new StringBuilder(content.length);
            if (utf8(content, start, utf8)) {
                text = utf8.toString();
            } else {
                text = windows(content);
                notices.add(Problem.of(Message.TABLE_WINDOWS_1252, whole));
            }
        }
        int zero = text.indexOf('\0');
        if (zero >= 0) {
            long row = text.substring(0, zero).chars().filter(c -> c == '\n').count() + 1;
            throw new VarwrightException(Message.TABLE_NOT_TEXT, whole, String.valueOf(row));
        }
        return new Decoded(text, notices);
    }

    /** Appends what the bytes say in UTF-8 (RFC 3629); false where they are not. */
    private static boolean utf8(byte[] content, int start, StringBuilder out) {
        int i = start;
        while (i < content.length) {
            int first = at(content, i);
            int length = first < 0x80
                    ? 1
                    : first >= 0xc2 && first < 0xe0
                            ? 2
                            : first >= 0xe0 && first < 0xf0 ? 3 : first >= 0xf0 && first < 0xf5 ? 4 : 0;
            if (length == 0 || i + length > content.length) {
                return false;
            }
            int code = length == 1 ? first : first & (0x7f >> length);
            for (int k = 1; k < length; k++) {
                int next = at(content, i + k);
                if ((next & 0xc0) != 0x80) {
                    return false;
                }
                code = (code << 6) | (next & 0x3f);
            }
            boolean overlong = (length == 3 && code < 0x800) || (length == 4 && code < 0x10000);
            if (overlong || code > 0x10ffff || (code >= 0xd800 && code < 0xe000)) {
                return false;
            }
            out.appendCodePoint(code);
            i += length;
        }
        return true;
    }

    private static String windows(byte[] content) {
        StringBuilder out = new StringBuilder(content.length);
        for (int i = 0; i < content.length; i++) {
            int b = at(content, i);
            out.append(b >= 0x80 && b < 0xa0 ? WINDOWS_80_TO_9F.charAt(b - 0x80) : (char) b);
        }
        return out.toString();
    }

    private static String utf16(byte[] content, boolean littleEndian) {
        StringBuilder out = new StringBuilder(content.length / 2);
        for (int i = 2; i + 1 < content.length; i += 2) {
            int low = at(content, littleEndian ? i : i + 1);
            int high = at(content, littleEndian ? i + 1 : i);
            out.append((char) ((high << 8) | low));
        }
        return out.toString();
    }

    private static boolean starts(byte[] content, int... bytes) {
        if (content.length < bytes.length) {
            return false;
        }
        for (int i = 0; i < bytes.length; i++) {
            if (at(content, i) != bytes[i]) {
                return false;
            }
        }
        return true;
    }

    private static int at(byte[] content, int i) {
        return content[i] & 0xff;
    }
}
