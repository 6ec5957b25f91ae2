package org.varwright.svg;

/** How words are set. */
public record Lettering(Tone tone, double size, boolean bold) {
    /** From the top of a capital to the bottom of a descender, in parts of the size. */
    static final double ABOVE = 0.76;

    static final double BELOW = 0.24;

    public double width(String text) {
        return FontWidths.width(SvgText.clean(text), size, bold);
    }

    /** From one base line to the next. */
    public double line() {
        return 1.2 * size;
    }

    /** What a line of text covers, by the left end of its base line. */
    public Box covers(double x, double baseline, String text) {
        return new Box(x, baseline - ABOVE * size, x + width(text), baseline + BELOW * size);
    }
}
