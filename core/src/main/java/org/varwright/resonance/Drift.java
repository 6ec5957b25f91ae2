package org.varwright.resonance;

/**
 * Where a reactor and its capacitors are tuned when the capacitance of a phase is another.
 *
 * @param cause in words
 * @param capacitanceFactor over what it is now
 * @param tunedOrder then
 * @param amplification at the order aimed at, the stage alone and no load; infinite where nothing damps
 */
public record Drift(String cause, double capacitanceFactor, double tunedOrder, double amplification) {}
