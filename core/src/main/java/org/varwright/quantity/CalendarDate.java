package org.varwright.quantity;

import java.util.Locale;
import java.util.Optional;

/**
 * A day of the Gregorian calendar, without a clock or a time zone.
 *
 * @param year 1 to 9999
 * @param month 1 to 12
 * @param day 1 to the last of that month
 */
public record CalendarDate(int year, int month, int day) implements Comparable<CalendarDate> {
    private static final String FORM = "[0-9]{4}-[0-9]{2}-[0-9]{2}";

    public CalendarDate {
        if (!exists(year, month, day)) {
            throw new IllegalArgumentException("no such day: " + year + "-" + month + "-" + day);
        }
    }

    /** The day of an ISO 8601 text such as {@code 2027-05-12}; empty where it is written otherwise or there is no such day. */
    public static Optional<CalendarDate> parse(String text) {
        if (!text.matches(FORM)) {
            return Optional.empty();
        }
        int year = Integer.parseInt(text.substring(0, 4));
        int month = Integer.parseInt(text.substring(5, 7));
        int day = Integer.parseInt(text.substring(8, 10));
        return exists(year, month, day) ? Optional.of(new CalendarDate(year, month, day)) : Optional.empty();
    }

    /** Days since 1970-01-01; negative before. */
    public int epochDay() {
        // the year starts in March, so that a leap day is its last
        int y = month > 2 ? year : year - 1;
        int m = month > 2 ? month - 3 : month + 9;
        return 365 * y + y / 4 - y / 100 + y / 400 + (153 * m + 2) / 5 + day - 719_469;
    }

    /** Days from this one to the other; negative where the other is earlier. */
    public int daysUntil(CalendarDate other) {
        return other.epochDay() - epochDay();
    }

    @Override
    public int compareTo(CalendarDate other) {
        return Integer.compare(epochDay(), other.epochDay());
    }

    /** As ISO 8601 writes it, such as {@code 2027-05-12}. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%04d-%02d-%02d", year, month, day);
    }

    private static boolean exists(int year, int month, int day) {
        return year >= 1 && year <= 9999 && month >= 1 && month <= 12 && day >= 1 && day <= daysOf(year, month);
    }

    private static int daysOf(int year, int month) {
        return switch (month) {
            case 2 -> year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) ? 29 : 28;
            case 4, 6, 9, 11 -> 30;
            default -> 31;
        };
    }
}
