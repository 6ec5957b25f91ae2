package org.varwright.drawing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Moves as rows, keys as lanes: a key's lane is a thick line while the key is in someone's hand and a thin one while it is trapped somewhere.
 *
 * <pre>
 *  1 □ turn 43-2 to off        ┌──────┐          TF-1  TF-2
 *  2 □ extend …, take TF-1     │ 43-2 │──TF-1──▶──┓     ┊
 *                              └──────┘           ┃     ┊
 *  3 □ put TF-1 into …         ┌──────┐◀──TF-1────┛     ┊
 *  4 □ open 89-2               │ 89-2 │           ┊     ┊
 *  5 □ extend …, take TF-2     └──────┘──TF-2─────────▶━┓
 * </pre>
 *
 * Moves one after the other on the same thing share a box.
 */
final class KeyLadder {
    static final List<Double> TEXT_WIDTHS = List.of(420.0, 360.0, 300.0, 250.0, 210.0);
    static final double LEGEND_HEIGHT = 22.0;
    private static final double SIZE = 9.4;
    private static final double NUMBER = 26.0;
    private static final double TICK = 18.0;
    private static final double BOX = 104.0;
    private static final double BOX_GAP = 12.0;
    private static final double ARROW = 15.0;
    private static final double PAD = 4.0;
    private static final double LANE_GAP = 9.0;
    private static final double LEAST_LANE = 26.0;
    private static final double MOST_LANE = 60.0;
    private static final Ink CARRIED = new Ink(3.2, "", "#000000", false);
    private static final Ink TRAPPED = new Ink(0.7, "1.5 3", "#555555", false);

    private final List<CardMove> moves;
    private final double textWidth;
    private final List<String> keys;
    private final Map<String, Double> lanes = new LinkedHashMap<>();
    private final List<Double> tops = new ArrayList<>();
    private final double labels;
    private final double headHeight;
    private final double width;
    private final double height;

    KeyLadder(List<CardMove> moves, double textWidth) {
        this.moves = List.copyOf(moves);
        this.textWidth = textWidth;
        Set<String> all = new LinkedHashSet<>();
        for (CardMove move : moves) {
            all.addAll(move.keysIn());
            all.addAll(move.keysOut());
        }
        this.keys = List.copyOf(all);
        double widest = 20.0;
        for (String key : keys) {
            widest = Math.max(widest, label(key).width());
        }
        this.labels = widest + 22.0;
        double x = boxRight() + labels;
        double head = 0.0;
        for (String key : keys) {
            double lane = Math.max(LEAST_LANE, label(key).width() + LANE_GAP);
            lanes.put(key, x + lane / 2.0);
            x += lane;
            head = Math.max(head, label(key).height());
        }
        this.width = x + 4.0;
        this.headHeight = Math.max(16.0, head) + 16.0;
        double y = headHeight;
        for (int i = 0; i < moves.size(); i++) {
            if (i > 0 && !sameBox(i)) {
                y += BOX_GAP;
            }
            tops.add(y);
            y += rowHeight(i);
        }
        this.height = y + 20.0;
    }

    private static TextBlock label(String key) {
        return TextBlock.wrapped(List.of(TextBlock.Row.bold(key)), MOST_LANE);
    }

    private double boxLeft() {
        return NUMBER + TICK + textWidth + 12.0;
    }

    private double boxRight() {
        return boxLeft() + BOX;
    }

    private boolean sameBox(int i) {
        return moves.get(i).at().equals(moves.get(i - 1).at());
    }

    private TextBlock text(int i) {
        return TextBlock.wrapped(
                List.of(new TextBlock.Row(moves.get(i).text(), SIZE, false, TextBlock.Glyph.NONE)), textWidth);
    }

    private TextBlock name(String at) {
        return TextBlock.wrapped(List.of(TextBlock.Row.bold(at)), BOX - 10.0);
    }

    private double rowHeight(int i) {
        CardMove move = moves.get(i);
        double arrows = 0.0;
        for (String key : move.keysIn()) {
            arrows += arrowHeight(key);
        }
        for (String key : move.keysOut()) {
            arrows += arrowHeight(key);
        }
        boolean first = i == 0 || !sameBox(i);
        double box = first ? name(move.at()).height() + 2.0 : 0.0;
        return 2.0 * PAD + Math.max(Math.max(text(i).height(), 11.0), Math.max(arrows, box));
    }

    private static double arrowHeight(String key) {
        return Math.max(ARROW, label(key).height() + 4.0);
    }

    double width() {
        return width;
    }

    double height() {
        return height;
    }

    void draw(Canvas canvas) {
        canvas.text(0.0, 11.0, "step", 7.8, false);
        canvas.text(NUMBER + TICK, 11.0, "what to do; tick when done", 7.8, false);
        canvas.text(boxLeft(), 11.0, "where", 7.8, false);
        for (String key : keys) {
            TextBlock label = label(key);
            label.draw(canvas, lane(key) - label.width() / 2.0, 2.0);
        }
        lanes(canvas);
        for (int i = 0; i < moves.size(); i++) {
            row(canvas, i);
        }
    }

    private double lane(String key) {
        return lanes.getOrDefault(key, 0.0);
    }

