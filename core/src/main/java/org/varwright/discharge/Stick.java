package org.varwright.discharge;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;

/**
 * A discharge stick.
 *
 * @param ohms its resistance [Ω], above 0
 * @param ratedJoules energy that its resistor takes in one discharge [J]; empty where not known
 */
public record Stick(double ohms, OptionalDouble ratedJoules) {
    public Stick {
        if (!(ohms > 0.0)) {
            throw new IllegalArgumentException("a stick has a resistance above 0");
        }
    }

    /** Time within which a stick should bring a unit to the safe voltage [s]; common practice. */
    private static final double QUICK_SECONDS = 2.0;

    /** Peak current that a stick should not exceed [A]; common practice. */
    private static final double GENTLE_AMPERES = 20.0;

    /** Energy rating asked for, as a multiple of what one leg holds at worst; common practice. */
    private static final double ENERGY_MARGIN = 1.5;

    /**
     * What one discharge through a stick does.
     *
     * @param peakAmperes current at first touch [A]
     * @param timeConstantSeconds resistance times capacitance [s]
     * @param secondsToSafe time from first touch to the safe voltage [s]
     * @param resistorJoules energy that ends in its resistor [J]
     */
    public record Use(double peakAmperes, double timeConstantSeconds, double secondsToSafe, double resistorJoules) {}

    /**
     * The stick that is needed where none is given.
     *
     * @param leastOhms resistance below which the first current is rough on unit and stick [Ω]
     * @param mostOhms resistance above which it takes too long [Ω]
     * @param joules energy that its resistor must take in one discharge [J]
     * @param volts voltage that its insulation must bear [V]
     */
    public record Needed(double leastOhms, double mostOhms, double joules, double volts) {}

    /**
     * What happens when the stick is put across a charged capacitance.
     *
     * <p><b>Model.</b> {@code Î = v0/R}, {@code τ = R·C}, all of {@code C·v0²/2} ends in the stick (DIS-6).
     * <p><b>Not modelled.</b> Inductance and resistance of leads, the unit's own discharge resistor (it takes nothing that counts).
     * <p><b>Source.</b> First principles.
     *
     * @param capacitanceFarads what is discharged [F], above 0
     * @param volts voltage across it at first touch [V], 0 or more
     * @param safeVolts voltage counted as reached [V], above 0
     */
    public Use on(double capacitanceFarads, double volts, double safeVolts) {
        return new Use(
                volts / ohms,
                ohms * capacitanceFarads,
                Decay.secondsTo(capacitanceFarads, ohms, volts, safeVolts),
                Decay.energyJoules(capacitanceFarads, volts));
    }

    /**
     * How many units at this voltage it takes one after the other before the energy adds up to its rating; empty where its rating is not known. After that
     * it must cool: how long is the maker's to say.
     *
     * @param unitJoules energy of a unit, of a three-phase unit of all its legs [J], above 0
     */
    public OptionalInt unitsInSuccession(double unitJoules) {
        return ratedJoules.isPresent()
                ? OptionalInt.of((int) Math.min(9999.0, ratedJoules.getAsDouble() / unitJoules))
                : OptionalInt.empty();
    }

    static Needed needed(
            double capacitanceFarads, double legJoules, double volts, double insulationVolts, double safe) {
        double most = Decay.resistanceFor(capacitanceFarads, volts, safe, QUICK_SECONDS);
        return new Needed(Math.min(volts / GENTLE_AMPERES, most), most, ENERGY_MARGIN * legJoules, insulationVolts);
    }

    /** Whether the stick takes the energy of a whole leg at the peak (open discharge resistors); empty where its rating is not known. */
    List<Check> checks(String stage, double legJoules, double legFarads, double legVolts, double safeVolts) {
        Use use = on(legFarads, legVolts, safeVolts);
        Basis basis = new Basis(
                "DIS-6",
                "E = C·v0²/2 of one leg at the peak; τ = R·C",
                List.of(
                        new Term("C", "capacitance between the ends of the leg", legFarads, "F"),
                        new Term("v0", "voltage across the leg", legVolts, "V"),
                        new Term("R", "stick", ohms, "Ω")),
                Source.FIRST_PRINCIPLES);
        Basis quick = new Basis("DIS-6", "t = R·C·ln(v0/V)", basis.terms(), Source.COMMON_PRACTICE);
        Check time = new Check(
                stage + ": stick on one leg, time to the safe voltage",
                use.secondsToSafe(),
                QUICK_SECONDS,
                "s",
                use.secondsToSafe() <= QUICK_SECONDS ? Verdict.PASS : Verdict.WARN,
                quick);
        Check current = new Check(
                stage + ": stick on one leg, first current",
                use.peakAmperes(),
                GENTLE_AMPERES,
                "A",
                use.peakAmperes() <= GENTLE_AMPERES ? Verdict.PASS : Verdict.WARN,
                quick);
        if (ratedJoules.isEmpty()) {
            return List.of(time, current);
        }
        return List.of(
                new Check(
                        stage + ": energy in the stick's resistor, one leg at the peak",
                        legJoules,
                        ratedJoules.getAsDouble(),
                        "J",
                        legJoules <= ratedJoules.getAsDouble() ? Verdict.PASS : Verdict.FAIL,
                        basis),
                time,
                current);
    }
}
