package org.varwright.resonance;

/**
 * A parallel resonance.
 *
 * @param order at which it stands
 * @param ohms impedance seen from the bus, source resistance as at the fundamental, no load [Ω]; infinite where nothing damps it
 * @param amplification there, likewise: the highest there can be
 * @param dampedAmplification with a source resistance that rises with the order, and the load that damps most
 */
public record Peak(double order, double ohms, double amplification, double dampedAmplification) {}
