package org.varwright.bank;

import java.util.OptionalDouble;

/**
 * One harmonic of the supply; at least one of voltage and current is given.
 *
 * @param order multiple of the system's frequency, 2 or more
 * @param voltageFraction background voltage of the source behind its impedance, as a part of nominal voltage
 * @param currentAmperes current that loads inject at the bus [A rms]
 */
public record Harmonic(int order, OptionalDouble voltageFraction, OptionalDouble currentAmperes) {}
