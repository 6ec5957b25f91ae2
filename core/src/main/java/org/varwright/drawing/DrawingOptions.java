package org.varwright.drawing;

/**
 * How to draw.
 *
 * @param page the sheet
 * @param colours whether line styles carry colour as well
 */
public record DrawingOptions(Page page, Colours colours) {
    /** Landscape A4 in colour. */
    public static final DrawingOptions LANDSCAPE = new DrawingOptions(Page.A4_LANDSCAPE, Colours.COLOUR);

    /** Upright A4 in colour. */
    public static final DrawingOptions PORTRAIT = new DrawingOptions(Page.A4_PORTRAIT, Colours.COLOUR);

    /** A sheet, its size in px at 96 a inch. */
    public enum Page {
        A4_LANDSCAPE(1122.0, 793.0, "297mm", "210mm"),
        A4_PORTRAIT(793.0, 1122.0, "210mm", "297mm"),
        /** For banks of which each stage has several switches. */
        A3_LANDSCAPE(1587.0, 1122.0, "420mm", "297mm");

        private final double widthPx;
        private final double heightPx;
        private final String width;
        private final String height;

        Page(double widthPx, double heightPx, String width, String height) {
            this.widthPx = widthPx;
            this.heightPx = heightPx;
            this.width = width;
            this.height = height;
        }

        double widthPx() {
            return widthPx;
        }

        double heightPx() {
            return heightPx;
        }

        String width() {
            return width;
        }

        String height() {
            return height;
        }
    }

    /** Whether there is colour; style and text carry the state in either case. */
    public enum Colours {
        COLOUR,
        BLACK_AND_WHITE
    }
}
