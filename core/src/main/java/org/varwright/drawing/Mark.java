package org.varwright.drawing;

/**
 * Where something was drawn on the sheet, so that a test can find overlaps.
 *
 * @param kind what was drawn
 * @param about its text or name
 */
record Mark(Kind kind, String about, double left, double top, double right, double bottom) {
    /** What was drawn. */
    enum Kind {
        TEXT,
        SYMBOL,
        WIRE,
        OUTLINE
    }

    boolean overlaps(Mark other) {
        return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }
}
