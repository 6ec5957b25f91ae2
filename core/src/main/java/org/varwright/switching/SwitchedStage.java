package org.varwright.switching;

import java.util.Map;
import org.varwright.bank.Stage;
import org.varwright.network.Capacitances;

/**
 * A stage with what its switching needs.
 *
 * @param stage the stage
 * @param legs capacitance of its legs
 * @param star the stage as three capacitances to a star point
 * @param path inductance and resistance of one phase
 */
record SwitchedStage(Stage stage, LegFarads legs, StarFarads star, Path path) {
    static SwitchedStage of(Stage stage, Capacitances capacitances) {
        LegFarads legs = LegFarads.of(stage, capacitances);
        return new SwitchedStage(stage, legs, StarFarads.of(stage, legs, capacitances), Path.of(stage));
    }

    String name() {
        return stage.name();
    }

    SwitchedStage with(Path other) {
        return new SwitchedStage(stage, legs, star, other);
    }

    Map<String, Double> unitShare() {
        return legs.unitShare();
    }
}
