package org.varwright.transients;

/**
 * Values of the probes over time.
 *
 * @param seconds times, rising; the same time twice where something changed
 * @param values one row a probe
 */
@SuppressWarnings("ArrayRecordComponent") // read once, by the drawing
public record Wave(double[] seconds, double[][] values) {}
