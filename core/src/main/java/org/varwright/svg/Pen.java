package org.varwright.svg;

/**
 * What a line is drawn with.
 *
 * @param width in sheet units
 * @param dashes SVG dash pattern; empty for a full line
 */
public record Pen(Tone tone, double width, String dashes) {
    public static Pen full(Tone tone, double width) {
        return new Pen(tone, width, "");
    }
}
