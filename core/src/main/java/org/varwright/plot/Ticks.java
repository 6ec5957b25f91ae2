package org.varwright.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntBinaryOperator;
import org.varwright.quantity.Dimension;

/** Round values on an axis, and round ends for it. */
final class Ticks {
    /** Parts of a step by which an end may miss a tick and still have it. */
    private static final double NEAR = 1e-6;
    /** Ranges below this part of their values can't be told from one value. */
    private static final double NARROWEST = 1e-9;

    private static final String[] PREFIXES = {"p", "n", "\u00b5", "m", "", "k", "M", "G", "T"};
    private static final int NO_PREFIX = 4;

    private Ticks() {}

    /** Lower and upper end of a range. */
    record Ends(double low, double high) {}

    /** A range that has a length: that of one value takes in what is near it, that of zero goes up to 1. */
    static Ends widened(double low, double high) {
        double size = Math.max(Math.abs(low), Math.abs(high));
        if (size == 0.0) {
            return new Ends(0.0, 1.0);
        }
        if (high - low >= NARROWEST * size) {
            return new Ends(low, high);
        }
        double half = 0.05 * size;
        return new Ends(low - half, high + half);
    }

    /** The next ticks outside a range. */
    static Ends rounded(double low, double high, int most) {
        double step = step(low, high, most);
        return new Ends(Math.floor(low / step + NEAR) * step, Math.ceil(high / step - NEAR) * step);
    }

    /** The same on a logarithmic axis: ends at 1, 2 or 5 times a power of ten, at least a factor of four apart. */
    static Ends roundedLog(double low, double high) {
        double from = low;
        double to = high;
        if (to / from < 4.0) {
            double middle = Math.sqrt(from) * Math.sqrt(to);
            from = middle / 2.0;
            to = middle * 2.0;
        }
        return new Ends(roundDown(from), roundUp(to));
    }

    private static double roundDown(double value) {
        int decade = decade(value);
        for (int factor : new int[] {5, 2, 1}) {
            if (times(factor, decade) <= value * (1.0 + NEAR)) {
                return times(factor, decade);
            }
        }
        return times(5, decade - 1);
    }

    private static double roundUp(double value) {
        int decade = decade(value);
        for (int factor : new int[] {1, 2, 5}) {
            if (times(factor, decade) >= value * (1.0 - NEAR)) {
                return times(factor, decade);
            }
        }
        return times(1, decade + 1);
    }

    private static int decade(double value) {
        return (int) Math.floor(Math.log10(value));
    }

    /** {@code factor · 10^decade}, the nearest double where that is possible. */
    private static double times(double factor, int decade) {
        return decade < 0 ? factor / Math.pow(10.0, -decade) : factor * Math.pow(10.0, decade);
    }

    /** 1, 2 or 5 times a power of ten, so large that at most so many steps fit. */
    static double step(double low, double high, int most) {
        double raw = (high - low) / most;
        int decade = decade(raw);
        for (int factor : new int[] {1, 2, 5}) {
            if (times(factor, decade) >= raw * (1.0 - NEAR)) {
                return times(factor, decade);
            }
        }
        return times(1, decade + 1);
    }

    /** Every step between the ends, at most {@code most} + 1 of them. */
    static List<Tick> linear(double low, double high, int most) {
        double step = step(low, high, most);
        int decade = (int) Math.floor(Math.log10(step) + NEAR);
        long first = (long) Math.ceil(low / step - NEAR);
        long last = (long) Math.floor(high / step + NEAR);
        double factor = Math.rint(step / times(1, decade));
        List<Tick> ticks = new ArrayList<>();
        for (long k = first; k <= last; k++) {
            double value = times(k * factor, decade);
            ticks.add(new Tick(value, plain(value, step, Math.max(0, -decade))));
        }
        return ticks;
    }

    private static String plain(double value, double step, int decimals) {
        if (value == 0.0) {
            return "0";
        }
        if (decimals > 12 || Math.abs(value) >= 1e12) {
            int digits = (int) Math.ceil(Math.log10(Math.abs(value) / step)) + 1;
            return signed(Dimension.digits(value, Math.max(1, Math.min(15, digits))));
        }
        return signed(String.format(Locale.ROOT, "%." + decimals + "f", value));
    }

    private static String signed(String text) {
        return text.replace('-', '\u2212');
    }

    /**
     * Powers of ten with the fine lines between them; 1, 2 and 5 where there are few powers; even steps where there are none.
     *
     * @param prefixed whether a label may carry a prefix: {@code 1 k} for a thousand
     * @param most labels
     */
    static List<Tick> log(double low, double high, boolean prefixed, int most) {
        double decades = Math.log10(high / low);
        int every = Math.max(1, (int) Math.ceil(decades / most));
        boolean few = decades < 2.0 && most >= 3.0 * decades;
        IntBinaryOperator shown = (factor, decade) -> {
            if (factor == 1) {
                return Math.floorMod(decade, every) == 0 ? 1 : 0;
            }
            return few && (factor == 2 || factor == 5) ? 1 : 0;
        };
        List<Tick> ticks = new ArrayList<>();
        int labels = 0;
        for (int decade = decade(low) - 1; decade <= decade(high) + 1; decade++) {
            for (int factor = 1; factor <= 9; factor++) {
                double value = times(factor, decade);
                boolean inside = value >= low * (1.0 - NEAR) && value <= high * (1.0 + NEAR);
                if (inside && (factor == 1 || decades <= 9.0)) {
                    boolean label = shown.applyAsInt(factor, decade) == 1;
                    labels += label ? 1 : 0;
                    ticks.add(new Tick(value, label ? power(factor, decade, prefixed) : ""));
                }
            }
        }
        return labels < 2 && decades < 2.0 ? linear(low, high, most) : ticks;
    }

    private static String power(int factor, int decade, boolean prefixed) {
        int group = Math.floorDiv(decade, 3) + NO_PREFIX;
        if (prefixed && group >= 0 && group < PREFIXES.length) {
            String digits = factor + "0".repeat(Math.floorMod(decade, 3));
            return group == NO_PREFIX ? digits : digits + " " + PREFIXES[group];
        }
        if (decade >= -4 && decade <= 4) {
            return Dimension.digits(times(factor, decade), 3);
        }
        return (factor == 1 ? "" : factor + "\u00b7") + "10" + raised(decade);
    }

    /** A whole number as an exponent. */
    static String raised(int number) {
        StringBuilder out = new StringBuilder();
        for (char c : Integer.toString(number).toCharArray()) {
            out.append(
                    c == '-'
                            ? '\u207b'
                            : "\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079".charAt(c - '0'));
        }
        return out.toString();
    }
}
