package org.varwright.fuse;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.basis.Unanswered;
import org.varwright.problem.VarwrightException;
import org.varwright.switching.Closing;
import org.varwright.switching.Inrush;
import org.varwright.switching.InrushCase;
import org.varwright.switching.InrushRequest;

/**
 * I²t that the fuses of each stage see at worst as stages are switched on, itself or another.
 *
 * @param unit through the fuse of one unit, by name of the stage [A²s]
 * @param line through a line fuse [A²s]
 * @param missing why it isn't known; empty where it is
 */
record InrushShare(Map<String, Double> unit, Map<String, Double> line, Optional<Unanswered> missing) {
    private static final String EFFECT = "whether inrush melts a fuse";

    InrushShare {
        unit = Map.copyOf(unit);
        line = Map.copyOf(line);
    }

    static InrushShare of(Bank bank) {
        try {
            return of(Inrush.of(bank, InrushRequest.EVERYTHING));
        } catch (VarwrightException e) {
            return none("an answer of \"inrush\" (" + e.getMessage() + ")");
        }
    }

    static InrushShare of(Inrush inrush) {
        Map<String, Double> unit = new LinkedHashMap<>();
        Map<String, Double> line = new LinkedHashMap<>();
        for (InrushCase each : inrush.cases()) {
            for (Closing closing : each.closings()) {
                closing.stages().forEach((stage, strain) -> {
                    unit.merge(stage, strain.unitAmpereSquaredSeconds(), Math::max);
                    line.merge(stage, strain.ampereSquaredSeconds(), Math::max);
                });
            }
        }
        return unit.isEmpty()
                ? none("what \"inrush\" names as missing")
                : new InrushShare(unit, line, Optional.empty());
    }

    OptionalDouble of(Stage stage, FusePlace place) {
        Double value = (place == FusePlace.UNIT ? unit : line).get(stage.name());
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** An inrush that nobody asked for. */
    static InrushShare notAsked() {
        return none("\"inrush\" was not asked");
    }

    private static InrushShare none(String missing) {
        return new InrushShare(Map.of(), Map.of(), Optional.of(new Unanswered(missing, EFFECT)));
    }
}
