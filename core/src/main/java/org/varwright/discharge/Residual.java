package org.varwright.discharge;

import java.util.Comparator;
import java.util.List;
import org.varwright.bank.UnitPosition;
import org.varwright.quantity.Dimension;

/**
 * What a stage still holds at one moment after opening.
 *
 * @param seconds after opening [s]
 * @param slowest the unit that holds the most
 * @param volts on that unit [V]
 * @param joules in that unit [J]
 * @param betweenConductorsVolts the most between two conductors of the stage [V]
 * @param safeVolts what the bank's standard counts as safe [V]
 * @param missingSeconds what is missing to the least wait [s]; 0 where it is over
 */
public record Residual(
        double seconds,
        UnitPosition slowest,
        double volts,
        double joules,
        double betweenConductorsVolts,
        double safeVolts,
        double missingSeconds) {
    /** The moment in words, such as {@code 3 min}. */
    public String print() {
        return Dimension.TIME.format(seconds, 3);
    }

    static Residual of(StageDischarge stage, List<UnitDecay> units, double seconds) {
        UnitDecay slowest = units.stream()
                .max(Comparator.comparingDouble(u -> u.voltsAfter(seconds)))
                .orElseThrow();
        double volts = Math.max(
                slowest.voltsAfter(seconds),
                stage.voltsAfter(seconds).orElse(stage.opening().initialVolts()));
        int legs = stage.stage().hasThreePhaseUnits() ? 3 : 1;
        return new Residual(
                seconds,
                slowest.at(),
                volts,
                legs * Decay.energyJoules(Math.max(slowest.farads(), stage.capacitanceFarads()), volts),
                stage.opening().betweenConductorsVolts(volts),
                stage.chosen().volts(),
                Math.max(0.0, stage.waitSeconds() - seconds));
    }
}
