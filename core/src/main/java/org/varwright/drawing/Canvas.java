package org.varwright.drawing;

import java.util.ArrayList;
import java.util.List;
import org.varwright.svg.FontWidths;
import org.varwright.svg.SvgText;

/** Writes SVG and keeps a list of what was drawn where. Only elements and presentation attributes of SVG 1.1. */
final class Canvas {
    static final double LINE_HEIGHT = 1.22;

    private final StringBuilder out = new StringBuilder(16_384);
    private final List<Mark> marks = new ArrayList<>();
    private final DrawingOptions options;
    private double originX;
    private double originY;
    private double scale = 1.0;

    Canvas(DrawingOptions options) {
        this.options = options;
    }

    /** Everything that {@code content} draws is shifted and scaled. */
    void placed(double x, double y, double factor, Runnable content) {
        originX = x;
        originY = y;
        scale = factor;
        out.append("<g transform=\"translate(")
                .append(SvgText.number(x))
                .append(' ')
                .append(SvgText.number(y))
                .append(") scale(")
                .append(fine(factor))
                .append(")\">\n");
        content.run();
        out.append("</g>\n");
        originX = 0.0;
        originY = 0.0;
        scale = 1.0;
    }

    private static String fine(double factor) {
        long parts = Math.round(factor * 10_000.0);
        String rest = Long.toString(10_000 + parts % 10_000);
        return parts / 10_000 + "." + rest.substring(1);
    }

    /** What {@code content} draws is turned a quarter clockwise about a point; where it lies must be noted by the caller. */
    void turned(double x, double y, Runnable content) {
        turned(x, y, 1.0, content);
    }

    /** Likewise, and made smaller by a factor. */
    void turned(double x, double y, double factor, Runnable content) {
        out.append("<g transform=\"translate(")
                .append(SvgText.number(x))
                .append(' ')
                .append(SvgText.number(y))
                .append(") rotate(90) scale(")
                .append(fine(factor))
                .append(") translate(")
                .append(SvgText.number(-x))
                .append(' ')
                .append(SvgText.number(-y))
                .append(")\">\n");
        int noted = marks.size();
        content.run();
        marks.subList(noted, marks.size()).clear();
        out.append("</g>\n");
    }

    /** A group for one thing of the bank, with its name for people who point at it. */
    void thing(String kind, String name, Runnable content) {
        out.append("<g class=\"")
                .append(kind)
                .append("\" data-name=\"")
                .append(SvgText.escape(name))
                .append("\"><title>")
                .append(SvgText.escape(kind + " " + name))
                .append("</title>\n");
        content.run();
        out.append("</g>\n");
    }

    /** One line of text from {@code x} on its base line. */
    void text(double x, double baseline, String text, double size, boolean bold) {
        String clean = SvgText.clean(text);
        if (clean.isBlank()) {
            return;
        }
        double width = FontWidths.width(clean, size, bold);
        out.append("<text x=\"")
                .append(SvgText.number(x))
                .append("\" y=\"")
                .append(SvgText.number(baseline))
                .append("\" font-size=\"")
                .append(SvgText.number(size))
                .append(bold ? "\" font-weight=\"bold" : "")
                .append("\" textLength=\"")
                .append(SvgText.number(width))
                .append("\" lengthAdjust=\"spacingAndGlyphs\">")
                .append(SvgText.escape(clean))
                .append("</text>\n");
        mark(Mark.Kind.TEXT, clean, x, baseline - 0.74 * size, x + width, baseline + 0.22 * size);
    }

    void centred(double x, double baseline, String text, double size, boolean bold) {
        text(x - FontWidths.width(SvgText.clean(text), size, bold) / 2.0, baseline, text, size, bold);
    }

    /** A piece of a conductor. */
    void wire(double x1, double y1, double x2, double y2, String conductor, ConductorState state) {
        if (x1 != x2 || y1 != y2) {
            thing("wire", conductor, () -> sample(x1, y1, x2, y2, state));
        }
    }

