package org.varwright.survey;

import java.util.Optional;
import java.util.OptionalInt;
import org.varwright.quantity.CalendarDate;

/** Days between dates of the Gregorian calendar, without a clock or a time zone. */
final class Days {
    private Days() {}

    /** Days since a fixed day of the date at the start of an ISO 8601 text; empty where there is none. */
    static OptionalInt of(String text) {
        String stripped = text.strip();
        Optional<CalendarDate> date =
                stripped.length() < 10 ? Optional.empty() : CalendarDate.parse(stripped.substring(0, 10));
        return date.map(d -> OptionalInt.of(d.epochDay())).orElseGet(OptionalInt::empty);
    }
}
