package org.varwright.comtrade;

import org.varwright.problem.Place;

/**
 * One file of a record, or its part of a combined file.
 *
 * @param name as the person gave it, for messages
 * @param bytes what is in it
 * @param linesBefore lines of the combined file in front of this part; 0 for a file of its own
 */
public record Source(String name, Bytes bytes, int linesBefore) {
    public static Source of(String name, Bytes bytes) {
        return new Source(name, bytes, 0);
    }

    Place at(int line, int column) {
        return new Place(name, linesBefore + line, column, "");
    }

    Place whole() {
        return new Place(name, 0, 0, "");
    }
}
