package org.varwright.survey;

import java.util.List;
import org.varwright.bank.UnitPosition;

/** Where something other than a single unit was read. */
public sealed interface Spot {
    /** As printed. */
    String name();

    /**
     * Units in parallel, read together.
     *
     * @param stage name of the stage
     * @param units of one group, 2 or more
     * @param name as printed
     */
    record Together(String stage, List<UnitPosition> units, String name) implements Spot {
        public Together {
            units = List.copyOf(units);
        }
    }

    /**
     * A whole leg, end to end.
     *
     * @param stage name of the stage
     * @param leg name of the leg
     * @param name as printed
     */
    record Leg(String stage, String leg, String name) implements Spot {}

    /**
     * One phase of a stage: its line, its reactor.
     *
     * @param stage name of the stage
     * @param phase A, B or C
     * @param name as printed
     */
    record Phase(String stage, String phase, String name) implements Spot {}

    /**
     * One pole of a switching device.
     *
     * @param device name of the device
     * @param pole A, B or C
     * @param name as printed
     */
    record Pole(String device, String pole, String name) implements Spot {}
}
