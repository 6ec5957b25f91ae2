package org.varwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CalendarDateTest {
    /** Every day of 500 years against java.time of the JDK (ISO 8601 proleptic calendar). */
    @Test
    void daysAreThoseOfTheCalendar() {
        int days = 0;
        for (LocalDate day = LocalDate.of(1799, 12, 30); day.getYear() < 2300; day = day.plusDays(1)) {
            CalendarDate date = CalendarDate.parse(day.toString()).orElseThrow();
            assertEquals(day.toEpochDay(), date.epochDay(), day.toString());
            assertEquals(day.toString(), date.toString());
            days++;
        }
        assertTrue(days > 180_000, "days tried: " + days);
    }

    @Test
    void whatIsNoDayIsNone() {
        for (String text : new String[] {
            "",
            "2027-5-12",
            "12.05.2027",
            "2027-02-29",
            "2100-02-29",
            "2027-04-31",
            "2027-13-01",
            "2027-00-10",
            "0000-01-01",
            "2027-05-12T10:00",
            " 2027-05-12"
        }) {
            assertEquals(Optional.empty(), CalendarDate.parse(text), text);
        }
        assertThrows(IllegalArgumentException.class, () -> new CalendarDate(2027, 2, 29));
    }

    @Test
    void daysBetweenAndOrder() {
        CalendarDate early = new CalendarDate(2028, 2, 28);
        CalendarDate late = new CalendarDate(2028, 3, 1);
        assertEquals(2, early.daysUntil(late), "2028 has a leap day");
        assertEquals(-2, late.daysUntil(early));
        assertTrue(early.compareTo(late) < 0);
    }
}
