package org.varwright.bank;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The controller that switches stages.
 *
 * @param senses what it acts on
 * @param recloseDelaySeconds shortest time between opening and closing of one stage [s]
 * @param note free text
 */
public record Control(Optional<Senses> senses, OptionalDouble recloseDelaySeconds, Optional<String> note) {
    /** What the controller acts on. */
    public enum Senses {
        POWER_FACTOR,
        VOLTAGE,
        KVAR,
        TIME,
        CURRENT
    }
}
