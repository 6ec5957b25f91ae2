package org.varwright.record;

import org.varwright.waveform.Signal;

/**
 * One analog channel as the record has it, in volts or amperes.
 *
 * @param number in the record, from 1
 * @param name as in the record
 * @param phase as in the record; empty where it says nothing
 * @param component circuit component, as in the record; empty where it says nothing
 * @param unit as in the record
 * @param quantity by its unit
 * @param side which side of the instrument transformer the values belong to
 * @param signal values in [V] or [A] at that side; as they are where the unit is another
 */
public record Channel(
        int number,
        String name,
        String phase,
        String component,
        String unit,
        Quantity quantity,
        Side side,
        Signal signal) {
    /** What a channel measures. */
    public enum Quantity {
        VOLTS("V"),
        AMPERES("A"),
        OTHER("");

        private final String unit;

        Quantity(String unit) {
            this.unit = unit;
        }

        /** SI unit; empty where the record's own counts. */
        public String unit() {
            return unit;
        }
    }

    /** Side of the instrument transformer. */
    public sealed interface Side {
        /** Values are primary. */
        record Primary() implements Side {}

        /**
         * Values are secondary.
         *
         * @param factor primary over secondary
         */
        record Secondary(double factor) implements Side {}

        /** The record doesn't say. */
        record Unknown() implements Side {}
    }

    /** Values at the primary side; as they are where the side is not known. */
    Signal primary() {
        return switch (side) {
            case Side.Primary p -> signal;
            case Side.Secondary s -> signal.times(s.factor());
            case Side.Unknown u -> signal;
        };
    }

    /** The name with its number, for messages. */
    String title() {
        return name.isBlank() ? "channel " + number : "\"" + name.strip() + "\"";
    }
}
