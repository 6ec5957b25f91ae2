package org.varwright.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Puts a page of plain text together, line by line, none longer than {@link #COLUMNS} where a blank allows a break. */
public final class Page {
    public static final int COLUMNS = 100;
    private static final int LABEL = 26;

    private final List<String> lines = new ArrayList<>();

    /** A heading in capitals, after an empty line unless it is the first. */
    public Page heading(String text) {
        if (!lines.isEmpty()) {
            blank();
        }
        return add(text.toUpperCase(Locale.ROOT), "");
    }

    /** A line of running text. */
    public Page text(String text) {
        return add(text, "");
    }

    /** A line that starts with {@code lead}; its continuation stands under the text behind the lead. */
    public Page item(String lead, String text) {
        return add(lead + text, " ".repeat(lead.length()));
    }

    /** A label and what it says, in two columns. */
    public Page row(String label, String value) {
        String left = String.format(Locale.ROOT, "  %-" + (LABEL - 2) + "s", label);
        return add(left + (left.length() > LABEL ? "  " : "") + value, " ".repeat(LABEL));
    }

    public Page blank() {
        lines.add("");
        return this;
    }

    /** Lines as they are. */
    public Page lines(List<String> more) {
        lines.addAll(more);
        return this;
    }

    /**
     * A table; columns as wide as their widest cell, two blanks between them, the last column wrapped under itself.
     *
     * @param header one cell a column
     * @param cells rows, each with as many cells as the header
     * @param right indices of columns that are set flush right
     */
    public Page table(List<String> header, List<List<String>> cells, Integer... right) {
        List<Integer> flushRight = List.of(right);
        List<List<String>> rows = cells.stream()
                .map(row -> row.stream().map(Page::plain).toList())
                .toList();
        int columns = header.size();
        int[] width = new int[columns];
        for (int c = 0; c < columns; c++) {
            width[c] = header.get(c).length();
            for (List<String> row : rows) {
                width[c] = Math.max(width[c], row.get(c).length());
            }
        }
        int lead = 2;
        for (int c = 0; c < columns - 1; c++) {
            lead += width[c] + 2;
        }
        add(line(header, width, flushRight), " ".repeat(Math.min(lead, COLUMNS / 2)));
        for (List<String> row : rows) {
            add(line(row, width, flushRight), " ".repeat(Math.min(lead, COLUMNS / 2)));
        }
        return this;
    }

    private static String line(List<String> cells, int[] width, List<Integer> flushRight) {
        StringBuilder line = new StringBuilder("  ");
        for (int c = 0; c < cells.size(); c++) {
            String cell = cells.get(c);
            String pad = " ".repeat(Math.max(0, width[c] - cell.length()));
            line.append(flushRight.contains(c) ? pad + cell : cell + pad);
            line.append(c < cells.size() - 1 ? "  " : "");
        }
        return line.toString().stripTrailing();
    }

    /** The whole page, ended by a newline. */
    public String print() {
        return String.join("\n", lines) + "\n";
    }

    private Page add(String line, String indent) {
        lines.addAll(wrap(plain(line), indent));
        return this;
    }

    /** Names come from files: a line break in one must not begin a line of the page, and nothing in it may steer a terminal or turn the writing round. */
    public static String plain(String text) {
        StringBuilder plain = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\n' || c == '\r' || c == '\t') {
                plain.append(' ');
            } else if (Character.isISOControl(c)
                    || (c >= '\u202a' && c <= '\u202e')
                    || (c >= '\u2066' && c <= '\u2069')) {
                plain.append('\ufffd');
            } else {
                plain.append(c);
            }
        }
        return plain.toString();
    }

    /** Breaks a line at blanks so that it keeps to the page; later lines start with {@code indent}. */
    public static List<String> wrap(String line, String indent) {
        List<String> lines = new ArrayList<>();
        String rest = line;
        while (rest.length() > COLUMNS) {
            int at = rest.lastIndexOf(' ', COLUMNS);
            if (at <= indent.length()) {
                break;
            }
            lines.add(rest.substring(0, at).stripTrailing());
            rest = indent + rest.substring(at + 1).stripLeading();
        }
        lines.add(rest);
        return lines;
    }
}
