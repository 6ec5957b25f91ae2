package org.varwright.drawing;

import java.util.ArrayList;
import java.util.List;

/** Looks for words that something lies over: other words, symbols, wires, outlines; and for anything off the sheet. */
final class Overlaps {
    private Overlaps() {}

    static List<String> in(List<Mark> marks, DrawingOptions.Page page) {
        List<String> found = new ArrayList<>();
        for (int i = 0; i < marks.size(); i++) {
            Mark a = marks.get(i);
            if (a.left() < 0.0 || a.top() < 0.0 || a.right() > page.widthPx() || a.bottom() > page.heightPx()) {
                found.add(a + " is off the sheet");
            }
            for (int j = i + 1; j < marks.size(); j++) {
                Mark b = marks.get(j);
                boolean words = a.kind() == Mark.Kind.TEXT || b.kind() == Mark.Kind.TEXT;
                boolean symbols = a.kind() == Mark.Kind.SYMBOL && b.kind() == Mark.Kind.SYMBOL;
                if ((words || symbols) && shrunk(a).overlaps(shrunk(b))) {
                    found.add(a + "\n   lies over " + b);
                }
            }
        }
        return found;
    }

    /** Touching is no overlap. */
    private static Mark shrunk(Mark m) {
        double by = m.kind() == Mark.Kind.OUTLINE ? 0.0 : 0.05;
        return new Mark(m.kind(), m.about(), m.left() + by, m.top() + by, m.right() - by, m.bottom() - by);
    }
}
