package org.varwright.comtrade;

import java.util.Locale;

/** What a channel measures, by its unit. */
public enum Measure {
    VOLTS,
    AMPERES,
    OTHER;

    static Measure of(String unit) {
        if (Double.isNaN(factor(unit))) {
            return OTHER;
        }
        return base(unit).startsWith("v") ? VOLTS : AMPERES;
    }

    /** Volts or amperes in one of a unit; NaN where it is neither. A capital M is mega, a small one milli; k may be either. */
    static double factor(String unit) {
        String text = unit.strip();
        double prefix = text.length() == base(unit).length() ? 1.0 : prefix(text.charAt(0));
        return switch (base(unit)) {
            case "v", "volt", "volts", "a", "amp", "amps", "ampere", "amperes" -> prefix;
            default -> Double.NaN;
        };
    }

    private static double prefix(char letter) {
        return switch (letter) {
            case 'M' -> 1e6;
            case 'k', 'K' -> 1e3;
            case 'm' -> 1e-3;
            case 'u', 'µ', 'μ' -> 1e-6;
            default -> Double.NaN;
        };
    }

    /** The unit without its prefix, in small letters. */
    private static String base(String unit) {
        String text = unit.strip();
        String rest = text.length() > 1 && !Double.isNaN(prefix(text.charAt(0))) ? text.substring(1) : text;
        return rest.toLowerCase(Locale.ROOT);
    }
}
