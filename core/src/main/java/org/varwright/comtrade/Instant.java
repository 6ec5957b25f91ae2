package org.varwright.comtrade;

import java.util.Locale;

/**
 * A date and a time of day by the recorder's clock, without a zone.
 *
 * @param year such as 2024
 * @param month 1 to 12
 * @param day 1 to 31
 * @param hour 0 to 24
 * @param minute 0 to 59
 * @param second 0 to 60, for a leap second
 * @param nanos of the second
 */
public record Instant(int year, int month, int day, int hour, int minute, int second, int nanos) {
    private static final int[] MONTH_DAYS = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

    /** Whether the calendar has such a day and the clock such a time. */
    static boolean exists(int year, int month, int day, int hour, int minute, int second) {
        return month >= 1
                && month <= 12
                && day >= 1
                && day <= (month == 2 && leap(year) ? 29 : MONTH_DAYS[month - 1])
                && hour >= 0
                && (hour <= 23 || (hour == 24 && minute == 0 && second == 0))
                && minute >= 0
                && minute <= 59
                && second >= 0
                && second <= 60;
    }

    private static boolean leap(int year) {
        return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    }

    /** Seconds after another instant [s]; to a nanosecond while they lie within a month of each other. */
    public double secondsAfter(Instant other) {
        long whole = wholeSeconds() - other.wholeSeconds();
        return whole + (nanos - other.nanos) * 1e-9;
    }

    private long wholeSeconds() {
        long days = 365L * year + (year - 1) / 4 - (year - 1) / 100 + (year - 1) / 400;
        for (int m = 1; m < month; m++) {
            days += m == 2 && leap(year) ? 29 : MONTH_DAYS[m - 1];
        }
        return (days + day) * 86_400L + hour * 3600L + minute * 60L + second;
    }

    /** An instant so much later; leap seconds are not known. */
    public Instant plus(double seconds) {
        double at = nanos * 1e-9 + seconds;
        long whole = (long) Math.floor(at);
        long rest = Math.round((at - whole) * 1e9);
        if (rest >= 1_000_000_000L) {
            rest -= 1_000_000_000L;
            whole++;
        }
        long clock = hour * 3600L + minute * 60L + second + whole;
        long shift = Math.floorDiv(clock, 86_400L);
        int left = (int) Math.floorMod(clock, 86_400L);
        int y = year;
        int m = month;
        long d = day + shift;
        while (d < 1) {
            m = m == 1 ? 12 : m - 1;
            y = m == 12 ? y - 1 : y;
            d += m == 2 && leap(y) ? 29 : MONTH_DAYS[m - 1];
        }
        while (d > (m == 2 && leap(y) ? 29 : MONTH_DAYS[m - 1])) {
            d -= m == 2 && leap(y) ? 29 : MONTH_DAYS[m - 1];
            y = m == 12 ? y + 1 : y;
            m = m == 12 ? 1 : m + 1;
        }
        return new Instant(y, m, (int) d, left / 3600, left / 60 % 60, left % 60, (int) rest);
    }

    /** ISO 8601 with six digits of the second, nine where they are needed. */
    public String print() {
        String fraction = nanos % 1000 == 0
                ? String.format(Locale.ROOT, "%06d", nanos / 1000)
                : String.format(Locale.ROOT, "%09d", nanos);
        return String.format(
                Locale.ROOT, "%04d-%02d-%02dT%02d:%02d:%02d.%s", year, month, day, hour, minute, second, fraction);
    }
}
