package org.varwright.drawing;

import java.util.List;

/**
 * A symbol on a wire with what is written to the right of it.
 *
 * @param symbol on the wire
 * @param rows to its right
 */
record Part(Symbol symbol, List<TextBlock.Row> rows) {
    static final double GAP = 5.0;

    double height(double textWidth) {
        return Math.max(symbol.height(), TextBlock.wrapped(rows, textWidth).height()) + GAP;
    }

    static double height(List<Part> parts, double textWidth) {
        return parts.stream().mapToDouble(p -> p.height(textWidth)).sum();
    }
}
