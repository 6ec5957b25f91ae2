package org.varwright.record;

import java.util.List;
import java.util.Locale;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.quantity.Dimension;

/** Numbers of a record in words, the same in every finding. */
final class Say {
    private Say() {}

    /** A moment, to a tenth of a millisecond. */
    static String at(double seconds) {
        return String.format(Locale.ROOT, "%.4f s", seconds);
    }

    /** A length of time. */
    static String time(double seconds) {
        return Dimension.TIME.format(seconds, 3);
    }

    static String amperes(double value) {
        return Dimension.CURRENT.format(value, 3);
    }

    static String volts(double value) {
        return Dimension.VOLTAGE.format(value, 3);
    }

    static String hertz(double value) {
        return Dimension.FREQUENCY.format(value, 3);
    }

    static String degrees(double value) {
        return String.format(Locale.ROOT, "%.0f°", value);
    }

    /** A part of one in percent. */
    static String percent(double part) {
        return String.format(Locale.ROOT, "%.0f", 100.0 * part) + " %";
    }

    static String times(double factor) {
        return String.format(Locale.ROOT, "%.2f", factor);
    }

    static Basis basis(String id, String formula, Source source, Term... terms) {
        return new Basis(id, formula, List.of(terms), source);
    }

    static final Source THRESHOLDS = Source.commonPractice("first principles; thresholds");
}
