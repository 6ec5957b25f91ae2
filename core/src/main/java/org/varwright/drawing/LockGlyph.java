package org.varwright.drawing;

/** A trapped-key lock, 12 wide and 9 high: a body with a keyhole (filled while the key is trapped in it) and a bolt to the left (out while it holds). */
final class LockGlyph {
    static final double WIDTH = 12.0;
    static final double HEIGHT = 8.0;

    private LockGlyph() {}

    static void draw(Canvas canvas, double left, double top, DrawingState.Bolt bolt) {
        double middle = top + HEIGHT / 2.0;
        canvas.box(left + 4.0, top, left + WIDTH, top + HEIGHT, Ink.THIN, "#ffffff");
        switch (bolt) {
            case EXTENDED -> {
                canvas.line(left, middle, left + 4.0, middle, new Ink(3.0, "", "#000000", false));
                canvas.circle(left + 8.0, middle, 2.1, Ink.THIN, "#ffffff");
            }
            case WITHDRAWN -> canvas.disc(left + 8.0, middle, 2.4, "#000000");
            case UNKNOWN -> canvas.line(left + 5.5, middle, left + 10.5, middle, Ink.LINK);
        }
        canvas.mark(Mark.Kind.SYMBOL, "lock", left, top, left + WIDTH, top + HEIGHT);
    }
}
