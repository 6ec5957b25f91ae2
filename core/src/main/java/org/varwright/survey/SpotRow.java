package org.varwright.survey;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * One value that was read at something other than a single unit.
 *
 * @param row as a spreadsheet counts it
 * @param spot where
 * @param kind what was read
 * @param measured the value
 * @param temperature beside it [°C]
 * @param instrument what it was measured with
 * @param taken when, as written
 * @param note free text
 * @param other cells of columns that are not known, by the column's name
 */
public record SpotRow(
        int row,
        Spot spot,
        Kind kind,
        Measured measured,
        Optional<Measured> temperature,
        Optional<String> instrument,
        Optional<String> taken,
        Optional<String> note,
        Map<String, String> other) {
    public SpotRow {
        other = Collections.unmodifiableMap(new LinkedHashMap<>(other));
    }

    /** What is read at such places. */
    public enum Kind {
        /** Units together, or a leg [F]. */
        CAPACITANCE("capacitance"),
        /** A reactor [H]. */
        INDUCTANCE("inductance"),
        /** A closed pole [Ω]. */
        CONTACT("contact resistance"),
        /** A leg or a line in service [A]. */
        CURRENT("current");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }
}
