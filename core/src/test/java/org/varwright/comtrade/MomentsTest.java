package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.varwright.problem.Place;

/**
 * Dates, times and clocks as written. C37.111-1991 has the month first, later editions the day; the time code, the quality code and the leap second are those of
 * C37.111-2013, the quality codes by the table of message time quality in IEEE C37.118.
 */
class MomentsTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "C1999 | 09/03/2024,14:05:07.025000      | 2024-03-09T14:05:07.025000",
                "C2013 | 09/03/2024,14:05:07.025000001   | 2024-03-09T14:05:07.025000001",
                "C2013 | 09/03/2024,14:05:07.0250000019  | 2024-03-09T14:05:07.025000001",
                "C1991 | 03/09/95,14:05:07.025000        | 1995-03-09T14:05:07.025000",
                "C1991 | 03/09/70,14:05:07.025000        | 1970-03-09T14:05:07.025000",
                "C1991 | 03/09/69,14:05:07.025000        | 2069-03-09T14:05:07.025000",
                "C1991 | 03/09/1995,14:05:07.025000      | 1995-03-09T14:05:07.025000",
                "C1999 | 9/3/2024,4:5:7.5                | 2024-03-09T04:05:07.500000",
                "C1999 | ' 09/03/2024 , 14:05:07.025000 '  | 2024-03-09T14:05:07.025000",
                "C1999 | 09/03/2024 14:05:07.025000      | 2024-03-09T14:05:07.025000",
                "C1999 | 09-03-2024,14:05:07.025000      | 2024-03-09T14:05:07.025000",
                "C1999 | 09.03.2024,14:05:07             | 2024-03-09T14:05:07.000000",
                "C1999 | 09/03/2024,14:05:07,025000      | 2024-03-09T14:05:07.025000",
                "C1999 | 2024/03/09,14:05:07.025000      | 2024-03-09T14:05:07.025000",
                "C1999 | 03/19/2024,14:05:07.025000      | 2024-03-19T14:05:07.025000",
                "C1991 | 19/03/95,14:05:07.025000        | 1995-03-19T14:05:07.025000",
                "C1999 | 31/12/2016,23:59:60.500000      | 2016-12-31T23:59:60.500000",
                "C1999 | 09/03/2024,24:00:00.000000      | 2024-03-09T24:00:00.000000"
            })
    void datesAndTimesAsTheyAreWritten(Revision revision, String written, String due) {
        Moment moment = new MomentReader(revision, new Remarks()).read(written, Place.NOWHERE);
        assertEquals(due, moment.print());
        assertEquals(written.strip(), moment.written());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                ",",
                ",14:05:07",
                "09/03/2024",
                "09/03,14:05:07",
                "09/03/2024/1,14:05:07",
                "09/03/2024,14:05",
                "09/03/2024,14:05:07:1",
                "31/02/2024,14:05:07",
                "13/13/2024,14:05:07",
                "2024/13/01,14:05:07",
                "09/03/2024,25:05:07",
                "09/03/2024,14:60:07",
                "09/03/2024,14:05:61",
                "0x/03/2024,14:05:07",
                "09/-3/2024,14:05:07",
                "09/03/20240,14:05:07",
                "09/03/2024,14:05:07.x",
                "09/03/2024,14:0x:07",
                "09/03/2024,14:05:",
                "/03/2024,14:05:07"
            })
    void whatIsNoDateWithATimeIsNotKnown(String written) {
        Remarks remarks = new Remarks();
        Moment moment = new MomentReader(Revision.C1999, remarks).read(written, Place.NOWHERE);
        assertTrue(moment.instant().isEmpty(), moment.print());
        assertEquals(written.strip(), moment.print(), "shown as written");
        assertTrue(
                remarks.list().stream().anyMatch(r -> r.message() == org.varwright.problem.Message.RECORD_DATE),
                written);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "0h00, 0",
        "+10, 600",
        "-5, -300",
        "-5h30, -330",
        "+5h45, 345",
        "5h30, 330",
        "-0h30, -30",
        "10h, 600",
        "' -5H30 ', -330",
        "23h59, 1439"
    })
    void timeCodesInMinutes(String code, int minutes) {
        assertEquals(OptionalInt.of(minutes), ClockReader.minutes(code));
    }

    @ParameterizedTest
    @ValueSource(strings = {"x", "", "-", "24", "-24h00", "5h60", "5h-1", "h30", "100", "5:30", "+-5"})
    void whatIsNoTimeCodeIsNone(String code) {
        assertEquals(OptionalInt.empty(), ClockReader.minutes(code));
    }

    @Test
    void qualityCodesByTheTable() {
        List<String> within =
                List.of("1 ns", "10 ns", "100 ns", "1 µs", "10 µs", "100 µs", "1 ms", "10 ms", "100 ms", "1 s", "10 s");
        for (int code = 1; code <= 11; code++) {
            String digit = Integer.toHexString(code);
            assertTrue(ClockReader.qualityText(digit).endsWith("unlocked, within " + within.get(code - 1)), digit);
            assertEquals(ClockReader.qualityText(digit), ClockReader.qualityText("0" + digit), digit);
        }
        assertTrue(ClockReader.qualityText("0").contains("locked")
                && !ClockReader.qualityText("0").contains("unlocked"));
        assertEquals(ClockReader.qualityText("0"), ClockReader.qualityText("00"));
        assertTrue(ClockReader.qualityText("F").contains("failed"));
        for (String none : List.of("C", "D", "E", "10", "", "x")) {
            assertEquals("", ClockReader.qualityText(none), none);
        }
        assertTrue(ClockReader.leapText("0").contains("no leap second"));
        assertTrue(ClockReader.leapText("1").contains("added"));
        assertTrue(ClockReader.leapText("2").contains("taken out"));
        assertTrue(ClockReader.leapText(" 3 ").contains("can't tell"));
        assertEquals("", ClockReader.leapText("4"));
    }

    @Test
    void theClockOf2013IsThatOfItsLastLines() {
        Clock clock = PlainRecord.read(PlainRecord.cfg2013().replace("\n0,0\n", "\nB,3\n"), PlainRecord.DAT)
                .timing()
                .clock()
                .orElseThrow();
        assertEquals("-5h30", clock.localCode());
        assertEquals(OptionalInt.of(-330), clock.offsetMinutes());
        assertEquals("B", clock.quality());
        assertTrue(clock.qualityText().contains("10 s"));
        assertTrue(clock.leapText().contains("can't tell"));
        assertTrue(
                PlainRecord.read(PlainRecord.CFG, PlainRecord.DAT)
                        .timing()
                        .clock()
                        .isEmpty(),
                "1999 has none");
    }
}
