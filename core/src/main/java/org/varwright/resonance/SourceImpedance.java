package org.varwright.resonance;

import java.util.Optional;
import org.varwright.bank.SupplySystem;
import org.varwright.quantity.Complex;

/**
 * What stands between the bus and an ideal voltage, one phase.
 *
 * @param resistanceOhms at the system's frequency [Ω], 0 where X/R is not known
 * @param reactanceOhms at the system's frequency [Ω], above 0
 * @param isDamped whether X/R is known
 */
public record SourceImpedance(double resistanceOhms, double reactanceOhms, boolean isDamped) {
    /** How the resistance follows the order. */
    public enum ResistanceLaw {
        /** As at the system's frequency: the least damping, the highest peaks. */
        CONSTANT,
        /** In proportion to the order (X/R stays): about the most damping that lines and transformers show. */
        RISING
    }

    /**
     * The source by its short-circuit level; empty where the file gives none.
     *
     * <p><b>Model.</b> {@code Z = V²/S_sc}, {@code R = Z/√(1 + (X/R)²)}, {@code X = R·X/R}; {@code X = Z} where X/R is not known (RES-2).
     * <p><b>Source.</b> First principles.
     */
    public static Optional<SourceImpedance> of(SupplySystem system) {
        if (system.shortCircuitVoltAmperes().isEmpty()) {
            return Optional.empty();
        }
        double z = system.nominalVolts()
                * system.nominalVolts()
                / system.shortCircuitVoltAmperes().getAsDouble();
        if (system.xOverR().isEmpty()) {
            return Optional.of(new SourceImpedance(0.0, z, false));
        }
        double ratio = system.xOverR().getAsDouble();
        double r = z / Math.sqrt(1.0 + ratio * ratio);
        return Optional.of(new SourceImpedance(r, r * ratio, true));
    }

    /** Impedance at an order [Ω]. */
    public Complex ohms(double order, ResistanceLaw law) {
        double resistance = switch (law) {
            case CONSTANT -> resistanceOhms;
            case RISING -> resistanceOhms * order;
        };
        return new Complex(resistance, order * reactanceOhms);
    }
}
