package org.varwright.quantity;

/** What came of reading a text as a quantity. */
public sealed interface Reading {
    /** The value in SI, finite. */
    record Value(double si) implements Reading {}

    /** No number stands at the start. */
    record NotANumber(String text) implements Reading {}

    /** A decimal comma; {@code suggestion} is the same text with a point. */
    record DecimalComma(String text, String suggestion) implements Reading {}

    /** A bare number. */
    record NoUnit(String text) implements Reading {}

    /** A unit of another kind of quantity, or none that is known. */
    record WrongUnit(String text, String unit) implements Reading {}
}
