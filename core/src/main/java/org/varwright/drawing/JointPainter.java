package org.varwright.drawing;

import org.varwright.bank.Connection;

/** Draws how the legs of a stage are joined, 20 high: wye, double wye, delta, or two branches with a bridge. */
final class JointPainter {
    private final Canvas canvas;

    JointPainter(Canvas canvas) {
        this.canvas = canvas;
    }

    void draw(Connection connection, double x, double top) {
        Ink ink = Ink.SYMBOL;
        canvas.line(x, top, x, top + 2.0, ink);
        switch (connection) {
            case WYE_GROUNDED, WYE_UNGROUNDED -> {
                wye(x, top + 10.0, 7.0, ink);
                canvas.line(x, top + 10.0, x, top + 20.0, ink);
            }
            case DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED -> {
                canvas.line(x - 6.0, top + 2.0, x + 6.0, top + 2.0, Ink.THIN);
                wye(x - 6.0, top + 10.0, 5.0, ink);
                wye(x + 6.0, top + 10.0, 5.0, ink);
                canvas.path(
                        "M" + Canvas.at(x - 6.0, top + 10.0) + "L" + Canvas.at(x - 6.0, top + 17.0) + "L"
                                + Canvas.at(x + 6.0, top + 17.0) + "L" + Canvas.at(x + 6.0, top + 10.0),
                        ink);
                canvas.line(x, top + 17.0, x, top + 20.0, ink);
            }
            case DELTA ->
                canvas.path(
                        "M" + Canvas.at(x, top + 2.0) + "L" + Canvas.at(x + 9.0, top + 17.0) + "L"
                                + Canvas.at(x - 9.0, top + 17.0) + "Z",
                        ink);
            case BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> {
                canvas.path(
                        "M" + Canvas.at(x - 7.0, top + 17.0) + "L" + Canvas.at(x - 7.0, top + 2.0) + "L"
                                + Canvas.at(x + 7.0, top + 2.0) + "L" + Canvas.at(x + 7.0, top + 17.0) + "Z",
                        ink);
                canvas.line(x - 7.0, top + 9.5, x + 7.0, top + 9.5, ink);
                canvas.line(x, top + 17.0, x, top + 20.0, ink);
            }
        }
        canvas.mark(Mark.Kind.SYMBOL, connection.code(), x - 11.0, top, x + 11.0, top + 20.0);
    }

    private void wye(double x, double y, double arm, Ink ink) {
        canvas.line(x, y, x, y + arm, ink);
        canvas.line(x, y, x - arm, y - arm, ink);
        canvas.line(x, y, x + arm, y - arm, ink);
    }
}
