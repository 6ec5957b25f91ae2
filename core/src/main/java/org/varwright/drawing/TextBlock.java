package org.varwright.drawing;

import java.util.ArrayList;
import java.util.List;
import org.varwright.svg.FontWidths;
import org.varwright.svg.SvgText;

/**
 * Lines of text, wrapped to a width, some with a small glyph before them.
 *
 * @param lines from the top
 */
record TextBlock(List<Line> lines) {
    static final double SIZE = 8.6;
    static final double SMALL = 7.8;
    private static final double LOCK_WIDTH = 15.0;

    /** A glyph before a line. */
    enum Glyph {
        NONE(0.0),
        LOCK_EXTENDED(LOCK_WIDTH),
        LOCK_WITHDRAWN(LOCK_WIDTH),
        LOCK_UNKNOWN(LOCK_WIDTH),
        INDENT(4.0);

        private final double width;

        Glyph(double width) {
            this.width = width;
        }

        double width() {
            return width;
        }
    }

    /** Text before it is wrapped. */
    record Row(String text, double size, boolean bold, Glyph glyph) {
        static Row bold(String name) {
            return new Row(FontWidths.name(name), SIZE, true, Glyph.NONE);
        }

        static Row title(String name) {
            return new Row(FontWidths.name(name), 10.4, true, Glyph.NONE);
        }

        static Row plain(String text) {
            return new Row(text, SIZE, false, Glyph.NONE);
        }

        static Row small(String text) {
            return new Row(text, SMALL, false, Glyph.NONE);
        }

        double longestWord() {
            double longest = 0.0;
            for (String word : SvgText.clean(text).split(" ", -1)) {
                longest = Math.max(longest, FontWidths.width(word, size, bold));
            }
            return glyph.width() + longest;
        }
    }

    /** One line as drawn. */
    record Line(String text, double size, boolean bold, Glyph glyph) {
        double width() {
            return glyph.width() + FontWidths.width(text, size, bold);
        }

        double height() {
            return size * Canvas.LINE_HEIGHT;
        }
    }

    static TextBlock wrapped(List<Row> rows, double width) {
        List<Line> lines = new ArrayList<>();
        for (Row row : rows) {
            Glyph glyph = row.glyph();
            for (String text : FontWidths.wrap(row.text(), row.size(), row.bold(), width - glyph.width())) {
                lines.add(new Line(text, row.size(), row.bold(), glyph));
                glyph = row.glyph() == Glyph.NONE ? Glyph.NONE : Glyph.INDENT;
            }
        }
        return new TextBlock(List.copyOf(lines));
    }

    static double longestWord(List<Row> rows) {
        return rows.stream().mapToDouble(Row::longestWord).max().orElse(0.0);
    }

    double width() {
        return lines.stream().mapToDouble(Line::width).max().orElse(0.0);
    }

    double height() {
        return lines.stream().mapToDouble(Line::height).sum();
    }

    void draw(Canvas canvas, double left, double top) {
        double y = top;
        for (Line line : lines) {
            double baseline = y + line.size() * 0.96;
            switch (line.glyph()) {
                case LOCK_EXTENDED -> LockGlyph.draw(canvas, left, y + 1.0, DrawingState.Bolt.EXTENDED);
                case LOCK_WITHDRAWN -> LockGlyph.draw(canvas, left, y + 1.0, DrawingState.Bolt.WITHDRAWN);
                case LOCK_UNKNOWN -> LockGlyph.draw(canvas, left, y + 1.0, DrawingState.Bolt.UNKNOWN);
                case NONE, INDENT -> {}
            }
            canvas.text(left + line.glyph().width(), baseline, line.text(), line.size(), line.bold());
            y += line.height();
        }
    }
}
