package org.varwright.survey;

import java.util.OptionalInt;

/** Days between dates of the Gregorian calendar, without a clock or a time zone. */
final class Days {
    private Days() {}

    /** Days since a fixed day of the date at the start of an ISO 8601 text; empty where there is none. */
    static OptionalInt of(String text) {
        if (!text.strip().matches("[0-9]{4}-[0-9]{2}-[0-9]{2}.*")) {
            return OptionalInt.empty();
        }
        int year = Integer.parseInt(text.strip().substring(0, 4));
        int month = Integer.parseInt(text.strip().substring(5, 7));
        int day = Integer.parseInt(text.strip().substring(8, 10));
        if (month < 1 || month > 12 || day < 1 || day > 31) {
            return OptionalInt.empty();
        }
        // the year starts in March, so that a leap day is its last
        int y = month > 2 ? year : year - 1;
        int m = month > 2 ? month - 3 : month + 9;
        return OptionalInt.of(365 * y + y / 4 - y / 100 + y / 400 + (153 * m + 2) / 5 + day);
    }
}
