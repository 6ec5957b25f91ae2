package org.varwright.isolation;

import java.util.ArrayList;
import java.util.List;

/** Lines of 100 columns. */
final class Page {
    static final int COLUMNS = 100;

    private final List<String> lines = new ArrayList<>();

    void line(String text) {
        lines.add(text.stripTrailing());
    }

    void blank() {
        if (!lines.isEmpty() && !lines.getLast().isEmpty()) {
            lines.add("");
        }
    }

    void rule() {
        lines.add("-".repeat(COLUMNS));
    }

    /** Text after {@code first}, broken at blanks, later lines indented as far as the first one's text. */
    void wrapped(String first, String text) {
        wrapped(first, text, " ".repeat(first.length()));
    }

    void wrapped(String first, String text, String indent) {
        String rest = first + text;
        while (rest.length() > COLUMNS) {
            int at = rest.lastIndexOf(' ', COLUMNS);
            if (at <= indent.length()) {
                break;
            }
            lines.add(rest.substring(0, at).stripTrailing());
            rest = indent + rest.substring(at + 1);
        }
        lines.add(rest.stripTrailing());
    }

    String text() {
        return String.join("\n", lines) + "\n";
    }
}
