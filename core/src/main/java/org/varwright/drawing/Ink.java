package org.varwright.drawing;

/**
 * How a line looks.
 *
 * @param widthPx stroke width
 * @param dashes SVG dash pattern; empty for solid
 * @param colour hexadecimal
 * @param hollow whether a white core makes it a double line
 */
record Ink(double widthPx, String dashes, String colour, boolean hollow) {
    static final Ink SYMBOL = new Ink(1.5, "", "#000000", false);
    static final Ink THIN = new Ink(0.8, "", "#000000", false);
    static final Ink RULE = new Ink(0.6, "", "#777777", false);
    static final Ink OUTLINE = new Ink(1.0, "11 3 2 3 2 3", "#444444", false);
    static final Ink LINK = new Ink(0.8, "2 2", "#000000", false);
    static final Ink DOOR = new Ink(2.2, "", "#444444", false);

    /** The style of a conductor: the style alone tells the states apart, the colour only repeats it. */
    static Ink of(ConductorState state, DrawingOptions.Colours colours) {
        Ink ink = switch (state) {
            case LIVE -> new Ink(3.6, "", "#c00000", false);
            case LIVE_LOW_VOLTAGE -> new Ink(1.8, "", "#c00000", false);
            case CHARGED -> new Ink(2.6, "9 3 2 3", "#a05000", false);
            case GROUNDED -> new Ink(4.6, "", "#006b2d", true);
            case FLOATING -> new Ink(1.2, "4 3", "#1f3f8f", false);
            case UNKNOWN -> new Ink(3.0, "2 2", "#c00000", false);
        };
        return colours == DrawingOptions.Colours.COLOUR ? ink : new Ink(ink.widthPx, ink.dashes, "#000000", ink.hollow);
    }
}
