package org.varwright.plot;

import org.varwright.svg.Box;
import org.varwright.svg.Pen;
import org.varwright.svg.Sheet;
import org.varwright.svg.Tone;

/** A mark at a point. */
public enum Marker {
    NONE,
    DOT,
    RING,
    SQUARE,
    TRIANGLE,
    DIAMOND,
    CROSS;

    private static final double REACH = 3.6;
    private static final Marker[] IN_TURN = {DOT, SQUARE, TRIANGLE, DIAMOND, CROSS, RING};

    static Marker inTurn(int number) {
        return IN_TURN[number % IN_TURN.length];
    }

    /** What it covers. */
    Box box(double x, double y) {
        return new Box(x, y, x, y).grown(this == NONE ? 0.0 : REACH);
    }

    void draw(Sheet sheet, double x, double y, Tone tone) {
        switch (this) {
            case NONE -> {
                // nothing to see
            }
            case DOT -> sheet.disc(x, y, REACH - 0.4, tone);
            case RING -> {
                sheet.disc(x, y, REACH - 0.4, Tone.PAPER);
                sheet.ring(x, y, REACH - 0.4, Pen.full(tone, 1.4));
            }
            case SQUARE -> sheet.fill(new Box(x, y, x, y).grown(REACH - 0.6), tone);
            case TRIANGLE ->
                sheet.area(
                        "M" + Sheet.at(x, y - REACH - 0.4)
                                + "L" + Sheet.at(x + REACH, y + REACH - 0.8)
                                + "L" + Sheet.at(x - REACH, y + REACH - 0.8)
                                + "Z",
                        tone);
            case DIAMOND ->
                sheet.area(
                        "M" + Sheet.at(x, y - REACH - 0.6)
                                + "L" + Sheet.at(x + REACH, y)
                                + "L" + Sheet.at(x, y + REACH + 0.6)
                                + "L" + Sheet.at(x - REACH, y)
                                + "Z",
                        tone);
            case CROSS -> {
                double r = REACH - 0.6;
                sheet.path(
                        "M" + Sheet.at(x - r, y - r) + "L" + Sheet.at(x + r, y + r) + "M" + Sheet.at(x - r, y + r) + "L"
                                + Sheet.at(x + r, y - r),
                        Pen.full(tone, 1.5));
            }
        }
    }
}
