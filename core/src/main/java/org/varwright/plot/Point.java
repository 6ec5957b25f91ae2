package org.varwright.plot;

/** A point in the values of the axes; NaN leaves a gap in a curve. */
public record Point(double x, double y) {}
