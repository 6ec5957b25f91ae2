package org.varwright.plot;

/** A straight line at one value of an axis, with its name. */
public sealed interface Limit {
    double value();

    String label();

    /** At a value of the y axis. */
    record Across(double value, String label) implements Limit {}

    /** At a value of the x axis. */
    record Upright(double value, String label) implements Limit {}

    static Limit across(double value, String label) {
        return new Across(value, label);
    }

    static Limit upright(double value, String label) {
        return new Upright(value, label);
    }
}
