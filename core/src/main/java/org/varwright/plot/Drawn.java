package org.varwright.plot;

import org.varwright.svg.Sheet;

/** A picture with its words, ready to be written. */
record Drawn(Sheet sheet, Width width, double height, String title, String description) {
    String svg() {
        return sheet.svg(width.units(), height, width.millimetres(), title, description);
    }
}
