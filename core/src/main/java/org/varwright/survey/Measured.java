package org.varwright.survey;

import java.util.OptionalDouble;

/** A measured value as it was written. */
public sealed interface Measured {
    /** What stood in the cell. */
    String raw();

    /**
     * A plain value.
     *
     * @param si value in SI (temperature in °C), finite
     * @param raw what stood in the cell
     */
    record Value(double si, String raw) implements Measured {}

    /**
     * More than the meter can show, with the end of its range, such as {@code >200 MΩ}.
     *
     * @param si the bound in SI
     * @param raw what stood in the cell
     */
    record Above(double si, String raw) implements Measured {}

    /**
     * Less than the meter can show, such as {@code <0.01 nF}.
     *
     * @param si the bound in SI
     * @param raw what stood in the cell
     */
    record Below(double si, String raw) implements Measured {}

    /** Over range, such as {@code OL}. */
    record OverRange(String raw) implements Measured {}

    /** The value where it is a plain one. */
    default OptionalDouble value() {
        return this instanceof Value plain ? OptionalDouble.of(plain.si()) : OptionalDouble.empty();
    }
}
