package org.varwright.plot;

import java.util.List;

/** A shaded area. */
public sealed interface Band {
    String label();

    /** Between two values of the y axis. */
    record Across(double low, double high, String label) implements Band {}

    /** Between two values of the x axis. */
    record Upright(double low, double high, String label) implements Band {}

    /** Between two curves, whose points may stand at different x. */
    record Between(List<Point> low, List<Point> high, String label) implements Band {
        public Between {
            low = List.copyOf(low);
            high = List.copyOf(high);
        }
    }

    static Band across(double low, double high, String label) {
        return new Across(low, high, label);
    }

    static Band upright(double low, double high, String label) {
        return new Upright(low, high, label);
    }

    static Band between(Curve low, Curve high, String label) {
        return new Between(low.points(), high.points(), label);
    }
}
