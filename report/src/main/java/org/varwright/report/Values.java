package org.varwright.report;

import java.util.Locale;
import org.varwright.quantity.Dimension;

/** Numbers with their units as they are printed. */
final class Values {
    /** Below this nothing that is printed has a size: it is rounding. */
    private static final double ROUNDING = 1e-13;

    private Values() {}

    /** A number in an SI unit, with a prefix where that unit takes one. */
    static String print(double value, String unit) {
        if (!Double.isFinite(value)) {
            return "not known";
        }
        if (Math.abs(value) < ROUNDING) {
            return unit.isEmpty() ? "0" : "0 " + unit;
        }
        return Dimension.of(unit)
                .map(d -> d.format(value))
                .orElseGet(() -> number(value) + (unit.isEmpty() ? "" : " " + unit));
    }

    /** A plain number with four significant digits. */
    static String number(double value) {
        return Dimension.digits(value, 4).replace('-', '\u2212');
    }

    /** A whole number in groups of three digits, parted by thin blanks that don't break. */
    static String count(long number) {
        return String.format(Locale.ROOT, "%,d", number).replace(',', '\u00a0');
    }

    /** Volts with three significant digits. */
    static String volts(double value) {
        return Dimension.VOLTAGE.format(value, 3);
    }

    static String joules(double value) {
        return Dimension.ENERGY.format(value, 3);
    }

    /** Whole seconds, up: a wait is never printed shorter than it is. */
    static String wait(double seconds) {
        return Dimension.TIME.format(Math.ceil(seconds));
    }

    /** A probability as people read it; never 0 % or 100 %, for neither is known. */
    static String probability(double part) {
        double percent = 100.0 * part;
        if (percent > 99.9) {
            return "> 99.9 %";
        }
        return percent < 0.1 ? "< 0.1 %" : String.format(Locale.ROOT, "%.1f %%", percent);
    }

    static String capital(String word) {
        return word.isEmpty() ? word : word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    }
}
