package org.varwright.discharge;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;

/**
 * What was read on single units. It can make a wait longer, never shorter than nameplate and file do.
 *
 * @param ohms discharge resistances [Ω]; infinite where the resistor is open
 * @param farads capacitances [F]
 */
public record UnitReadings(Map<UnitPosition, Double> ohms, Map<UnitPosition, Double> farads) {
    public static final UnitReadings NONE = new UnitReadings(Map.of(), Map.of());

    public UnitReadings {
        ohms = Collections.unmodifiableMap(new LinkedHashMap<>(ohms));
        farads = Collections.unmodifiableMap(new LinkedHashMap<>(farads));
    }

    /** The largest capacitance read in a stage [F]; empty where none was. */
    OptionalDouble largestFarads(Stage stage) {
        return largest(farads, stage);
    }

    private static OptionalDouble largest(Map<UnitPosition, Double> values, Stage stage) {
        return values.entrySet().stream()
                .filter(e -> e.getKey().stage().equals(stage.name()) && Double.isFinite(e.getValue()))
                .mapToDouble(Map.Entry::getValue)
                .max();
    }
}
