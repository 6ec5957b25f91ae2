package org.varwright.plot;

/** From where to where values go; empty until it takes one in. */
final class Range {
    /** An end goes on to a tick that is as near as this part of the range, so that samples that stop short of it still show it. */
    private static final double NEAR = 0.01;
    /** Room above the highest limit, as a part of the range. */
    private static final double HEADROOM = 0.04;

    private final Axis axis;
    private double low = Double.POSITIVE_INFINITY;
    private double high = Double.NEGATIVE_INFINITY;
    private double highestLimit = Double.NEGATIVE_INFINITY;

    Range(Axis axis) {
        this.axis = axis;
    }

    void take(double value) {
        if (axis.takes(value)) {
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
    }

    /** Takes in a line across the panel, which is not to lie on its edge. */
    void takeLimit(double value) {
        take(value);
        highestLimit = Math.max(highestLimit, value);
    }

    /**
     * The ends of the axis.
     *
     * @param round whether open ends go on to the next tick
     * @param most ticks
     */
    Ticks.Ends ends(boolean round, int most) {
        double from = axis.from().orElse(low <= high ? low : axis.scale() == Axis.Scale.LOG ? 1.0 : 0.0);
        double to = axis.to().orElse(low <= high ? high : Math.max(from, 1.0));
        if (axis.zero()) {
            from = axis.from().orElse(Math.min(from, 0.0));
            to = axis.to().orElse(Math.max(to, 0.0));
        }
        if (axis.to().isEmpty() && highestLimit >= to && axis.scale() != Axis.Scale.LOG) {
            to += HEADROOM * Math.max(to - from, Math.abs(to) / 2.0);
        }
        return axis.scale() == Axis.Scale.LOG ? logarithmic(from, to) : straight(from, to, round, most);
    }

    private Ticks.Ends logarithmic(double from, double to) {
        Ticks.Ends ends = Ticks.roundedLog(Math.min(from, to), Math.max(from, to));
        return kept(ends, from, to);
    }

    private Ticks.Ends straight(double from, double to, boolean round, int most) {
        Ticks.Ends ends = Ticks.widened(Math.min(from, to), Math.max(from, to));
        // in the unit in which the ticks stand, since minutes have other round numbers than seconds
        double unit = Shown.of(axis, ends.low(), ends.high()).factor();
        Ticks.Ends rounded = Ticks.rounded(ends.low() / unit, ends.high() / unit, most);
        double near = round ? Double.POSITIVE_INFINITY : NEAR * (ends.high() - ends.low());
        double low0 = rounded.low() * unit;
        double high0 = rounded.high() * unit;
        return kept(
                new Ticks.Ends(
                        ends.low() - low0 <= near ? low0 : ends.low(),
                        high0 - ends.high() <= near ? high0 : ends.high()),
                from,
                to);
    }

    /** Ends that were given stay. */
    private Ticks.Ends kept(Ticks.Ends ends, double from, double to) {
        double low0 = axis.from().isPresent() ? from : ends.low();
        double high0 = axis.to().isPresent() ? to : ends.high();
        if (low0 < high0) {
            return new Ticks.Ends(low0, high0);
        }
        double more = low0 == 0.0 ? 1.0 : Math.abs(low0);
        return axis.from().isPresent()
                ? new Ticks.Ends(low0, low0 + more)
                : axis.scale() == Axis.Scale.LOG
                        ? new Ticks.Ends(high0 / 10.0, high0)
                        : new Ticks.Ends(high0 - Math.max(more, Math.abs(high0)), high0);
    }
}
