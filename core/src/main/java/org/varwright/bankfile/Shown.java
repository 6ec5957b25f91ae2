package org.varwright.bankfile;

import java.util.List;
import java.util.stream.Collectors;

/** Text from a file as it may stand in a message: short, on one line, without anything invisible. */
final class Shown {
    private static final int LONGEST = 60;
    private static final int MOST = 12;

    private Shown() {}

    static String of(String text) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < text.length() && out.length() < LONGEST; i++) {
            char c = text.charAt(i);
            out.append(isInvisible(c) || isHalfACharacter(text, i) ? '\u00b7' : c);
        }
        if (Character.isHighSurrogate(out.isEmpty() ? ' ' : out.charAt(out.length() - 1))) {
            out.setLength(out.length() - 1);
        }
        return out.length() < text.length() ? out + "\u2026" : out.toString();
    }

    /** The first few, quoted, with commas. */
    static String list(Iterable<String> names) {
        StringBuilder out = new StringBuilder();
        int count = 0;
        for (String name : names) {
            if (count == MOST) {
                return out + ", \u2026";
            }
            out.append(count == 0 ? "" : ", ").append('"').append(of(name)).append('"');
            count++;
        }
        return count == 0 ? "none" : out.toString();
    }

    /** Keys or words as they are, with commas. */
    static String words(List<String> words) {
        return words.stream().collect(Collectors.joining(", "));
    }

    /** Control characters and those that show as nothing or turn the writing direction. */
    static boolean isInvisible(char c) {
        return c < 0x20
                || (c >= 0x7f && c < 0xa0)
                || c == 0xad
                || (c >= 0x200b && c <= 0x200f)
                || (c >= 0x2028 && c <= 0x202e)
                || (c >= 0x2060 && c <= 0x206f)
                || c == 0xfeff
                || c >= 0xfffe;
    }

    /** Whether the first or second half of a character stands there without the other, which an escape in quotes can write. */
    static boolean isHalfACharacter(String text, int at) {
        char c = text.charAt(at);
        if (Character.isHighSurrogate(c)) {
            return at + 1 >= text.length() || !Character.isLowSurrogate(text.charAt(at + 1));
        }
        return Character.isLowSurrogate(c) && (at == 0 || !Character.isHighSurrogate(text.charAt(at - 1)));
    }
}