    /** The lanes, thick from where a key comes out to where it goes in. */
    private void lanes(Canvas canvas) {
        double top = headHeight - 10.0;
        double bottom = height - 12.0;
        for (String key : keys) {
            double x = lane(key);
            boolean carried = startsInHand(key);
            double from = top;
            for (int i = 0; i < moves.size(); i++) {
                CardMove move = moves.get(i);
                if (move.keysIn().contains(key)) {
                    stretch(canvas, key, x, from, arrowY(i, key, true), true);
                    from = arrowY(i, key, true);
                    carried = false;
                }
                if (move.keysOut().contains(key)) {
                    stretch(canvas, key, x, from, arrowY(i, key, false), carried);
                    from = arrowY(i, key, false);
                    carried = true;
                }
            }
            stretch(canvas, key, x, from, bottom, carried);
            if (carried) {
                canvas.centred(x, height - 2.0, "in hand", 6.4, false);
            }
        }
    }

    private void stretch(Canvas canvas, String key, double x, double from, double to, boolean carried) {
        canvas.thing(
                carried ? "carried" : "trapped", key, () -> canvas.line(x, from, x, to, carried ? CARRIED : TRAPPED));
        canvas.mark(Mark.Kind.WIRE, key, x - 1.6, from, x + 1.6, to);
    }

    private boolean startsInHand(String key) {
        for (CardMove move : moves) {
            if (move.keysIn().contains(key)) {
                return true;
            }
            if (move.keysOut().contains(key)) {
                return false;
            }
        }
        return false;
    }

    /** Height of a key's arrow in a row: keys in above keys out. */
    private double arrowY(int i, String wanted, boolean in) {
        CardMove move = moves.get(i);
        double y = tops.get(i) + PAD;
        for (String key : move.keysIn()) {
            if (in && key.equals(wanted)) {
                return y + arrowHeight(key) - 3.0;
            }
            y += arrowHeight(key);
        }
        for (String key : move.keysOut()) {
            if (!in && key.equals(wanted)) {
                return y + arrowHeight(key) - 3.0;
            }
            y += arrowHeight(key);
        }
        return y;
    }

    private void row(Canvas canvas, int i) {
        CardMove move = moves.get(i);
        double top = tops.get(i);
        canvas.thing("step", Integer.toString(move.step()), () -> {
            canvas.text(0.0, top + PAD + 9.0, Integer.toString(move.step()), SIZE, true);
            canvas.box(NUMBER, top + PAD + 0.5, NUMBER + 10.0, top + PAD + 10.5, Ink.THIN, "none");
            text(i).draw(canvas, NUMBER + TICK, top + PAD);
            if (i == 0 || !sameBox(i)) {
                box(canvas, i);
            }
            for (String key : move.keysIn()) {
                arrow(canvas, key, arrowY(i, key, true), true);
            }
            for (String key : move.keysOut()) {
                arrow(canvas, key, arrowY(i, key, false), false);
            }
        });
    }

    private void box(Canvas canvas, int first) {
        int last = first;
        while (last + 1 < moves.size() && sameBox(last + 1)) {
            last++;
        }
        double top = tops.get(first);
        double bottom = tops.get(last) + rowHeight(last);
        canvas.box(boxLeft(), top, boxRight(), bottom, Ink.SYMBOL, "none");
        TextBlock name = name(moves.get(first).at());
        name.draw(canvas, boxLeft() + 5.0, top + PAD);
        canvas.mark(Mark.Kind.OUTLINE, "box", boxLeft(), top, boxLeft(), bottom);
        canvas.mark(Mark.Kind.OUTLINE, "box", boxRight(), top, boxRight(), bottom);
    }

    private void arrow(Canvas canvas, String key, double y, boolean in) {
        double from = boxRight();
        double to = lane(key);
        canvas.line(from + 1.0, y, to, y, Ink.SYMBOL);
        double tip = in ? from + 1.0 : to - 2.0;
        double back = in ? 6.0 : -6.0;
        canvas.path(
                "M" + Canvas.at(tip + back, y - 3.2) + "L" + Canvas.at(tip, y) + "L" + Canvas.at(tip + back, y + 3.2),
                Ink.SYMBOL);
        canvas.disc(to, y, 2.8, "#000000");
        TextBlock label = label(key);
        label.draw(canvas, from + 10.0, y - 2.5 - label.height());
        canvas.mark(Mark.Kind.WIRE, "arrow " + key, from, y - 0.7, to, y + 0.7);
    }

    static void legend(Canvas canvas, double left, double top) {
        double y = top + 13.0;
        canvas.line(left, y, left + 26.0, y, CARRIED);
        canvas.text(left + 32.0, y + 3.0, "key in hand", 7.8, false);
        canvas.line(left + 100.0, y, left + 126.0, y, TRAPPED);
        canvas.text(left + 132.0, y + 3.0, "key trapped", 7.8, false);
        canvas.text(left + 206.0, y + 3.0, "arrow from a box: key taken out", 7.8, false);
        canvas.text(left + 350.0, y + 3.0, "arrow into a box: key put in and trapped", 7.8, false);
    }
}
