package org.varwright.svg;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * A sheet to draw on. Only elements and presentation attributes of SVG 1.1; one style rule turns the tones for dark screens, which a reader may leave out.
 * Text is escaped here and nowhere else.
 */
public final class Sheet {
    private static final int PIECE = 8_192;

    private final StringBuilder out = new StringBuilder(PIECE);
    private final List<Box> words = new ArrayList<>();
    private final Set<Tone> tones = new TreeSet<>();

    /** A straight line. */
    public void line(double x1, double y1, double x2, double y2, Pen pen) {
        path("M" + at(x1, y1) + "L" + at(x2, y2), pen);
    }

    /** A path that is not filled. */
    public void path(String data, Pen pen) {
        out.append("<path d=\"").append(data.strip()).append("\" ");
        stroke(pen);
        out.append(" stroke-linejoin=\"round\"/>\n");
    }

    /** A filled path without an outline. */
    public void area(String data, Tone tone) {
        tones.add(tone);
        out.append("<path d=\"")
                .append(data.strip())
                .append("\" ")
                .append(tone.fill())
                .append("/>\n");
    }

    /** A filled rectangle without an outline. */
    public void fill(Box box, Tone tone) {
        tones.add(tone);
        rectangle(box);
        out.append(tone.fill()).append("/>\n");
    }

    /** The outline of a rectangle. */
    public void frame(Box box, Pen pen) {
        rectangle(box);
        stroke(pen);
        out.append("/>\n");
    }

    private void rectangle(Box box) {
        out.append("<rect x=\"")
                .append(SvgText.number(box.left()))
                .append("\" y=\"")
                .append(SvgText.number(box.top()))
                .append("\" width=\"")
                .append(SvgText.number(box.width()))
                .append("\" height=\"")
                .append(SvgText.number(box.height()))
                .append("\" ");
    }

    public void ring(double x, double y, double radius, Pen pen) {
        round(x, y, radius);
        stroke(pen);
        out.append("/>\n");
    }

    public void disc(double x, double y, double radius, Tone tone) {
        tones.add(tone);
        round(x, y, radius);
        out.append(tone.fill()).append("/>\n");
    }

    private void round(double x, double y, double radius) {
        out.append("<circle cx=\"")
                .append(SvgText.number(x))
                .append("\" cy=\"")
                .append(SvgText.number(y))
                .append("\" r=\"")
                .append(SvgText.number(radius))
                .append("\" ");
    }

    private void stroke(Pen pen) {
        tones.add(pen.tone());
        out.append(pen.tone().stroke())
                .append(" stroke-width=\"")
                .append(SvgText.number(pen.width()))
                .append('"');
        if (!pen.dashes().isEmpty()) {
            out.append(" stroke-dasharray=\"").append(pen.dashes()).append('"');
        }
    }

    /** One line of text from the left end of its base line. */
    public void text(double x, double baseline, String text, Lettering lettering) {
        String clean = SvgText.clean(text);
        if (clean.isBlank()) {
            return;
        }
        tones.add(lettering.tone());
        out.append("<text x=\"")
                .append(SvgText.number(x))
                .append("\" y=\"")
                .append(SvgText.number(baseline))
                .append("\" ")
                .append(lettering.tone().fill())
                .append(" font-size=\"")
                .append(SvgText.number(lettering.size()))
                .append(lettering.bold() ? "\" font-weight=\"bold" : "")
                .append("\" textLength=\"")
                .append(SvgText.number(lettering.width(clean)))
                .append("\" lengthAdjust=\"spacingAndGlyphs\">")
                .append(SvgText.escape(clean))
                .append("</text>\n");
        words.add(lettering.covers(x, baseline, clean));
    }

    /** Likewise, about its middle. */
    public void centred(double x, double baseline, String text, Lettering lettering) {
        text(x - lettering.width(text) / 2.0, baseline, text, lettering);
    }

    /** Likewise, from its right end. */
    public void flushRight(double x, double baseline, String text, Lettering lettering) {
        text(x - lettering.width(text), baseline, text, lettering);
    }

    /** A group with a name, for those who point at it or can't see it. */
    public void group(String name, Runnable content) {
        out.append("<g><title>").append(SvgText.escape(name)).append("</title>\n");
        content.run();
        out.append("</g>\n");
    }

    /** A point in path data. */
    public static String at(double x, double y) {
        return SvgText.number(x) + " " + SvgText.number(y) + " ";
    }

    /** What each line of text covers, in drawing order. */
    public List<Box> words() {
        return List.copyOf(words);
    }

    /**
     * The whole document.
     *
     * @param width of the sheet in its own unit
     * @param height of the sheet
     * @param millimetres of its width on paper; a narrow screen makes it smaller
     * @param title what it is, in a few words
     * @param description what it shows, for those who can't see it
     */
    public String svg(double width, double height, double millimetres, String title, String description) {
        StringBuilder rules = new StringBuilder(Tone.PAPER.darkRules());
        tones.stream().filter(t -> t != Tone.PAPER).forEach(t -> rules.append(t.darkRules()));
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                + "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"" + SvgText.number(millimetres)
                + "mm\" height=\"" + SvgText.number(millimetres * height / width) + "mm\" viewBox=\"0 0 "
                + at(width, height).strip()
                + "\" style=\"max-width:100%;height:auto\" role=\"img\" aria-label=\"" + SvgText.escape(title)
                + "\" font-family=\"Helvetica, Arial, 'Liberation Sans', sans-serif\">\n"
                + "<title>" + SvgText.escape(title) + "</title>\n"
                + "<desc>" + SvgText.escape(description) + "</desc>\n"
                + "<style>@media screen and (prefers-color-scheme:dark){" + rules + "}</style>\n"
                + "<rect x=\"0\" y=\"0\" width=\"" + SvgText.number(width) + "\" height=\"" + SvgText.number(height)
                + "\" " + Tone.PAPER.fill() + "/>\n"
                + out + "</svg>\n";
    }
}
