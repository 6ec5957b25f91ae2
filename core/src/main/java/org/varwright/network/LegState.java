package org.varwright.network;

import java.util.List;
import org.varwright.quantity.Complex;

/**
 * A stage seen leg by leg. Phasors are rms, in the order of the {@link LegModel}'s legs, phases and sensors.
 *
 * @param legVolts across the capacitors of each leg [V]; of three-phase units with star points of their own, the first unit's
 * @param legAmperes through each leg, from the line end [A]
 * @param lineAmperes into phases A, B, C [A]
 * @param neutralVolts neutral to ground [V]; zero where it is grounded or there is none
 * @param sensors primary value of each sensor [V] or [A]
 * @param highestGroupPerRated highest voltage of any group with a unit in it, as a multiple of the rated voltage of its units
 */
public record LegState(
        List<Complex> legVolts,
        List<Complex> legAmperes,
        List<Complex> lineAmperes,
        Complex neutralVolts,
        List<Complex> sensors,
        double highestGroupPerRated) {
    public LegState {
        legVolts = List.copyOf(legVolts);
        legAmperes = List.copyOf(legAmperes);
        lineAmperes = List.copyOf(lineAmperes);
        sensors = List.copyOf(sensors);
    }

    /** Largest magnitude of any sensor's primary value; 0 without sensors. */
    public double largestSensor() {
        return sensors.stream().mapToDouble(Complex::magnitude).max().orElse(0.0);
    }
}
