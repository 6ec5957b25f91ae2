package org.varwright.bank;

import java.util.List;
import java.util.OptionalDouble;

/**
 * The supply at the bank's bus.
 *
 * @param nominalVolts nominal voltage, line to line [V], above 0
 * @param maximumVolts highest sustained voltage, line to line [V]
 * @param frequencyHertz 50 or 60 in practice; any above 0
 * @param shortCircuitVoltAmperes three-phase short-circuit level at the bus [VA]
 * @param xOverR ratio of reactance to resistance of the source
 * @param grounding of the system's neutral
 * @param harmonics background voltages and injected currents, by rising order; empty where none were measured
 */
public record SupplySystem(
        double nominalVolts,
        OptionalDouble maximumVolts,
        double frequencyHertz,
        OptionalDouble shortCircuitVoltAmperes,
        OptionalDouble xOverR,
        SystemGrounding grounding,
        List<Harmonic> harmonics) {
    public SupplySystem {
        harmonics = List.copyOf(harmonics);
    }

    /** A supply whose harmonics nobody measured. */
    public SupplySystem(
            double nominalVolts,
            OptionalDouble maximumVolts,
            double frequencyHertz,
            OptionalDouble shortCircuitVoltAmperes,
            OptionalDouble xOverR,
            SystemGrounding grounding) {
        this(nominalVolts, maximumVolts, frequencyHertz, shortCircuitVoltAmperes, xOverR, grounding, List.of());
    }

    /** Nominal voltage, line to neutral [V]. */
    public double phaseVolts() {
        return nominalVolts / Math.sqrt(3.0);
    }

    /** Angular frequency [rad/s]. */
    public double angularFrequency() {
        return 2.0 * Math.PI * frequencyHertz;
    }
}
