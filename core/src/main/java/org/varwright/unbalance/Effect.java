package org.varwright.unbalance;

import java.util.List;
import org.varwright.network.Solution;
import org.varwright.quantity.Complex;

/**
 * What some failures do.
 *
 * @param sensors what each sensor sees, inherent unbalance included
 * @param changes primary phasors of the sensors less those of the bank in good order, in the same order
 * @param highestUnitPerRated highest voltage on a unit in service over rated
 * @param highestSectionPerRated highest voltage on a section in service over its share of rated
 * @param highestGroupPerHealthy highest voltage of a group over what it was before
 * @param varsPerHealthy reactive power of the stage over what it was before
 * @param legLost whether a leg that carried current carries none
 */
public record Effect(
        List<Solution.SensorValue> sensors,
        List<Complex> changes,
        double highestUnitPerRated,
        double highestSectionPerRated,
        double highestGroupPerHealthy,
        double varsPerHealthy,
        boolean legLost) {
    public Effect {
        sensors = List.copyOf(sensors);
        changes = List.copyOf(changes);
    }

    static Effect of(Solution.Solved failed, Solution.Solved healthy) {
        List<Complex> changes = new java.util.ArrayList<>();
        for (int s = 0; s < failed.sensors().size(); s++) {
            changes.add(failed.sensors()
                    .get(s)
                    .primary()
                    .minus(healthy.sensors().get(s).primary()));
        }
        boolean lost = false;
        for (int l = 0; l < failed.legs().size(); l++) {
            double before = healthy.legs().get(l).amperes().magnitude();
            lost |= before > 0.0 && failed.legs().get(l).amperes().magnitude() < 1e-6 * before;
        }
        double before =
                healthy.stages().stream().mapToDouble(Solution.StageValue::vars).sum();
        double after =
                failed.stages().stream().mapToDouble(Solution.StageValue::vars).sum();
        return new Effect(
                failed.sensors(),
                changes,
                failed.highestUnitPerRated(),
                failed.highestSectionPerRated(),
                failed.highestGroupPerHealthy(),
                before > 0.0 ? after / before : 0.0,
                lost);
    }

    /** The higher of unit and section voltage over rated: what the limit is held against. */
    public double highestPerRated() {
        return Math.max(highestUnitPerRated, highestSectionPerRated);
    }
}
