package org.varwright.plot;

import java.util.List;

/**
 * An axis on the sheet: from values to places.
 *
 * @param start place of the lower end
 * @param end place of the upper end
 */
record Ruler(Axis axis, Ticks.Ends ends, Shown shown, double start, double end) {
    /** Beyond this a place is as good as any other off the sheet. */
    private static final double FAR = 1e7;

    static Ruler of(Axis axis, Ticks.Ends ends, double start, double end) {
        return new Ruler(axis, ends, Shown.of(axis, ends.low(), ends.high()), start, end);
    }

    /** The part of the way from the lower to the upper end. */
    double part(double value) {
        return switch (axis.scale()) {
            case LINEAR, WHOLE -> (value - ends.low()) / (ends.high() - ends.low());
            case LOG -> Math.log(value / ends.low()) / Math.log(ends.high() / ends.low());
        };
    }

    double at(double value) {
        return Math.max(-FAR, Math.min(FAR, start + part(value) * (end - start)));
    }

    /** Where a tick stands. */
    double at(Tick tick) {
        return at(tick.value() * shown.factor());
    }

    boolean holds(double value) {
        return axis.takes(value) && part(value) >= -1e-9 && part(value) <= 1.0 + 1e-9;
    }

    /** The lower end's value, where a value is off it on the low side; likewise the upper end's. */
    double held(double value) {
        return Math.max(ends.low(), Math.min(ends.high(), value));
    }

    List<Tick> ticks(int most) {
        double low = ends.low() / shown.factor();
        double high = ends.high() / shown.factor();
        return switch (axis.scale()) {
            case LINEAR -> Ticks.linear(low, high, most);
            case WHOLE -> Ticks.linear(low, high, Math.max(1, Math.min(most, (int) Math.ceil(high - low))));
            case LOG -> Ticks.log(low, high, Shown.takesPrefixes(axis), most);
        };
    }

    String title() {
        return shown.title(axis.title());
    }
}