    /** A line in the style of a state. */
    void sample(double x1, double y1, double x2, double y2, ConductorState state) {
        Ink ink = Ink.of(state, options.colours());
        line(x1, y1, x2, y2, ink);
        double half = ink.widthPx() / 2.0;
        mark(
                Mark.Kind.WIRE,
                state.name(),
                Math.min(x1, x2) - half,
                Math.min(y1, y2) - half,
                Math.max(x1, x2) + half,
                Math.max(y1, y2) + half);
    }

    /** A dot where conductors join. */
    void dot(double x, double y, ConductorState state) {
        disc(x, y, 3.2, Ink.of(state, options.colours()).colour());
    }

    void line(double x1, double y1, double x2, double y2, Ink ink) {
        path("M" + at(x1, y1) + "L" + at(x2, y2), ink);
    }

    /** A path that is not filled. */
    void path(String data, Ink ink) {
        stroke(data, ink.widthPx(), ink.dashes(), ink.colour());
        if (ink.hollow()) {
            stroke(data, ink.widthPx() * 0.42, "", "#ffffff");
        }
    }

    private void stroke(String data, double width, String dashes, String colour) {
        out.append("<path d=\"")
                .append(data)
                .append("\" fill=\"none\" stroke=\"")
                .append(colour)
                .append("\" stroke-width=\"")
                .append(SvgText.number(width))
                .append(dashes.isEmpty() ? "" : "\" stroke-dasharray=\"" + dashes)
                .append("\"/>\n");
    }

    void disc(double x, double y, double radius, String fill) {
        out.append("<circle cx=\"")
                .append(SvgText.number(x))
                .append("\" cy=\"")
                .append(SvgText.number(y))
                .append("\" r=\"")
                .append(SvgText.number(radius))
                .append("\" fill=\"")
                .append(fill)
                .append("\"/>\n");
    }

    void circle(double x, double y, double radius, Ink ink, String fill) {
        out.append("<circle cx=\"")
                .append(SvgText.number(x))
                .append("\" cy=\"")
                .append(SvgText.number(y))
                .append("\" r=\"")
                .append(SvgText.number(radius))
                .append("\" fill=\"")
                .append(fill)
                .append("\" stroke=\"")
                .append(ink.colour())
                .append("\" stroke-width=\"")
                .append(SvgText.number(ink.widthPx()))
                .append("\"/>\n");
    }

    void box(double left, double top, double right, double bottom, Ink ink, String fill) {
        out.append("<rect x=\"")
                .append(SvgText.number(left))
                .append("\" y=\"")
                .append(SvgText.number(top))
                .append("\" width=\"")
                .append(SvgText.number(right - left))
                .append("\" height=\"")
                .append(SvgText.number(bottom - top))
                .append("\" fill=\"")
                .append(fill)
                .append("\" stroke=\"")
                .append(ink.colour())
                .append("\" stroke-width=\"")
                .append(SvgText.number(ink.widthPx()))
                .append(ink.dashes().isEmpty() ? "" : "\" stroke-dasharray=\"" + ink.dashes())
                .append("\"/>\n");
    }

    static String at(double x, double y) {
        return SvgText.number(x) + " " + SvgText.number(y) + " ";
    }

    /** Notes where something was drawn. */
    void mark(Mark.Kind kind, String about, double left, double top, double right, double bottom) {
        marks.add(new Mark(
                kind,
                about,
                originX + scale * left,
                originY + scale * top,
                originX + scale * right,
                originY + scale * bottom));
    }

    List<Mark> marks() {
        return List.copyOf(marks);
    }

    /** The whole document. */
    String svg(String title, String description) {
        DrawingOptions.Page page = options.page();
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                + "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"" + page.width() + "\" height=\""
                + page.height() + "\" viewBox=\"0 0 " + SvgText.number(page.widthPx()) + " "
                + SvgText.number(page.heightPx())
                + "\" font-family=\"Helvetica, Arial, 'Liberation Sans', sans-serif\" fill=\"#000000\">\n"
                + "<title>" + SvgText.escape(title) + "</title>\n"
                + "<desc>" + SvgText.escape(description) + "</desc>\n"
                + "<rect x=\"0\" y=\"0\" width=\"" + SvgText.number(page.widthPx()) + "\" height=\""
                + SvgText.number(page.heightPx()) + "\" fill=\"#ffffff\"/>\n"
                + out + "</svg>\n";
    }
}
