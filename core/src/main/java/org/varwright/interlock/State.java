package org.varwright.interlock;

/**
 * One state of a scheme, packed; only the {@link Scheme} that made it can read it. Usable as a map key.
 *
 * @param plant closed devices, stage charges, other positions, bolts of devices
 * @param access open doors, bolts of doors, exchanges
 */
public record State(long plant, long access) {}
