package org.varwright.discharge;

import java.util.List;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.UnitType;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;

/** The discharge resistance of a unit at the slow end, or that it is not known. */
public sealed interface Resistance {
    /** What is added to a nameplate resistance for its tolerance and its age, as a part of one. */
    double SLOW_END = 0.10;

    /**
     * A resistance to reckon with.
     *
     * @param ohms at the slow end [Ω]
     * @param nominalOhms without the addition [Ω]
     * @param basis how it came about (DIS-3)
     */
    record Known(double ohms, double nominalOhms, Basis basis) implements Resistance {}

    /** The nameplate says nothing: no time is promised, the unit counts as charged until the stick has been on it. */
    record NotKnown() implements Resistance {}

    /**
     * The slow end of the discharge resistance of a type: 10 % above the nameplate's, or above what its rated time allows.
     *
     * <p><b>Model.</b> {@code R = 1.10·R_nameplate}, or {@code R = 1.10·t/(C·ln(√2·V_rated/V))} where the nameplate gives volts and seconds (DIS-3); of a
     * three-phase unit for one leg.
     * <p><b>Not modelled.</b> An open or aged resistor.
     * <p><b>Source.</b> First principles; the 10 % is common practice.
     *
     * @param type of unit
     * @param capacitanceFarads the capacitance that it is reckoned with [F], above 0
     */
    static Resistance of(UnitType type, double capacitanceFarads) {
        if (type.discharge().isEmpty()) {
            return new NotKnown();
        }
        return switch (type.discharge().get()) {
            case DischargeDevice.Resistor resistor ->
                new Known(
                        (1.0 + SLOW_END) * resistor.ohms(),
                        resistor.ohms(),
                        new Basis(
                                "DIS-3",
                                "R = (1 + s)·R_nameplate",
                                List.of(
                                        new Term("R_nameplate", "resistance by the nameplate", resistor.ohms(), "Ω"),
                                        new Term("s", "slow end", SLOW_END, "")),
                                Source.COMMON_PRACTICE));
            case DischargeDevice.Rated rated -> {
                double peak = Math.sqrt(2.0) * type.ratedVolts();
                double nominal = Decay.resistanceFor(capacitanceFarads, peak, rated.volts(), rated.seconds());
                yield new Known(
                        (1.0 + SLOW_END) * nominal,
                        nominal,
                        new Basis(
                                "DIS-3",
                                "R = (1 + s)·t/(C·ln(√2·V_rated/V))",
                                List.of(
                                        new Term("t", "rated time", rated.seconds(), "s"),
                                        new Term("V", "rated voltage to be reached", rated.volts(), "V"),
                                        new Term("V_rated", "rated voltage", type.ratedVolts(), "V"),
                                        new Term("C", "capacitance", capacitanceFarads, "F"),
                                        new Term("s", "slow end", SLOW_END, "")),
                                Source.FIRST_PRINCIPLES));
            }
        };
    }
}
