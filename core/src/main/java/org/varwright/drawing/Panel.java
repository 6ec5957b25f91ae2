package org.varwright.drawing;

import java.util.ArrayList;
import java.util.List;

/**
 * Pieces set in columns, as low as possible, in order; a heading stays with what follows it.
 *
 * @param columns of pieces
 * @param columnWidth of each [px]
 * @param height of the highest [px]
 */
record Panel(List<List<Piece>> columns, double columnWidth, double height) {
    static final double GAP = 16.0;

    static Panel set(List<Piece> pieces, int columnCount, double columnWidth) {
        double total = pieces.stream().mapToDouble(p -> p.height(columnWidth)).sum();
        double height = total / columnCount;
        List<List<Piece>> columns = filled(pieces, columnWidth, height);
        while (columns.size() > columnCount) {
            height += 4.0;
            columns = filled(pieces, columnWidth, height);
        }
        double highest = columns.stream()
                .mapToDouble(
                        c -> c.stream().mapToDouble(p -> p.height(columnWidth)).sum())
                .max()
                .orElse(0.0);
        return new Panel(columns, columnWidth, highest);
    }

    private static List<List<Piece>> filled(List<Piece> pieces, double width, double height) {
        List<List<Piece>> columns = new ArrayList<>();
        List<Piece> column = new ArrayList<>();
        double y = 0.0;
        String heading = "";
        for (int i = 0; i < pieces.size(); i++) {
            if (pieces.get(i) instanceof Piece.Heading h) {
                heading = h.text();
            }
            double need = pieces.get(i).height(width);
            double withNext = pieces.get(i) instanceof Piece.Heading && i + 1 < pieces.size()
                    ? need + pieces.get(i + 1).height(width)
                    : need;
            if (!column.isEmpty() && y + withNext > height) {
                columns.add(List.copyOf(column));
                column.clear();
                y = 0.0;
                if (!(pieces.get(i) instanceof Piece.Heading)) {
                    Piece again = new Piece.Heading(heading + ", continued");
                    column.add(again);
                    y = again.height(width);
                }
            }
            column.add(pieces.get(i));
            y += need;
        }
        if (!column.isEmpty()) {
            columns.add(List.copyOf(column));
        }
        return columns;
    }

    double width() {
        return columns.size() * (columnWidth + GAP);
    }

    void draw(Canvas canvas, double left, double top) {
        double x = left;
        for (List<Piece> column : columns) {
            double y = top;
            for (Piece piece : column) {
                piece.draw(canvas, x, y, columnWidth);
                y += piece.height(columnWidth);
            }
            x += columnWidth + GAP;
        }
    }
}
