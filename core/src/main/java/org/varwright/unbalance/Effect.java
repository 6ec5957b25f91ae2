package org.varwright.unbalance;

import java.util.ArrayList;
import java.util.List;
import org.varwright.network.Solution;
import org.varwright.network.Sweep;
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

    /** What a sweep shows now against the bank in good order. */
    static Effect of(Sweep sweep, Solution.Solved healthy) {
        List<Solution.SensorValue> sensors = sweep.sensorValues();
        List<Complex> changes = new ArrayList<>();
        for (int s = 0; s < sensors.size(); s++) {
            changes.add(sensors.get(s).primary().minus(healthy.sensors().get(s).primary()));
        }
        double before =
                healthy.stages().stream().mapToDouble(Solution.StageValue::vars).sum();
        return new Effect(
                sensors,
                changes,
                sweep.highestUnitPerRated(),
                sweep.highestSectionPerRated(),
                sweep.highestGroupPerHealthy(),
                before > 0.0 ? sweep.vars() / before : 0.0,
                sweep.isLegLost());
    }

    /** The higher of unit and section voltage over rated: what the limit is held against. */
    public double highestPerRated() {
        return Math.max(highestUnitPerRated, highestSectionPerRated);
    }
}
