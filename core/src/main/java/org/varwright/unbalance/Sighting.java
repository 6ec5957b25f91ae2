package org.varwright.unbalance;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Complex;

/**
 * What a sensor showed.
 *
 * @param sensor its name, such as {@code rack neutral-current} or {@code F bridge-current A}
 * @param magnitude rms [V] or [A], 0 or more
 * @param primary whether {@code magnitude} and {@code healthy} are primary values; otherwise those at the relay
 * @param degrees angle against the voltage of phase A to ground; empty where not known
 * @param uncertainty of the magnitude as a part, at about 95 %
 * @param healthy the sensor's phasor when nothing was wrong; empty where none is on file
 * @param lineAmperes currents of phases A, B, C of the stage as far as they were read [A]
 */
public record Sighting(
        String sensor,
        double magnitude,
        boolean primary,
        OptionalDouble degrees,
        double uncertainty,
        Optional<Complex> healthy,
        Map<String, Double> lineAmperes) {
    public Sighting {
        if (!(magnitude >= 0.0) || !Double.isFinite(magnitude)) {
            throw new VarwrightException(Message.SIGHTING_VALUE, Place.NOWHERE, sensor, String.valueOf(magnitude));
        }
        if (!(uncertainty > 0.0 && uncertainty < 1.0)) {
            throw new VarwrightException(Message.SIGHTING_UNCERTAINTY, Place.NOWHERE, String.valueOf(uncertainty));
        }
        lineAmperes.forEach((phase, amperes) -> {
            if (!"ABC".contains(phase) || phase.length() != 1 || !(amperes >= 0.0)) {
                throw new VarwrightException(Message.SIGHTING_LINE, Place.NOWHERE, phase, String.valueOf(amperes));
            }
        });
        lineAmperes = Map.copyOf(new TreeMap<>(lineAmperes));
    }

    /** The magnitude alone, at the relay, known to 3 %. */
    public static Sighting of(String sensor, double magnitude) {
        return new Sighting(sensor, magnitude, false, OptionalDouble.empty(), 0.03, Optional.empty(), Map.of());
    }
}
