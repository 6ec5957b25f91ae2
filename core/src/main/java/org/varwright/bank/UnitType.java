package org.varwright.bank;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A type of capacitor unit by its nameplate.
 *
 * @param name unique among unit types
 * @param ratedVars reactive power of the whole unit at rated voltage and frequency [var]
 * @param ratedVolts rated voltage [V]: across a single-phase unit; line to line of a three-phase unit
 * @param ratedHertz rated frequency [Hz]
 * @param tolerance of the capacitance
 * @param construction what is inside; empty where the nameplate doesn't say
 * @param discharge the discharge resistor; empty where the nameplate doesn't say (then no time can be computed and none is promised)
 * @param bushings insulated terminals, 1 to 4
 * @param bilVolts basic impulse level [V]
 * @param massKilograms mass [kg]
 * @param threePhase how the phases are joined inside a three-phase unit; empty for a single-phase unit
 * @param label what is written or coded on it; empty where nothing is
 * @param note free text
 */
public record UnitType(
        String name,
        double ratedVars,
        double ratedVolts,
        double ratedHertz,
        Tolerance tolerance,
        Optional<Construction> construction,
        Optional<DischargeDevice> discharge,
        OptionalInt bushings,
        OptionalDouble bilVolts,
        OptionalDouble massKilograms,
        Optional<InternalConnection> threePhase,
        Optional<String> label,
        Optional<String> note) {

    /**
     * Capacitance by the nameplate [F]: of the unit where single-phase, of one leg (one of three) where three-phase.
     *
     * <p><b>Model.</b> {@code C = Q/(2πfV²)}; wye {@code C = Q/(2πfV_LL²)} a leg, delta {@code C = Q/3/(2πfV_LL²)} a leg (NET-1).
     * <p><b>Source.</b> First principles.
     */
    public double capacitanceFarads() {
        double whole = ratedVars / (2.0 * Math.PI * ratedHertz * ratedVolts * ratedVolts);
        return threePhase.filter(c -> c == InternalConnection.DELTA).isPresent() ? whole / 3.0 : whole;
    }

    /** Rated voltage across one capacitive leg inside [V]. */
    public double legVolts() {
        return threePhase.filter(c -> c == InternalConnection.WYE_UNGROUNDED).isPresent()
                ? ratedVolts / Math.sqrt(3.0)
                : ratedVolts;
    }
}
