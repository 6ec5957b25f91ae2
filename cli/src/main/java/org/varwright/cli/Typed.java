package org.varwright.cli;

import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;
import org.varwright.quantity.Reading;

/** Values typed as options. */
final class Typed {
    private Typed() {}

    /**
     * A quantity typed with its unit.
     *
     * @throws VarwrightException naming the option, what was typed and what is allowed
     */
    static double quantity(String option, Dimension dimension, String typed) {
        Place place = new Place("", 0, 0, option);
        return switch (dimension.parse(typed)) {
            case Reading.Value value -> value.si();
            case Reading.NoUnit none ->
                throw new VarwrightException(Message.NO_UNIT, place, none.text(), dimension.example());
            case Reading.WrongUnit wrong ->
                throw new VarwrightException(
                        Message.WRONG_UNIT,
                        place,
                        wrong.text(),
                        wrong.unit(),
                        String.join(", ", dimension.units()),
                        dimension.example());
            case Reading.NotANumber not ->
                throw new VarwrightException(Message.NOT_A_QUANTITY, place, not.text(), dimension.example());
            case Reading.DecimalComma comma ->
                throw new VarwrightException(Message.DECIMAL_COMMA, place, comma.text(), comma.suggestion());
        };
    }

    /**
     * Holds a value against zero.
     *
     * @throws VarwrightException {@code NOT_POSITIVE} naming the option
     */
    static void requirePositive(String option, double value, Dimension dimension) {
        if (!(value > 0.0)) {
            throw new VarwrightException(Message.NOT_POSITIVE, new Place("", 0, 0, option), dimension.format(value));
        }
    }
}
