package org.varwright.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.quantity.Dimension;
import org.varwright.svg.FontWidths;

/** The title block along the bottom edge: what is drawn, of which bank, in which state, and what the drawing does not prove. */
final class TitleBlock {
    private static final double HEAD = 11.0;

    private final double width;
    private final String note;
    private final List<Cell> cells;

    /** A cell: what it says over what it holds. */
    private record Cell(String head, String text, double share, boolean bold) {}

    /**
     * @param drawing what kind of drawing
     * @param head of the cell for what it is about, such as {@code state drawn}
     * @param subject what it is about
     * @param note along the bottom: what it does not prove
     */
    TitleBlock(Bank bank, String drawing, String head, String subject, String note, double width) {
        this.width = width;
        this.note = note;
        List<Cell> all = new ArrayList<>();
        all.add(new Cell("bank", marked(bank.name(), bank.label()), 0.26, true));
        all.add(new Cell("site", bank.site().map(FontWidths::name).orElse("not given"), 0.20, false));
        all.add(new Cell("drawing", drawing, 0.17, false));
        all.add(new Cell(head, FontWidths.name(subject), 0.20, true));
        all.add(new Cell(
                "system",
                Dimension.VOLTAGE.format(bank.system().nominalVolts()) + ", "
                        + Dimension.FREQUENCY.format(bank.system().frequencyHertz()) + ", "
                        + bank.standard().name() + " words",
                0.17,
                false));
        this.cells = List.copyOf(all);
    }

    private static String marked(String name, Optional<String> label) {
        return label.map(l -> FontWidths.name(name) + " (marked " + FontWidths.name(l) + ")")
                .orElse(FontWidths.name(name));
    }

    double height() {
        double most = 0.0;
        for (Cell cell : cells) {
            most = Math.max(most, block(cell).height());
        }
        return HEAD + most + 6.0 + 15.0;
    }

    private TextBlock block(Cell cell) {
        return TextBlock.wrapped(
                List.of(new TextBlock.Row(cell.text(), 10.5, cell.bold(), TextBlock.Glyph.NONE)),
                width * cell.share() - 10.0);
    }

    void draw(Canvas canvas, double left, double top) {
        double bottom = top + height();
        double rule = bottom - 15.0;
        canvas.box(left, top, left + width, bottom, Ink.SYMBOL, "none");
        canvas.line(left, rule, left + width, rule, Ink.THIN);
        double x = left;
        for (Cell cell : cells) {
            if (x > left) {
                canvas.line(x, top, x, rule, Ink.THIN);
            }
            canvas.text(x + 5.0, top + 9.0, cell.head(), 7.0, false);
            block(cell).draw(canvas, x + 5.0, top + HEAD);
            x += width * cell.share();
        }
        canvas.text(left + 5.0, bottom - 4.5, note, 8.4, true);
    }
}
