package org.varwright.drawing;

/** Draws the outline of a compartment with its door in the right-hand part of the bottom: a thick bar while closed, a gap with the leaf swung out while open. */
final class DoorPainter {
    private static final double DOOR = 26.0;

    private final Canvas canvas;

    DoorPainter(Canvas canvas) {
        this.canvas = canvas;
    }

    /** An outline without a door: another part of a compartment whose door is drawn elsewhere. */
    void part(double left, double top, double right, double bottom) {
        canvas.box(left, top, right, bottom, Ink.OUTLINE, "none");
        mark(left, top, right, bottom);
    }

    void frame(double left, double top, double right, double bottom, DrawingState.Door door) {
        double to = right - 8.0;
        double from = Math.max(left + 4.0, to - DOOR);
        canvas.path(
                "M" + Canvas.at(from, bottom) + "L" + Canvas.at(left, bottom) + "L" + Canvas.at(left, top) + "L"
                        + Canvas.at(right, top) + "L" + Canvas.at(right, bottom) + "L" + Canvas.at(to, bottom),
                Ink.OUTLINE);
        leaf(from, to, bottom, door);
        mark(left, top, right, bottom);
    }

    private void mark(double left, double top, double right, double bottom) {
        canvas.mark(Mark.Kind.OUTLINE, "outline", left, top, left, bottom);
        canvas.mark(Mark.Kind.OUTLINE, "outline", right, top, right, bottom);
        canvas.mark(Mark.Kind.OUTLINE, "outline", left, top, right, top);
        canvas.mark(Mark.Kind.OUTLINE, "outline", left, bottom, right, bottom);
    }

    void leaf(double from, double to, double y, DrawingState.Door door) {
        switch (door) {
            case CLOSED -> canvas.line(from, y, to, y, Ink.DOOR);
            case OPEN -> {
                double length = to - from;
                canvas.line(from, y, from + length * 0.88, y + length * 0.4, Ink.DOOR);
                canvas.disc(from, y, 2.0, "#444444");
                canvas.mark(Mark.Kind.SYMBOL, "door", from, y + 0.5, to, y + length * 0.4);
            }
            case UNKNOWN -> canvas.line(from, y, to, y, Ink.LINK);
        }
    }
}
