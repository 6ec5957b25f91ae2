package org.varwright.basis;

/**
 * A value held against a limit, with how the value came about.
 *
 * @param subject what is checked, in words
 * @param value in {@code unit}
 * @param limit in {@code unit}
 * @param unit SI unit, empty for a pure number
 * @param verdict what comes of it
 * @param basis how value and limit came about
 */
public record Check(String subject, double value, double limit, String unit, Verdict verdict, Basis basis) {}
