package org.varwright.plot;

import java.util.List;
import org.varwright.svg.Box;
import org.varwright.svg.Lettering;
import org.varwright.svg.Sheet;
import org.varwright.svg.Tone;

/** Lays dials out side by side or one under the other. */
final class PhasorPainter {
    private static final Lettering TITLE = new Lettering(Tone.INK, 14.0, true);
    private static final Lettering HEAD = new Lettering(Tone.INK, 12.0, true);
    private static final double MARGIN = 8.0;
    private static final double GAP = 6.0;
    private static final double BETWEEN = 14.0;
    /** Height of a dial that has the width for itself, in parts of it. */
    private static final double LONE = 0.6;

    private PhasorPainter() {}

    static Drawn draw(PhasorDiagram diagram, Width width) {
        Sheet sheet = new Sheet();
        double inner = width.units() - 2.0 * MARGIN;
        TextBlock title = TextBlock.of(diagram.title(), TITLE, inner);
        title.draw(sheet, MARGIN, MARGIN);
        double y = MARGIN + title.height() + GAP;
        int columns = width == Width.PAGE && diagram.dials().size() > 1 ? 2 : 1;
        double wide = (inner - (columns - 1) * BETWEEN) / columns;
        double high = columns == 2 ? wide : (width == Width.PAGE ? LONE : 0.9) * wide;
        List<Dial> dials = diagram.dials();
        for (int first = 0; first < dials.size(); first += columns) {
            List<Dial> row = dials.subList(first, Math.min(dials.size(), first + columns));
            double head = row.stream()
                    .mapToDouble(d -> TextBlock.of(d.title(), HEAD, wide).height())
                    .max()
                    .orElse(0.0);
            double bottom = y;
            for (int c = 0; c < row.size(); c++) {
                double left = MARGIN + c * (wide + BETWEEN);
                TextBlock.of(row.get(c).title(), HEAD, wide).draw(sheet, left, y);
                Box room = new Box(left, y + head + 2.0, left + wide, y + head + 2.0 + high);
                bottom = Math.max(bottom, new DialPainter(sheet, row.get(c), room).draw());
            }
            y = bottom + BETWEEN;
        }
        TextBlock caption = TextBlock.of(diagram.caption(), ChartPainter.QUIET, inner);
        caption.draw(sheet, MARGIN, y - GAP);
        y += caption.isEmpty() ? -GAP : caption.height() - GAP;
        return new Drawn(sheet, width, y + MARGIN, diagram.title(), diagram.inWords());
    }
}
