package org.varwright.report.pdf;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.UnaryOperator;

/** XHTML that is put together so that it is always well-formed and every text in it is escaped. */
final class Markup {
    private final StringBuilder out = new StringBuilder();
    private final Deque<String> open = new ArrayDeque<>();
    private final UnaryOperator<String> printable;

    /**
     * Starts empty.
     *
     * @param printable turns any text into one that the fonts can print
     */
    Markup(UnaryOperator<String> printable) {
        this.printable = printable;
    }

    /**
     * Opens an element.
     *
     * @param element a name from the program, never from a file
     * @param attributes names and values in turn; names come from the program
     */
    Markup open(String element, String... attributes) {
        out.append('<').append(element);
        for (int i = 0; i < attributes.length; i += 2) {
            out.append(' ').append(attributes[i]).append("=\"");
            escape(printable.apply(attributes[i + 1]));
            out.append('"');
        }
        out.append('>');
        open.push(element);
        return this;
    }

    Markup close() {
        out.append("</").append(open.pop()).append('>');
        return this;
    }

    Markup text(String text) {
        escape(printable.apply(text));
        return this;
    }

    /** An element that holds only text. */
    Markup element(String element, String text, String... attributes) {
        return open(element, attributes).text(text).close();
    }

    /** Adds markup that the program itself has parsed and printed. */
    Markup trusted(String markup) {
        out.append(markup);
        return this;
    }

    /** The whole, once every element is closed. */
    String finish() {
        if (!open.isEmpty()) {
            throw new IllegalStateException("still open: " + open);
        }
        return out.toString();
    }

    private void escape(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> out.append(c);
            }
        }
    }
}
