package org.varwright.isolation;

import java.util.ArrayList;
import java.util.List;
import org.varwright.page.Page;

/** The lines of an order of work: a page on which every step is wrapped under itself. */
final class Sheet {
    static final int COLUMNS = Page.COLUMNS;

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
        Page.wrap(first + text, indent).forEach(this::line);
    }

    String text() {
        return String.join("\n", lines) + "\n";
    }
}
