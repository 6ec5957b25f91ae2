package org.varwright.drawing;

import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.svg.FontWidths;

/** One sheet for one access: the moves with their keys as a table, and beside it where each key travels. */
public final class SequenceCard {
    private static final String NOTE =
            "Moves and keys only: looks, holds and tests are in the order of work. Prove dead before you touch.";

    private static final double MARGIN = 22.0;
    private static final double GAP = 10.0;
    private static final double HEAD = 30.0;
    private static final double LARGEST = 1.3;

    private SequenceCard() {}

    /**
     * The card as the text of an SVG file.
     *
     * @param title what the card is for, such as {@code way in to bay 2}
     * @param moves in order
     */
    public static String draw(Bank bank, String title, List<CardMove> moves, DrawingOptions options) {
        return sheet(bank, title, moves, options)
                .svg(
                        bank.name() + ": sequence card, " + title,
                        "Moves with keys, in order, and where each key travels.");
    }

    static Canvas sheet(Bank bank, String title, List<CardMove> moves, DrawingOptions options) {
        Canvas canvas = new Canvas(options);
        double width = options.page().widthPx() - 2.0 * MARGIN;
        TitleBlock block = new TitleBlock(bank, "sequence card", "access", title, NOTE, width);
        double blockTop = options.page().heightPx() - MARGIN - block.height();
        double legendTop = blockTop - GAP - KeyLadder.LEGEND_HEIGHT;
        double height = legendTop - GAP - MARGIN - HEAD;
        KeyLadder ladder = best(moves, width, height);
        double scale = scale(ladder, width, height);
        FontWidths.wrap(FontWidths.name(title), 15.0, true, width).stream()
                .limit(1)
                .forEach(line -> canvas.text(MARGIN, MARGIN + 15.0, line, 15.0, true));
        canvas.placed(MARGIN, MARGIN + HEAD, scale, () -> ladder.draw(canvas));
        canvas.line(MARGIN, legendTop, MARGIN + width, legendTop, Ink.RULE);
        KeyLadder.legend(canvas, MARGIN, legendTop);
        block.draw(canvas, MARGIN, blockTop);
        return canvas;
    }

    /** Of several widths of the words, the one that lets the card be largest. */
    private static KeyLadder best(List<CardMove> moves, double width, double height) {
        KeyLadder best = new KeyLadder(moves, KeyLadder.TEXT_WIDTHS.getFirst());
        for (double textWidth : KeyLadder.TEXT_WIDTHS) {
            KeyLadder ladder = new KeyLadder(moves, textWidth);
            if (scale(ladder, width, height) > scale(best, width, height) + 1e-6) {
                best = ladder;
            }
        }
        return best;
    }

    private static double scale(KeyLadder ladder, double width, double height) {
        return Math.min(LARGEST, Math.min(width / ladder.width(), height / ladder.height()));
    }
}
