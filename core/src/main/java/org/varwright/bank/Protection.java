package org.varwright.bank;

import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.quantity.Dimension;

/**
 * A sensor that watches a stage for unbalance, with its settings.
 *
 * @param stage name of the stage
 * @param senses what it measures
 * @param ratio primary to secondary; empty where the file doesn't say (secondary values can't be given then)
 * @param alarm secondary volts or amperes at the relay (primary where {@code settingsArePrimary})
 * @param trip likewise
 * @param settingsArePrimary whether {@code alarm} and {@code trip} are primary values
 * @param delaySeconds delay of the trip [s]
 * @param note free text
 */
public record Protection(
        String stage,
        Senses senses,
        Optional<TransformerRatio> ratio,
        OptionalDouble alarm,
        OptionalDouble trip,
        boolean settingsArePrimary,
        OptionalDouble delaySeconds,
        Optional<String> note) {
    /** What a sensor measures. */
    public enum Senses {
        NEUTRAL_VOLTAGE("neutral-voltage", "V"),
        NEUTRAL_CURRENT("neutral-current", "A"),
        NEUTRAL_DIFFERENTIAL("neutral-differential", "A"),
        BRIDGE_CURRENT("bridge-current", "A"),
        PHASE_VOLTAGE("phase-voltage", "V");

        private final String code;
        private final String unit;

        Senses(String code, String unit) {
            this.code = code;
            this.unit = unit;
        }

        public String code() {
            return code;
        }

        /** {@code V} or {@code A}. */
        public String unit() {
            return unit;
        }

        /** {@link Dimension#VOLTAGE} or {@link Dimension#CURRENT}. */
        public Dimension dimension() {
            return unit.equals("V") ? Dimension.VOLTAGE : Dimension.CURRENT;
        }
    }
}
