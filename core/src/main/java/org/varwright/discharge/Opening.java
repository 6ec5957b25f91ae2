package org.varwright.discharge;

import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SystemGrounding;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;

/**
 * What the opening of a stage leaves on its units at worst.
 *
 * @param legVolts rms voltage across one leg before opening [V]
 * @param seriesGroups groups in series in one leg between line and far side (both quarters of a bridge)
 * @param factor highest voltage that one leg is left with, as a multiple of the peak of {@code legVolts}
 * @param initialVolts highest voltage that a unit (one leg of a three-phase unit) is left with [V]
 * @param pairFactor highest voltage between two conductors of the stage, as a multiple of the highest across one leg
 * @param basis how {@code initialVolts} came about (DIS-2)
 */
public record Opening(
        double legVolts, int seriesGroups, double factor, double initialVolts, double pairFactor, Basis basis) {
    /** Two poles of an ungrounded stage clear in series a quarter cycle after the first: {@code (1 + √3)/2}. */
    public static final double UNGROUNDED_FACTOR = (1.0 + Math.sqrt(3.0)) / 2.0;

    /** A simulation that finds more than the closed form by less than this has found the same. */
    private static final double SAME = 1e-6;

    /** Overvoltage that is allowed continuously, as a multiple of nominal. */
    private static final double HIGHEST_PER_NOMINAL = 1.10;

    /**
     * Highest voltage that a unit of a stage is left with when the stage is opened.
     *
     * <p><b>Model.</b> {@code v0 = √2·max(V_rated, k·V_leg/S)} (DIS-2). {@code V_leg} is line to neutral (delta: line to line) at 110 % of nominal or at the
     * highest sustained voltage, whichever is more; {@code S} groups in series share it equally. {@code k} is 1 with a grounded neutral on a solidly
     * grounded system (each pole clears at its own peak); {@code (1+√3)/2 = 1.366} with an ungrounded neutral or delta (the first pole clears at its peak,
     * the other two in series a quarter cycle later); {@code √3} with a grounded neutral on a system that is not solidly grounded (line to ground voltage
     * during a ground fault). Where capacitances that were measured make the simulation of the opening (DIS-11) find more on any unit, that counts.
     * <p><b>Not modelled.</b> Restrikes, ferroresonance, a unit or sections out before opening.
     * <p><b>Source.</b> First principles; the 110 % is the continuous limit of IEEE Std 18.
     *
     * @param bank for its supply
     * @param stage of that bank
     */
    public static Opening of(Bank bank, Stage stage) {
        return of(bank, stage, UnitReadings.NONE);
    }

    static Opening of(Bank bank, Stage stage, UnitReadings readings) {
        SupplySystem system = bank.system();
        boolean delta = stage.isDelta();
        double lineVolts = Math.max(
                HIGHEST_PER_NOMINAL * system.nominalVolts(),
                system.maximumVolts().orElse(0.0));
        double legVolts = delta ? lineVolts : lineVolts / Math.sqrt(3.0);
        boolean grounded =
                stage.connection().isGrounded() && stage.unit().threePhase().isEmpty();
        boolean solid = system.grounding() == SystemGrounding.SOLID;
        double closedForm = !grounded ? UNGROUNDED_FACTOR : solid ? 1.0 : Math.sqrt(3.0);
        int fewest = stage.legs().stream()
                .mapToInt(leg -> stage.layoutOf(leg).groups())
                .min()
                .orElse(1);
        int series = stage.connection().isBridge() ? 2 * fewest : fewest;
        double simulated = fewest * highestShare(bank, stage, readings, Math.sqrt(2.0 / 3.0) * lineVolts);
        double factor = simulated > closedForm * (1.0 + SAME) ? simulated : closedForm;
        double rated = stage.unit().legVolts();
        double initial = Math.sqrt(2.0) * Math.max(rated, factor * legVolts / series);
        double pair = delta ? 1.0 : grounded ? 2.0 : (1.0 + UNGROUNDED_FACTOR) / UNGROUNDED_FACTOR;
        Basis basis = new Basis(
                "DIS-2",
                "v0 = √2·max(V_rated, k·V_leg/S)",
                List.of(
                        new Term("V_rated", "rated voltage of the unit", rated, "V"),
                        new Term("k", "highest voltage left on a leg as a multiple of its peak", factor, ""),
                        new Term("k_closed", "k with equal capacitances", closedForm, ""),
                        new Term("k_simulated", "k by simulation with the capacitances in the file", simulated, ""),
                        new Term("V_leg", "highest voltage across a leg in service", legVolts, "V"),
                        new Term("S", "groups in series", series, "")),
                Source.FIRST_PRINCIPLES);
        return new Opening(legVolts, series, factor, initial, pair, basis);
    }

    /**
     * The openings of a stage with every pole in turn the first to clear (DIS-11).
     *
     * @param phasePeakVolts peak of line to neutral voltage [V]
     */
    static List<PoleOpening> simulate(Bank bank, StageCircuit circuit, double phasePeakVolts) {
        return simulation(bank, circuit, phasePeakVolts).all();
    }

    static PoleSimulation simulation(Bank bank, StageCircuit circuit, double phasePeakVolts) {
        boolean fault = circuit.grounded() && bank.system().grounding() != SystemGrounding.SOLID;
        return new PoleSimulation(circuit, phasePeakVolts, bank.system().frequencyHertz(), fault);
    }

    /** The most that any unit gets of the peak across a healthy leg: the leg's multiple times the unit's share of its string. */
    private static double highestShare(Bank bank, Stage stage, UnitReadings readings, double phasePeakVolts) {
        StageCircuit circuit = StageCircuit.of(new UnitValues(bank, readings), stage, new Resistance.NotKnown());
        double highest = 0.0;
        for (PoleOpening opening : simulate(bank, circuit, phasePeakVolts)) {
            for (int l = 0; l < circuit.legs().size(); l++) {
                double perPeak = Math.abs(opening.legs().get(l).perPeak());
                for (List<StageCircuit.Group> string : circuit.legs().get(l).strings()) {
                    double whole = StageCircuit.farads(string);
                    for (StageCircuit.Group group : string) {
                        highest = Math.max(highest, perPeak * whole / group.farads());
                    }
                }
            }
        }
        return highest;
    }

    /** Peak of line to neutral voltage before opening, at the highest voltage in service [V]. */
    double phasePeakVolts(boolean delta) {
        return Math.sqrt(2.0) * legVolts / (delta ? Math.sqrt(3.0) : 1.0);
    }

    /** Peak across one unit before opening at the highest voltage in service [V]. */
    public double peakInServiceVolts() {
        return Math.sqrt(2.0) * legVolts / seriesGroups;
    }

    /** Highest voltage between two conductors of the stage while a unit holds {@code unitVolts} [V] (DIS-10). */
    public double betweenConductorsVolts(double unitVolts) {
        return pairFactor * seriesGroups * unitVolts;
    }
}
