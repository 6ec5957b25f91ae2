package org.varwright.discharge;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Control;

/**
 * One stage in time, from the moment at which its first pole clears.
 *
 * @param openings with every pole in turn the first to clear
 * @param oneOutVolts the most that a unit holds where one unit of its stage was out before opening [V]; empty where a group would lose its only unit
 * @param units every unit's own decay, in the order of the positions
 * @param string units in series that don't discharge alike; empty without units in series or without known resistances
 * @param reclosing what switching on again meets; empty where the resistance is not known
 * @param path what flows off through a voltage transformer or coil; empty without one
 * @param after what is held at the moment asked for
 * @param timeConstants what is held after the number of time constants asked for; empty where the resistance is not known
 */
public record StageCourse(
        List<PoleOpening> openings,
        OptionalDouble oneOutVolts,
        List<UnitDecay> units,
        Optional<StringCase> string,
        Optional<Reclosing> reclosing,
        Optional<WindingDischarge> path,
        Optional<Residual> after,
        Optional<Residual> timeConstants) {
    public StageCourse {
        openings = List.copyOf(openings);
        units = List.copyOf(units);
    }

    static StageCourse of(Bank bank, StageDischarge stage, Question question) {
        UnitValues values = new UnitValues(bank, question.readings());
        Resistance ofType = Resistance.of(
                stage.stage().unit(), Capacitance.largestOf(bank, stage.stage()).farads());
        StageCircuit circuit = StageCircuit.of(values, stage.stage(), ofType);
        double peak = stage.opening().phasePeakVolts(circuit.isDelta());
        List<PoleOpening> openings = Opening.simulate(bank, circuit, peak);
        List<UnitDecay> units = UnitDecay.of(values, stage, ofType, circuit, openings);
        Optional<StringCase> string = stage.isKnown() && circuit.seriesGroups() > 1
                ? Optional.of(StringCase.of(
                        circuit,
                        openings,
                        stage.opening().initialVolts(),
                        stage.waitSeconds(),
                        stage.chosen().volts()))
                : Optional.empty();
        OptionalDouble delay = bank.control().map(Control::recloseDelaySeconds).orElse(OptionalDouble.empty());
        Optional<Reclosing> reclosing = stage.resistance() instanceof Resistance.Known known
                ? Optional.of(Reclosing.of(stage, known, delay))
                : Optional.empty();
        Optional<Residual> after = question.afterSeconds().isPresent()
                ? Optional.of(Residual.of(stage, units, question.afterSeconds().getAsDouble()))
                : Optional.empty();
        Optional<Residual> constants = question.timeConstants().isPresent()
                        && stage.timeConstantSeconds().isPresent()
                ? Optional.of(Residual.of(
                        stage,
                        units,
                        question.timeConstants().getAsDouble()
                                * stage.timeConstantSeconds().getAsDouble()))
                : Optional.empty();
        return new StageCourse(
                openings,
                oneOut(bank, circuit, peak),
                units,
                string,
                reclosing,
                WindingDischarge.of(stage, circuit, openings),
                after,
                constants);
    }

    /** The opening that leaves the most on any leg. */
    public PoleOpening worst() {
        PoleOpening worst = openings.getFirst();
        for (PoleOpening each : openings) {
            if (each.highestPerPeak() > worst.highestPerPeak() * (1.0 + 1e-9)) {
                worst = each;
            }
        }
        return worst;
    }

    /** The unit that takes longest to the safe voltage; one that never gets there before all others. */
    public UnitDecay slowest() {
        UnitDecay slowest = units.getFirst();
        for (UnitDecay each : units) {
            if (each.secondsToSafe().orElse(Double.POSITIVE_INFINITY)
                    > slowest.secondsToSafe().orElse(Double.POSITIVE_INFINITY)) {
                slowest = each;
            }
        }
        return slowest;
    }

    private static OptionalDouble oneOut(Bank bank, StageCircuit circuit, double peak) {
        double highest = 0.0;
        for (int l = 0; l < circuit.legs().size(); l++) {
            StageCircuit.Leg leg = circuit.legs().get(l);
            for (int s = 0; s < leg.strings().size(); s++) {
                for (int g = 0; g < leg.strings().get(s).size(); g++) {
                    if (leg.strings().get(s).get(g).at().size() > 1) {
                        StageCircuit less = circuit.withOneOut(l, s, g);
                        for (PoleOpening opening : Opening.simulate(bank, less, peak)) {
                            highest = Math.max(highest, less.highestUnitVolts(opening));
                        }
                    }
                }
            }
        }
        return highest > 0.0 ? OptionalDouble.of(highest) : OptionalDouble.empty();
    }
}
