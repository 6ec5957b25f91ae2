package org.varwright.plot;

import org.varwright.quantity.Dimension;
import org.varwright.quantity.Reading;

/**
 * The unit in which an axis is labelled.
 *
 * @param symbol empty for a plain number
 * @param factor SI value of one of it
 */
record Shown(String symbol, double factor) {
    private static final double MINUTES_FROM = 300.0;
    private static final double HOURS_FROM = 3.0 * 3600.0;

    static Shown of(Axis axis, double low, double high) {
        double size = Math.max(Math.abs(low), Math.abs(high));
        if (axis.dimension().isEmpty()) {
            return plain(axis.unit(), size);
        }
        Dimension dimension = axis.dimension().get();
        if (axis.scale() == Axis.Scale.LOG) {
            return named(dimension, dimension.symbol());
        }
        if (dimension == Dimension.TIME) {
            return named(dimension, size < 1.0 ? "ms" : size < MINUTES_FROM ? "s" : size < HOURS_FROM ? "min" : "h");
        }
        String printed = dimension.format(size, 3);
        return named(dimension, printed.substring(printed.lastIndexOf(' ') + 1));
    }

    /** Whether labels of a logarithmic axis may carry prefixes. */
    static boolean takesPrefixes(Axis axis) {
        return axis.dimension()
                .filter(d -> d.units().contains("k" + d.symbol()) || d.units().contains("\u00b5" + d.symbol()))
                .isPresent();
    }

    private static Shown named(Dimension dimension, String symbol) {
        if (dimension.parse("1 " + symbol) instanceof Reading.Value(double si)) {
            return new Shown(symbol, si);
        }
        throw new IllegalArgumentException(symbol);
    }

    private static Shown plain(String unit, double size) {
        if (size == 0.0 || (size >= 1e-3 && size < 1e5)) {
            return new Shown(unit, 1.0);
        }
        int thousands = (int) Math.floor(Math.log10(size) / 3.0);
        String power = "\u00d710" + Ticks.raised(3 * thousands);
        return new Shown(unit.isEmpty() ? power : power + " " + unit, Math.pow(10.0, 3.0 * thousands));
    }

    /** An axis title with the unit. */
    String title(String title) {
        return symbol.isEmpty() ? title : title + ", " + symbol;
    }
}
