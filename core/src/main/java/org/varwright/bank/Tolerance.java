package org.varwright.bank;

/**
 * Allowed deviation from a rated value, as parts of one.
 *
 * @param low lowest, such as −0.05
 * @param high highest, such as +0.10
 */
public record Tolerance(double low, double high) {}
