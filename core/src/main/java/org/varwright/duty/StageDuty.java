package org.varwright.duty;

import java.util.List;
import org.varwright.basis.Check;
import org.varwright.limit.Stress;

/**
 * What the hardest-worked units of a stage bear in one case.
 *
 * @param stage its name
 * @param at bus voltage
 * @param harmonics none, as measured at the bus, or the combination of stages with which they are worst
 * @param stress multiples of rated
 * @param unitAmperes rms current of the unit that carries most, an unmeasured unit at its upper tolerance [A]
 * @param checks against the continuous limits
 */
public record StageDuty(
        String stage, VoltageCase at, String harmonics, Stress stress, double unitAmperes, List<Check> checks) {
    public StageDuty {
        checks = List.copyOf(checks);
    }
}
