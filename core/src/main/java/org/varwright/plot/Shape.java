package org.varwright.plot;

/** How high the panels of a chart are together, in parts of its width. */
public enum Shape {
    WIDE(0.5),
    SQUARE(0.8),
    TALL(1.1);

    private final double height;

    Shape(double height) {
        this.height = height;
    }

    double height() {
        return height;
    }
}
