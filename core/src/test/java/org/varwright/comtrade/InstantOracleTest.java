package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The calendar against the one of the runtime ({@code java.time}), which the core may not use: proleptic Gregorian, ISO 8601. */
class InstantOracleTest {
    private static final int CASES = 4000;

    @Test
    void aDateExistsWhereTheRuntimesCalendarHasIt() {
        for (int year : new int[] {1900, 1996, 1999, 2000, 2023, 2024, 2100}) {
            for (int month = 0; month <= 13; month++) {
                for (int day = 0; day <= 32; day++) {
                    assertEquals(
                            exists(year, month, day, 12, 30, 30),
                            Instant.exists(year, month, day, 12, 30, 30),
                            year + "-" + month + "-" + day);
                }
            }
        }
        for (int hour = -1; hour <= 25; hour++) {
            for (int minute : new int[] {-1, 0, 1, 59, 60}) {
                for (int second : new int[] {-1, 0, 1, 59}) {
                    boolean midnight = hour == 24 && minute == 0 && second == 0;
                    assertEquals(
                            midnight || exists(2024, 3, 9, hour, minute, second),
                            Instant.exists(2024, 3, 9, hour, minute, second),
                            hour + ":" + minute + ":" + second);
                }
            }
        }
        assertTrue(Instant.exists(2016, 12, 31, 23, 59, 60), "a leap second (ITU-R TF.460)");
        assertTrue(!Instant.exists(2016, 12, 31, 23, 59, 61));
    }

    private static boolean exists(int year, int month, int day, int hour, int minute, int second) {
        try {
            LocalDateTime.of(year, month, day, hour, minute, second);
            return true;
        } catch (DateTimeException e) {
            return false;
        }
    }

    @Test
    void secondsBetweenAreThoseOfTheRuntime() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Instant one = any(random);
            Instant other = any(random);
            Duration between = Duration.between(twin(other), twin(one));
            double seconds = between.getSeconds() + between.getNano() * 1e-9;
            // a double has 53 bits: the years between may take all but a microsecond of them
            assertEquals(seconds, one.secondsAfter(other), 1e-6, "seed " + seed + " " + one + " " + other);
            Instant near = new Instant(
                    other.year(),
                    other.month(),
                    other.day(),
                    other.hour(),
                    other.minute(),
                    other.second(),
                    one.nanos());
            assertEquals((one.nanos() - other.nanos()) * 1e-9, near.secondsAfter(other), 1e-15, "seed " + seed);
        }
    }

    @Test
    void anInstantLaterIsThatOfTheRuntime() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Instant start = any(random);
            // whole seconds to a whole second: a double of years has no nanoseconds left
            Instant whole = new Instant(
                    start.year(), start.month(), start.day(), start.hour(), start.minute(), start.second(), 0);
            long seconds = random.nextLong(-800L * 86_400L, 800L * 86_400L);
            assertEquals(
                    twin(whole).plusSeconds(seconds),
                    twin(whole.plus((double) seconds)),
                    "seed " + seed + " " + whole + " + " + seconds);
            int micros = random.nextInt(-1_000_000, 1_000_000);
            assertEquals(
                    twin(start).plusNanos(1000L * micros),
                    twin(start.plus(micros * 1e-6)),
                    "seed " + seed + " " + start + " + " + micros + " µs");
        }
    }

    /** Turns of the year, leap days, and half a nanosecond below a whole second, which is that second. */
    @Test
    void edgesOfTheCalendar() {
        Instant eve = new Instant(2023, 12, 31, 23, 59, 59, 999_999_999);
        assertEquals(new Instant(2024, 1, 1, 0, 0, 0, 0), eve.plus(1e-9));
        assertEquals(eve, new Instant(2024, 1, 1, 0, 0, 0, 0).plus(-1e-9));
        assertEquals(new Instant(2024, 1, 1, 0, 0, 0, 0), eve.plus(0.6e-9));
        assertEquals(new Instant(2024, 2, 29, 0, 0, 0, 0), new Instant(2024, 2, 28, 0, 0, 0, 0).plus(86_400.0));
        assertEquals(new Instant(2023, 3, 1, 0, 0, 0, 0), new Instant(2023, 2, 28, 0, 0, 0, 0).plus(86_400.0));
        assertEquals(new Instant(2024, 2, 29, 0, 0, 0, 0), new Instant(2024, 3, 1, 0, 0, 0, 0).plus(-86_400.0));
        assertEquals(new Instant(2023, 12, 1, 0, 0, 0, 0), new Instant(2024, 1, 1, 0, 0, 0, 0).plus(-31 * 86_400.0));
        assertEquals(86_401.0, new Instant(2024, 3, 10, 0, 0, 1, 0).secondsAfter(new Instant(2024, 3, 9, 0, 0, 0, 0)));
    }

    @Test
    void printedInIso8601WithNineDigitsWhereSixDontDo() {
        for (String due :
                List.of("2024-03-09T14:05:07.025000", "0999-12-01T00:00:00.000001", "2024-03-09T14:05:07.025000001")) {
            LocalDateTime at = LocalDateTime.parse(due);
            assertEquals(due, instant(at).print());
        }
    }

    private static Instant any(SplittableRandom random) {
        return instant(LocalDateTime.of(random.nextInt(1985, 2101), 1, 1, 0, 0)
                .plusSeconds(random.nextInt(366 * 86_400))
                .plusNanos(1000L * random.nextInt(1_000_000)));
    }

    private static Instant instant(LocalDateTime at) {
        return new Instant(
                at.getYear(),
                at.getMonthValue(),
                at.getDayOfMonth(),
                at.getHour(),
                at.getMinute(),
                at.getSecond(),
                at.getNano());
    }

    private static LocalDateTime twin(Instant at) {
        return LocalDateTime.of(at.year(), at.month(), at.day(), at.hour(), at.minute(), at.second(), at.nanos());
    }
}
