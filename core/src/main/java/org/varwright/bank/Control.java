package org.varwright.bank;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The controller that switches stages.
 *
 * @param senses what it acts on
 * @param ratio of the voltage transformer at its input; empty where the file doesn't say
 * @param currentRatio of the current transformer at its input; empty where the file doesn't say
 * @param on threshold at which a stage is switched on, in what it senses: secondary volts or amperes, primary var, power factor (0 to 1, lagging)
 * @param off threshold at which a stage is switched off, likewise
 * @param recloseDelaySeconds shortest time between opening and closing of one stage [s]
 * @param note free text
 */
public record Control(
        Optional<Senses> senses,
        Optional<TransformerRatio> ratio,
        Optional<TransformerRatio> currentRatio,
        OptionalDouble on,
        OptionalDouble off,
        OptionalDouble recloseDelaySeconds,
        Optional<String> note) {

    /** A controller of which neither ratios nor thresholds are known. */
    public Control(Optional<Senses> senses, OptionalDouble recloseDelaySeconds, Optional<String> note) {
        this(
                senses,
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                recloseDelaySeconds,
                note);
    }

    /** What the controller acts on. */
    public enum Senses {
        POWER_FACTOR,
        VOLTAGE,
        KVAR,
        TIME,
        CURRENT
    }
}
