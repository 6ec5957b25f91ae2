package org.varwright.drawing;

import org.varwright.bank.Device;
import org.varwright.bank.Standard;

/** Draws symbols on a vertical wire at {@code x}, down from {@code top}. */
final class SymbolPainter {
    private static final String BLACK = "#000000";
    private static final String WHITE = "#ffffff";
    private static final Ink INK = Ink.SYMBOL;

    private final Canvas canvas;

    SymbolPainter(Canvas canvas) {
        this.canvas = canvas;
    }

    void draw(Symbol symbol, double x, double top) {
        switch (symbol) {
            case Symbol.Switch s -> withdrawableSwitch(s, x, top);
            case Symbol.Fuse fuse -> {
                canvas.box(x - 4.0, top + 1.0, x + 4.0, top + 19.0, INK, WHITE);
                canvas.line(x, top, x, top + 20.0, INK);
                mark("fuse", x, top, 5.0, 20.0);
            }
            case Symbol.Coil coil -> {
                StringBuilder path = new StringBuilder("M" + Canvas.at(x, top));
                for (int i = 0; i < 4; i++) {
                    path.append("a3.25 3.25 0 0 1 0 6.5 ");
                }
                canvas.path(path.toString(), INK);
                mark("reactor", x, top, 5.0, 26.0);
            }
            case Symbol.Plates plates -> plates(plates.standard(), x, top);
            case Symbol.Joint joint -> new JointPainter(canvas).draw(joint.connection(), x, top);
            case Symbol.VoltageTransformer vt -> {
                canvas.circle(x, top + 7.0, 7.0, INK, "none");
                canvas.circle(x, top + 15.0, 7.0, INK, "none");
                mark("voltage transformer", x, top, 8.0, 22.0);
            }
            case Symbol.CurrentTransformer ct -> {
                canvas.circle(x, top + 8.0, 6.0, INK, "none");
                canvas.line(x, top, x, top + 16.0, INK);
                canvas.line(x - 6.0, top + 8.0, x - 11.0, top + 8.0, Ink.THIN);
                canvas.line(x - 8.0, top + 10.5, x - 6.5, top + 5.5, Ink.THIN);
                canvas.line(x - 10.0, top + 10.5, x - 8.5, top + 5.5, Ink.THIN);
                mark("current transformer", x, top, 7.0, 16.0);
            }
            case Symbol.Ground ground -> ground(x, top);
            case Symbol.Loose loose -> {
                canvas.circle(x, top + 3.0, 2.4, Ink.THIN, WHITE);
                mark("loose end", x, top, 3.0, 6.0);
            }
            case Symbol.Source source -> {
                canvas.line(x, top, x, top + 6.0, INK);
                canvas.path(
                        "M" + Canvas.at(x - 6.0, top + 4.0) + "L" + Canvas.at(x + 6.0, top + 4.0) + "L"
                                + Canvas.at(x, top + 16.0) + "Z",
                        INK);
                mark("source", x, top, 7.0, 16.0);
            }
        }
    }

    private void mark(String name, double x, double top, double half, double height) {
        canvas.mark(Mark.Kind.SYMBOL, name, x - half, top, x + half, top + height);
    }

    void ground(double x, double top) {
        canvas.line(x, top, x, top + 3.0, INK);
        canvas.line(x - 8.0, top + 3.0, x + 8.0, top + 3.0, INK);
        canvas.line(x - 5.0, top + 6.0, x + 5.0, top + 6.0, INK);
        canvas.line(x - 2.0, top + 9.0, x + 2.0, top + 9.0, INK);
        mark("ground", x, top, 8.0, 10.0);
    }

    private void plates(Standard standard, double x, double top) {
        canvas.line(x, top, x, top + 4.0, INK);
        canvas.line(x - 9.0, top + 4.0, x + 9.0, top + 4.0, new Ink(2.2, "", BLACK, false));
        if (standard == Standard.IEEE) {
            canvas.path(
                    "M" + Canvas.at(x - 9.0, top + 11.5) + "Q" + Canvas.at(x, top + 5.0)
                            + Canvas.at(x + 9.0, top + 11.5),
                    new Ink(2.2, "", BLACK, false));
        } else {
            canvas.line(x - 9.0, top + 8.0, x + 9.0, top + 8.0, new Ink(2.2, "", BLACK, false));
        }
        canvas.line(x, top + 8.0, x, top + 12.0, INK);
        mark("capacitor", x, top, 10.0, 12.0);
    }

