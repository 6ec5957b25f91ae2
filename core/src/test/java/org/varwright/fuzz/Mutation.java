package org.varwright.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** Damages what was good: as a careless hand would, as a torn transfer would, as somebody who means harm would. */
public final class Mutation {
    private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(\\.[0-9]+)?");
    private static final Pattern WORD = Pattern.compile("[\\p{L}][\\p{L}\\p{N}-]*");
    private static final Pattern UNIT =
            Pattern.compile("(?<=[0-9] )[kMmµu]?(V|A|Hz|var|VA|H|F|Ω|ohm|s|min|J|kg|m|%|W)\\b");

    private static final List<String> NUMBERS = List.of(
            "0",
            "-0",
            "-1",
            "1e308",
            "1e-308",
            "1e309",
            "-1e300",
            "NaN",
            "Infinity",
            "2147483648",
            "-2147483649",
            "9223372036854775807",
            "0.1e-400",
            "1,5",
            "1.2.3",
            "0x1F",
            "1e",
            "١٢",
            "",
            "999999999",
            "1e15",
            "0.000000001");
    private static final List<String> UNITS =
            List.of("V", "kV", "A", "kvar", "Mvar", "uF", "µF", "MΩ", "mH", "Hz", "s", "min", "%", "kJ", "kV kV", "");
    private static final List<String> STRANGE = List.of(
            "<script>alert(1)</script>",
            "\"><img src=x onerror=alert(1)>",
            "=cmd|' /C calc'!A0",
            "../../etc/passwd",
            "%00",
            "\u0000",
            "\u202egnp",
            "\ufeff",
            "\ud83d\udd11",
            "\ud800",
            "e\u0301",
            "&amp;",
            "]]>",
            "${7*7}",
            "%s%n",
            "\\",
            "\"",
            "'",
            "\r\n",
            "\t",
            "null",
            "true",
            "~",
            "[]",
            "{}",
            "# ",
            "- ",
            ": ",
            "x".repeat(300),
            "{",
            "}",
            "[",
            "]",
            ",",
            "undefined");

    private Mutation() {}

    /** Texts that go wrong where they are not escaped, checked or bounded. */
    public static String strange(Random random) {
        return pick(random, STRANGE);
    }

    /** One change of a text, or a few: line by line and word by word. */
    public static String text(Random random, String good) {
        String text = good;
        for (int i = Math.max(1, random.nextInt(7) - 3); i > 0; i--) {
            text = once(random, text);
        }
        return text;
    }

    private static String once(Random random, String text) {
        return switch (random.nextInt(13)) {
            case 0 -> lines(random, text, Mutation::without);
            case 1 -> lines(random, text, Mutation::twice);
            case 2 -> lines(random, text, Mutation::swapped);
            case 3, 4, 5 -> replaced(random, text, NUMBER, pick(random, NUMBERS));
            case 6 -> replaced(random, text, UNIT, pick(random, UNITS));
            case 7, 8 -> wordForWord(random, text);
            case 9 -> replaced(random, text, WORD, pick(random, STRANGE));
            case 10 -> text.substring(0, random.nextInt(text.length() + 1));
            case 11 -> inserted(random, text, pick(random, STRANGE));
            default -> withoutPart(random, text);
        };
    }

    private interface OnLines {
        void change(Random random, List<String> lines);
    }

    private static String lines(Random random, String text, OnLines change) {
        List<String> lines = new ArrayList<>(Arrays.asList(text.split("\n", -1)));
        change.change(random, lines);
        return String.join("\n", lines);
    }

    private static void without(Random random, List<String> lines) {
        lines.remove(random.nextInt(lines.size()));
    }

    private static void twice(Random random, List<String> lines) {
        int at = random.nextInt(lines.size());
        lines.add(at, lines.get(at));
    }

    private static void swapped(Random random, List<String> lines) {
        int a = random.nextInt(lines.size());
        int b = random.nextInt(lines.size());
        lines.set(a, lines.set(b, lines.get(a)));
    }

    /** A reference to one thing becomes one to another: words of the text itself. */
    private static String wordForWord(Random random, String text) {
        List<MatchResult> words = WORD.matcher(text).results().toList();
        return words.isEmpty()
                ? text
                : replaced(random, text, WORD, pick(random, words).group());
    }

    private static String replaced(Random random, String text, Pattern what, String by) {
        List<MatchResult> found = what.matcher(text).results().toList();
        if (found.isEmpty()) {
            return inserted(random, text, by);
        }
        MatchResult one = pick(random, found);
        return text.substring(0, one.start()) + by + text.substring(one.end());
    }

    private static String inserted(Random random, String text, String what) {
        int at = random.nextInt(text.length() + 1);
        return text.substring(0, at) + what + text.substring(at);
    }

    private static String withoutPart(Random random, String text) {
        int at = random.nextInt(text.length() + 1);
        int to = Math.min(text.length(), at + random.nextInt(60));
        return text.substring(0, at) + text.substring(to);
    }

    /** One to four changes of bytes: bits, holes, cuts, repeats, strange texts, and numbers of the format blown up. */
    public static byte[] bytes(Random random, byte[] good) {
        byte[] bytes = good;
        for (int i = 1 + random.nextInt(4); i > 0; i--) {
            bytes = once(random, bytes);
        }
        return bytes;
    }

    private static byte[] once(Random random, byte[] bytes) {
        int at = random.nextInt(bytes.length + 1);
        int to = Math.min(bytes.length, at + 1 + random.nextInt(64));
        return switch (random.nextInt(9)) {
            case 0, 1 -> set(bytes, at, (byte) (1 << random.nextInt(8)), true);
            case 2 -> set(bytes, at, (byte) random.nextInt(256), false);
            case 3 -> joined(head(bytes, at), tail(bytes, to));
            case 4 -> head(bytes, at);
            case 5 -> joined(head(bytes, to), tail(bytes, at));
            case 6 -> joined(head(bytes, at), pick(random, STRANGE).getBytes(StandardCharsets.UTF_8), tail(bytes, at));
            case 7 -> {
                byte[] filled = bytes.clone();
                int end = Math.min(bytes.length, at + (1 << random.nextInt(4)));
                Arrays.fill(filled, Math.min(at, end), end, (byte) (random.nextBoolean() ? 0xFF : 0));
                yield filled;
            }
            default -> joined(tail(bytes, at), head(bytes, at));
        };
    }

    private static byte[] set(byte[] bytes, int at, byte value, boolean flip) {
        if (at >= bytes.length) {
            return bytes;
        }
        byte[] changed = bytes.clone();
        changed[at] = (byte) (flip ? changed[at] ^ value : value);
        return changed;
    }

    private static byte[] head(byte[] bytes, int end) {
        return Arrays.copyOf(bytes, end);
    }

    private static byte[] tail(byte[] bytes, int from) {
        return Arrays.copyOfRange(bytes, from, bytes.length);
    }

    private static byte[] joined(byte[]... parts) {
        int length = 0;
        for (byte[] part : parts) {
            length += part.length;
        }
        byte[] joined = new byte[length];
        int at = 0;
        for (byte[] part : parts) {
            System.arraycopy(part, 0, joined, at, part.length);
            at += part.length;
        }
        return joined;
    }

    /** One of them. */
    public static <T> T pick(Random random, List<T> of) {
        return of.get(random.nextInt(of.size()));
    }
}
