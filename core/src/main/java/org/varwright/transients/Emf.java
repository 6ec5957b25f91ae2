package org.varwright.transients;

/**
 * A sinusoidal source {@code e = peak·sin(θ + degrees)}, θ the angle of the circuit's clock.
 *
 * @param peakVolts [V]
 * @param degrees ahead of the clock
 */
public record Emf(double peakVolts, double degrees) {}
