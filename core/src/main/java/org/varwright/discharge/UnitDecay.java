package org.varwright.discharge;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.varwright.bank.UnitPosition;

/**
 * How one unit discharges through its own resistor, as if nothing else drained it: no network is slower than its slowest unit (DIS-12).
 *
 * @param at where it is
 * @param farads its capacitance: measured, else the upper tolerance (one leg of a three-phase unit) [F]
 * @param ohms its discharge resistance: read, else the nameplate's at the slow end [Ω]; empty where the resistor is open or not known
 * @param initialVolts the most that it holds at opening, with its share of its string [V]
 * @param secondsToSafe until the safe voltage [s]; empty where there is no resistance
 * @param endVolts at the end of the wait [V]
 * @param endJoules at the end of the wait, of a three-phase unit all three legs [J]
 */
public record UnitDecay(
        UnitPosition at,
        double farads,
        OptionalDouble ohms,
        double initialVolts,
        OptionalDouble secondsToSafe,
        double endVolts,
        double endJoules) {

    /** Voltage after so many seconds [V]. */
    public double voltsAfter(double seconds) {
        return ohms.isPresent() ? Decay.voltsAfter(farads, ohms.getAsDouble(), initialVolts, seconds) : initialVolts;
    }

    /** Every unit of a stage, in the order of its positions. */
    static List<UnitDecay> of(
            UnitValues values,
            StageDischarge stage,
            Resistance ofType,
            StageCircuit circuit,
            List<PoleOpening> openings) {
        List<UnitDecay> units = new ArrayList<>();
        int legs = stage.stage().hasThreePhaseUnits() ? 3 : 1;
        for (UnitPosition at : stage.stage().positions()) {
            double farads = values.slowFarads(stage.stage(), at);
            double ohms = values.ohms(at, ofType);
            double initial = Math.max(
                    stage.opening().initialVolts(),
                    openings.stream()
                            .mapToDouble(o -> highest(circuit, o, at))
                            .max()
                            .orElse(0.0));
            double end = Double.isFinite(ohms) ? Decay.voltsAfter(farads, ohms, initial, stage.waitSeconds()) : initial;
            units.add(new UnitDecay(
                    at,
                    farads,
                    Double.isFinite(ohms) ? OptionalDouble.of(ohms) : OptionalDouble.empty(),
                    initial,
                    Double.isFinite(ohms)
                            ? OptionalDouble.of(Decay.secondsTo(
                                    farads, ohms, initial, stage.chosen().volts()))
                            : OptionalDouble.empty(),
                    end,
                    legs * Decay.energyJoules(farads, end)));
        }
        return units;
    }

    /** What a unit gets of its leg at one opening [V]. */
    private static double highest(StageCircuit circuit, PoleOpening opening, UnitPosition at) {
        double highest = 0.0;
        for (int l = 0; l < circuit.legs().size(); l++) {
            double leg = Math.abs(opening.legs().get(l).volts());
            for (List<StageCircuit.Group> string : circuit.legs().get(l).strings()) {
                double whole = StageCircuit.farads(string);
                for (StageCircuit.Group group : string) {
                    if (group.at().contains(at)) {
                        highest = Math.max(highest, leg * whole / group.farads());
                    }
                }
            }
        }
        return highest;
    }
}
