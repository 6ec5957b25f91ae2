package org.varwright.cli;

import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.CalendarDate;

/** Days as they are typed. */
final class TypedDate {
    private TypedDate() {}

    /**
     * The day of an option.
     *
     * @throws VarwrightException {@code DATE_SYNTAX} naming the option
     */
    static CalendarDate read(String option, String text) {
        return CalendarDate.parse(text.strip())
                .orElseThrow(() -> new VarwrightException(Message.DATE_SYNTAX, new Place("", 0, 0, option), text));
    }
}
