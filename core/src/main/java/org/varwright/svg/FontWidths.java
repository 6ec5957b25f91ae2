package org.varwright.svg;

import java.util.ArrayList;
import java.util.List;

/**
 * Estimated widths of text in a sans-serif face, in parts of the size. Every text is also given its width in the SVG ({@code textLength}), so that a
 * renderer with a wider face squeezes it and nothing overlaps.
 */
public final class FontWidths {
    /** Thousandths of the size for U+0020 to U+007E in the metrics that Helvetica, Arial and their free twins share. */
    private static final int[] REGULAR = {
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556,
        556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667,
        556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556,
        556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722,
        500, 500, 500, 334, 260, 334, 584
    };

    private static final int[] BOLD = {
        278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556,
        556, 556, 556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722,
        611, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556, 333, 556,
        611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556, 333, 611, 556, 778,
        556, 556, 500, 389, 280, 389, 584
    };

    private static final int FIRST_WIDE = 0x1100;
    private static final int MOST_CHARACTERS = 60;

    private FontWidths() {}

    public static double width(String text, double size, boolean bold) {
        double thousandths = 0.0;
        int at = 0;
        while (at < text.length()) {
            int c = text.codePointAt(at);
            thousandths += thousandths(c, bold);
            at += Character.charCount(c);
        }
        return thousandths * size / 1000.0;
    }

    private static int thousandths(int c, boolean bold) {
        if (c >= 0x20 && c <= 0x7E) {
            return (bold ? BOLD : REGULAR)[c - 0x20];
        }
        return switch (c) {
            case '·', '’', '‘' -> 278;
            case '°', '²', '³', '¹' -> 380;
            case 'µ', 'μ', '–', '±', '×', '−', '≤', '≥', '≈' -> 584;
            case '—' -> 1000;
            default -> c >= FIRST_WIDE && !(c >= 0x2000 && c < 0x2E80) ? 1000 : 690;
        };
    }

    /** The text in lines no wider than {@code width}: broken at blanks, else after a hyphen, slash or comma, else anywhere. Blanks at a break go. */
    public static List<String> wrap(String text, double size, boolean bold, double width) {
        String rest = SvgText.clean(text).strip();
        List<String> lines = new ArrayList<>();
        while (!rest.isEmpty()) {
            int fits = fitting(rest, size, bold, width);
            if (fits == rest.length()) {
                lines.add(rest);
                break;
            }
            int cut = lastBreak(rest, fits);
            lines.add(rest.substring(0, cut).strip());
            rest = rest.substring(cut).strip();
        }
        return lines;
    }

    /** A name beyond 60 characters loses its middle to an ellipsis. */
    public static String name(String name) {
        String text = SvgText.clean(name).strip();
        if (text.codePointCount(0, text.length()) <= MOST_CHARACTERS) {
            return text;
        }
        int head = text.offsetByCodePoints(0, MOST_CHARACTERS * 2 / 3);
        int tail = text.offsetByCodePoints(text.length(), -MOST_CHARACTERS / 3);
        return text.substring(0, head) + "…" + text.substring(tail);
    }

    /** How many chars fit, at least one code point. */
    private static int fitting(String text, double size, boolean bold, double width) {
        double room = width * 1000.0 / size;
        int at = 0;
        while (at < text.length()) {
            int c = text.codePointAt(at);
            room -= thousandths(c, bold);
            if (room < 0.0 && at > 0) {
                return at;
            }
            at += Character.charCount(c);
        }
        return at;
    }

    private static int lastBreak(String text, int fits) {
        if (text.charAt(fits) == ' ') {
            return fits;
        }
        int blank = text.lastIndexOf(' ', fits - 1);
        if (blank > 0) {
            return blank;
        }
        for (int i = fits - 1; i > 0; i--) {
            if ("-/,;_".indexOf(text.charAt(i)) >= 0 && i + 1 <= fits) {
                return i + 1;
            }
        }
        return fits;
    }
}