    /** Plug contacts above and below: joined while in, apart while withdrawn. */
    private void withdrawableSwitch(Symbol.Switch s, double x, double top) {
        if (!s.withdrawable()) {
            contact(s, x, top);
            mark(s.kind().code(), x, top, 12.0, s.height());
            return;
        }
        boolean out = s.position().equals(Device.WITHDRAWN);
        double gap = out ? 5.0 : 0.0;
        double bottom = top + s.height();
        chevron(x, top + 1.0, 5.0);
        chevron(x, top + 4.0 + gap, 5.0);
        chevron(x, bottom - 1.0, -5.0);
        chevron(x, bottom - 4.0 - gap, -5.0);
        if (out) {
            double from = top + 11.0;
            double to = bottom - 11.0;
            canvas.line(x, from - 2.0, x, from + 4.0, INK);
            canvas.line(x, to - 4.0, x, to + 2.0, INK);
            blade(s, x, from + 4.0, to - 4.0);
        } else {
            canvas.line(x, top, x, top + 10.0, INK);
            canvas.line(x, bottom - 10.0, x, bottom, INK);
            blade(s, x, top + 14.0, bottom - 14.0);
            canvas.line(x, top + 10.0, x, top + 14.0, INK);
            canvas.line(x, bottom - 14.0, x, bottom - 10.0, INK);
        }
        mark(s.kind().code(), x, top, 12.0, s.height());
    }

    private void chevron(double x, double y, double depth) {
        canvas.path(
                "M" + Canvas.at(x - 5.0, y + depth) + "L" + Canvas.at(x, y) + "L" + Canvas.at(x + 5.0, y + depth), INK);
    }

    private void contact(Symbol.Switch s, double x, double top) {
        canvas.line(x, top, x, top + 6.0, INK);
        canvas.line(x, top + 27.0, x, top + 32.0, INK);
        blade(s, x, top + 6.0, top + 27.0);
    }

    /** Fixed contact at {@code top} with the mark of the kind, hinge at {@code bottom}, blade between. */
    private void blade(Symbol.Switch s, double x, double top, double bottom) {
        if (s.kind() == Device.Kind.BREAKER && s.standard() == Standard.IEEE) {
            square(s.position(), x, top, bottom);
            return;
        }
        switch (s.position()) {
            case Device.CLOSED -> canvas.line(x, bottom, x, top, new Ink(2.0, "", BLACK, false));
            case Device.OPEN, Device.WITHDRAWN ->
                canvas.line(x, bottom, x - 11.0, top + 1.0, new Ink(2.0, "", BLACK, false));
            default -> {
                canvas.line(x, bottom, x - 6.0, top, Ink.LINK);
                canvas.line(x, bottom, x, top, Ink.LINK);
            }
        }
        contactMark(s.kind(), x, top);
    }

    private void contactMark(Device.Kind kind, double x, double top) {
        switch (kind) {
            case BREAKER -> {
                canvas.line(x - 3.5, top - 3.5, x + 3.5, top + 3.5, INK);
                canvas.line(x - 3.5, top + 3.5, x + 3.5, top - 3.5, INK);
            }
            case DISCONNECTOR, GROUNDING_SWITCH -> canvas.line(x - 5.0, top, x + 5.0, top, INK);
            case LOAD_BREAK_SWITCH -> {
                canvas.line(x - 5.0, top - 1.0, x + 5.0, top - 1.0, INK);
                canvas.circle(x, top + 2.0, 2.4, INK, WHITE);
            }
            case STAGE_SWITCH ->
                canvas.path("M" + Canvas.at(x, top - 4.5) + "A4.5 4.5 0 0 1 " + Canvas.at(x, top + 4.5), INK);
            case SELECTOR -> {}
        }
    }

    /** Breaker of IEEE one-line diagrams: a square; the line through it runs on while closed and lies across while open. */
    private void square(String position, double x, double top, double bottom) {
        double middle = (top + bottom) / 2.0;
        double half = 9.0;
        canvas.line(x, top, x, middle - half, INK);
        canvas.line(x, middle + half, x, bottom, INK);
        canvas.box(x - half, middle - half, x + half, middle + half, INK, WHITE);
        switch (position) {
            case Device.CLOSED -> canvas.line(x, middle - half, x, middle + half, new Ink(2.4, "", BLACK, false));
            case Device.OPEN, Device.WITHDRAWN ->
                canvas.line(x - half + 2.0, middle, x + half - 2.0, middle, new Ink(2.4, "", BLACK, false));
            default -> canvas.centred(x, middle + 4.0, "?", 11.0, true);
        }
    }
}
