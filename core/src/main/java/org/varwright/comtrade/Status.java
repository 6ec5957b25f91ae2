package org.varwright.comtrade;

/**
 * One status channel.
 *
 * @param number its place among the status channels, from 1
 * @param name as in the record
 * @param phase as in the record; empty where it says nothing
 * @param component circuit component, as in the record; empty where it says nothing
 * @param normal state in steady service
 * @param bits its states
 */
public record Status(int number, String name, String phase, String component, Normal normal, Bits bits) {
    /** State in steady service. */
    public enum Normal {
        ZERO,
        ONE,
        /** The record doesn't say. */
        UNKNOWN
    }

    /** The name, or its number where it has none. */
    public String title() {
        return name.isBlank() ? "status channel " + number : name.strip();
    }
}
