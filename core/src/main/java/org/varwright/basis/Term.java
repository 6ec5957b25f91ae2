package org.varwright.basis;

/**
 * One term of a formula with the value that it had.
 *
 * @param symbol as in the formula, such as {@code R}
 * @param meaning in words
 * @param value in {@code unit}
 * @param unit SI unit, empty for a pure number
 */
public record Term(String symbol, String meaning, double value, String unit) {}
