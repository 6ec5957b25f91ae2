package org.varwright.resonance;

/**
 * How many times higher a harmonic stands at the bus than without the bank.
 *
 * @param order of the harmonic
 * @param factor the highest over the load cases; infinite where nothing damps a resonance right there
 * @param load case with the highest
 */
public record Amplification(int order, double factor, String load) {}
