package org.varwright.energize;

import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;
import org.varwright.quantity.Reading;

/**
 * A value read on the energized bank.
 *
 * @param name line or leg such as {@code stage 2/A}, or sensor such as {@code stage 4 neutral-voltage} (at the relay)
 * @param value rms, in {@code dimension}'s SI unit, 0 or more
 * @param dimension current or voltage
 */
public record MeasuredValue(String name, double value, Dimension dimension) {
    /**
     * Reads what was typed, such as {@code stage 2/A=12.5 A} or {@code stage 4 neutral-voltage=1.2 V}.
     *
     * @throws VarwrightException {@code MEASURED_SYNTAX}, or what is wrong with the quantity
     */
    public static MeasuredValue parse(String typed) {
        int at = typed.lastIndexOf('=');
        if (at < 1) {
            throw new VarwrightException(Message.MEASURED_SYNTAX, Place.NOWHERE, typed);
        }
        String name = typed.substring(0, at).strip();
        String quantity = typed.substring(at + 1).strip();
        Place place = new Place("", 0, 0, name);
        Dimension dimension =
                Dimension.VOLTAGE.parse(quantity) instanceof Reading.Value ? Dimension.VOLTAGE : Dimension.CURRENT;
        double value = switch (dimension.parse(quantity)) {
            case Reading.Value v -> v.si();
            case Reading.NoUnit r ->
                throw new VarwrightException(Message.NO_UNIT, place, r.text(), dimension.example());
            case Reading.WrongUnit r ->
                throw new VarwrightException(
                        Message.WRONG_UNIT, place, r.text(), r.unit(), "A, mA, kA, V, mV, kV", "12.5 A");
            case Reading.NotANumber r ->
                throw new VarwrightException(Message.NOT_A_QUANTITY, place, r.text(), "12.5 A");
            case Reading.DecimalComma r ->
                throw new VarwrightException(Message.DECIMAL_COMMA, place, r.text(), r.suggestion());
        };
        if (value < 0.0) {
            throw new VarwrightException(Message.MEASURED_NEGATIVE, place, quantity);
        }
        return new MeasuredValue(name, value, dimension);
    }
}
