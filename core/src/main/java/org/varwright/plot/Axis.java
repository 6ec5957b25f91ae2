package org.varwright.plot;

import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.quantity.Dimension;

/**
 * What an axis measures.
 *
 * @param title without unit, such as {@code time after opening}
 * @param dimension whose prefixes suit the values; empty for a plain number
 * @param unit of a plain number, such as {@code per unit}; empty for none
 * @param from lower end; empty to take in everything that is drawn
 * @param to upper end; likewise
 * @param zero whether zero is always on it
 */
public record Axis(
        String title,
        Scale scale,
        Optional<Dimension> dimension,
        String unit,
        OptionalDouble from,
        OptionalDouble to,
        boolean zero) {
    /** How values become places. */
    public enum Scale {
        LINEAR,
        /** Linear, with ticks at whole numbers: for what is counted. */
        WHOLE,
        LOG
    }

    public Axis {
        if (scale == Scale.LOG && (zero || from.orElse(1.0) <= 0.0 || to.orElse(1.0) <= 0.0)) {
            throw new IllegalArgumentException(title + ": a logarithmic axis has values above zero only");
        }
        if (from.orElse(Double.NEGATIVE_INFINITY) >= to.orElse(Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(title + ": the lower end must lie below the upper end");
        }
    }

    public static Axis linear(String title, Dimension dimension) {
        return new Axis(
                title, Scale.LINEAR, Optional.of(dimension), "", OptionalDouble.empty(), OptionalDouble.empty(), false);
    }

    /** Of a plain number with a unit of its own; empty for none. */
    public static Axis linear(String title, String unit) {
        return new Axis(
                title, Scale.LINEAR, Optional.empty(), unit, OptionalDouble.empty(), OptionalDouble.empty(), false);
    }

    /** Of a number that counts things. */
    public static Axis whole(String title) {
        return new Axis(
                title, Scale.WHOLE, Optional.empty(), "", OptionalDouble.empty(), OptionalDouble.empty(), false);
    }

    public static Axis log(String title, Dimension dimension) {
        return new Axis(
                title, Scale.LOG, Optional.of(dimension), "", OptionalDouble.empty(), OptionalDouble.empty(), false);
    }

    public static Axis log(String title, String unit) {
        return new Axis(
                title, Scale.LOG, Optional.empty(), unit, OptionalDouble.empty(), OptionalDouble.empty(), false);
    }

    public Axis from(double value) {
        return new Axis(title, scale, dimension, unit, OptionalDouble.of(value), to, zero);
    }

    public Axis to(double value) {
        return new Axis(title, scale, dimension, unit, from, OptionalDouble.of(value), zero);
    }

    /** Takes in zero. */
    public Axis withZero() {
        return new Axis(title, scale, dimension, unit, from, to, true);
    }

    /** Whether a value has a place on it. */
    boolean takes(double value) {
        return Double.isFinite(value) && (scale != Scale.LOG || value > 0.0);
    }
}
