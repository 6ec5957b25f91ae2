package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.varwright.comtrade.PlainRecord.CFG;
import static org.varwright.comtrade.PlainRecord.DAT;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * A decision table: one departure from C37.111 a row, and exactly what is said of it, where. Whoever sends a record on to somebody else has to know what was
 * forgiven; a remark too many hides the one that counts.
 */
class RemarksTest {
    /** A row: what is wrong, the configuration, the data, and the remarks due, {@code CODE place}. */
    private record Row(String what, String configuration, String data, List<String> due) {}

    private static Row cfg(String what, String from, String to, String... due) {
        assertTrue(CFG.contains(from), from);
        return new Row(what, CFG.replace(from, to), DAT, List.of(due));
    }

    private static Row dat(String what, String data, String... due) {
        return new Row(what, CFG, data, List.of(due));
    }

    @TestFactory
    Stream<DynamicTest> everyDepartureIsSaidAndNothingElse() {
        List<Row> rows = new ArrayList<>();
        rows.add(new Row("nothing, 1999", CFG, DAT, List.of()));
        rows.add(new Row("nothing, 1991", PlainRecord.cfg1991(), DAT, List.of()));
        rows.add(new Row("nothing, 2013", PlainRecord.cfg2013(), DAT, List.of()));
        rows.addAll(configurations());
        rows.addAll(times());
        rows.addAll(data());
        return rows.stream()
                .map(row -> DynamicTest.dynamicTest(
                        row.what(),
                        () -> assertEquals(
                                row.due(), PlainRecord.remarks(PlainRecord.read(row.configuration(), row.data())))));
    }

    private static List<Row> configurations() {
        return List.of(
                cfg("a comma in the station", "Plover Hill", "Plover, Hill", "RECORD_COMMA_IN_NAME a.cfg:1:1"),
                cfg("a year between the editions", "1,1999", "1,2001", "RECORD_YEAR a.cfg:1:19"),
                cfg("a year before 1999", "1,1999", "1,1997", "RECORD_YEAR a.cfg:1:19"),
                cfg("a letter missing", "3,2A,1D", "3,2,1D", "RECORD_COUNT_LETTER a.cfg:2:3"),
                cfg("a wrong total", "3,2A,1D", "4,2A,1D", "RECORD_TOTAL a.cfg:2:1"),
                cfg("small letters", "3,2A,1D", "3,2a,1d"),
                cfg("a comma in a channel", "IA,A,", "IA,x,A,", "RECORD_COMMA_IN_NAME a.cfg:3:3"),
                cfg("a comma behind a channel", "600,5,S", "600,5,S,", "RECORD_LINE_FIELDS a.cfg:3:40"),
                cfg("no scale", "A,0.5,1,", "A,,1,", "RECORD_NO_SCALE a.cfg:3:11"),
                cfg("no offset", "A,0.5,1,", "A,0.5,,", "RECORD_NO_SCALE a.cfg:3:11"),
                cfg("the multiplier 0", "A,0.5,1,", "A,0,1,", "RECORD_CONSTANT_CHANNEL a.cfg:3:11"),
                cfg("no skew", "0.5,1,0,", "0.5,1,x,", "RECORD_SKEW a.cfg:3:17"),
                cfg("neither P nor S", "600,5,S", "600,5,Q", "RECORD_SIDE a.cfg:3:32"),
                cfg("a side in small letters", "600,5,S", "600,5,s"),
                cfg("a ratio of nothing", "600,5,S", "600,0,S", "RECORD_RATIO a.cfg:3:32"),
                cfg("a secondary of 1 to 1", "600,5,S", "1,1,S", "RECORD_RATIO_ONE a.cfg:3:32"),
                cfg("a channel out of number", "\n2,VA", "\n3,VA", "RECORD_CHANNEL_NUMBER a.cfg:4:1"),
                cfg("no normal state", "52a,0", "52a,2", "RECORD_NORMAL a.cfg:5:14"),
                cfg("a state of four fields", "1,TRIP,A,52a,0", "1,TRIP,A,0", "RECORD_FIELDS_MISSING a.cfg:5:1"),
                cfg("a state of three fields", "1,TRIP,A,52a,0", "1,TRIP,0"),
                cfg(
                        "a state of two fields",
                        "1,TRIP,A,52a,0",
                        "1,TRIP",
                        "RECORD_FIELDS_MISSING a.cfg:5:1",
                        "RECORD_NORMAL a.cfg:5:3"),
                cfg("a comma in a state", "1,TRIP,A", "1,TRIP,2,A", "RECORD_COMMA_IN_NAME a.cfg:5:3"),
                cfg("a state out of number", "1,TRIP", "7,TRIP", "RECORD_CHANNEL_NUMBER a.cfg:5:1"),
                cfg("no frequency", "\n60\n", "\n0\n", "RECORD_FREQUENCY a.cfg:6:1"),
                cfg("no format", "ASCII", "TEXT", "RECORD_FORMAT a.cfg:11:1"),
                cfg("another format", "ASCII", "BINARY", "RECORD_DATA_IS_TEXT a.dat"),
                cfg("no multiplier", "ASCII\n1\n", "ASCII\n0\n", "RECORD_MULTIPLIER a.cfg:12:1"),
                cfg("the multiplier's line is missing", "ASCII\n1\n", "ASCII\n", "RECORD_LINE_MISSING a.cfg:12"),
                cfg("lines behind", "ASCII\n1\n", "ASCII\n1\n2\n3\n", "RECORD_LINES_AFTER a.cfg:13:1"),
                cfg("a blank line", "\n60\n", "\n\n60\n", "RECORD_BLANK_LINES a.cfg"),
                cfg("line ends of two kinds", "\n60\n", "\n60\r\n", "RECORD_LINE_ENDS a.cfg"),
                cfg("a byte order mark", "Plover", "\uFEFFPlover", "RECORD_BOM a.cfg:1:1"));
    }

    private static List<Row> times() {
        return List.of(
                cfg("a rate too many", "1\n1000,4", "2\n1000,4", "RECORD_RATES_MISSING a.cfg:9:1"),
                cfg("no rate where one is due", "1\n1000,4", "1\nx,4", "RECORD_RATE a.cfg:8:1"),
                cfg("rate 0", "1\n1000,4", "0\n0,4"),
                cfg(
                        "rates as counts",
                        "1\n1000,4",
                        "2\n1000,3\n1000,1",
                        "RECORD_RATE_COUNTS a.cfg",
                        "RECORD_SAMPLE_COUNT a.dat"),
                cfg(
                        "a date that is none",
                        "09/03/2024,14:05:07.027",
                        "31/02/2024,14:05:07.027",
                        "RECORD_DATE a.cfg:10:1"),
                cfg(
                        "the month first",
                        "09/03/2024",
                        "09/13/2024",
                        "RECORD_DATE_ORDER a.cfg:9:1",
                        "RECORD_DATE_ORDER a.cfg:10:1"),
                cfg("a short fraction", "07.027000", "07.027", "RECORD_SHORT_FRACTION a.cfg:10:1"),
                cfg("a trigger before the start", "07.027000", "07.024000", "RECORD_TRIGGER a.cfg"),
                cfg("a trigger behind the end", "07.027000", "07.031000", "RECORD_TRIGGER a.cfg"),
                cfg("another number of samples", "1000,4", "1000,5", "RECORD_SAMPLE_COUNT a.dat"),
                new Row(
                        "2013 without the quality of its clock",
                        PlainRecord.cfg2013().replace("\n0,0\n", "\n"),
                        DAT,
                        List.of("RECORD_LINE_MISSING a.cfg:14")),
                new Row(
                        "2013 without a time code",
                        PlainRecord.cfg2013().replace("-5h30,-5h30\n0,0\n", ""),
                        DAT,
                        List.of("RECORD_LINE_MISSING a.cfg:13")));
    }

    private static List<Row> data() {
        return List.of(
                dat("a word", DAT.replace("2,1000,4,", "2,1000,four,"), "RECORD_VALUE a.dat:2:8"),
                dat("a state that is none", DAT.replace("100,1", "100,2"), "RECORD_STATE a.dat:3:14"),
                dat("the mark of 1991", DAT.replace("2,1000,4,", "2,1000,999999,"), "RECORD_MARK a.dat:2"),
                dat("the mark of 1999", DAT.replace("2,1000,4,", "2,1000,99999,")),
                dat("an empty value", DAT.replace("2,1000,4,", "2,1000,,")),
                dat(
                        "a state missing",
                        DAT.replace("-8500,0", "-8500"),
                        "RECORD_ROW_FIELDS a.dat:2:1",
                        "RECORD_STATE a.dat:2:15"),
                dat("two fields too many", DAT.replace("-8500,0", "-8500,0,0,0"), "RECORD_ROW_FIELDS a.dat:2:1"),
                dat("a comma at the end", DAT.replace("-8500,0", "-8500,0,")),
                dat("a line between", DAT.replace("2,1000", "page 2\n2,1000"), "RECORD_NOT_A_ROW a.dat:2:1"),
                dat("a blank line between", DAT.replace("2,1000", "\n2,1000"), "RECORD_BLANK_LINES a.dat"),
                eight("nothing, eight samples", ""),
                eight(
                        "a line lost",
                        "3,2000,0,0,0\n",
                        "RECORD_SAMPLE_COUNT a.dat",
                        "RECORD_NUMBERS_JUMP a.dat",
                        "RECORD_GAP a.dat"),
                dat(
                        "the end cut off",
                        DAT.substring(0, DAT.length() - 3),
                        "RECORD_ROW_CUT a.dat:4:1",
                        "RECORD_SAMPLE_COUNT a.dat"),
                dat("stamps of another pace", DAT.replace("000,", "0000,"), "RECORD_STAMPS_DIFFER a.dat"),
                eight("stamps that run backwards once", "3,2000>3,500", "RECORD_STAMPS_FALL a.dat"),
                dat(
                        "stamps below 0",
                        "1,-2000,2,0,0\n2,-1000,4,0,0\n3,0,6,0,1\n4,1000,8,0,1\n",
                        "RECORD_NEGATIVE_STAMP a.dat"));
    }

    /** Eight samples at 1 kHz, of which one line is left out, or a part replaced by another. */
    private static Row eight(String what, String change, String... due) {
        StringBuilder data = new StringBuilder();
        for (int i = 0; i < 8; i++) {
            data.append(i + 1).append(',').append(1000 * i).append(",0,0,0\n");
        }
        int to = change.indexOf('>');
        String changed = to < 0
                ? data.toString().replace(change, "")
                : data.toString().replace(change.substring(0, to), change.substring(to + 1));
        return new Row(what, CFG.replace("1000,4", "1000,8"), changed, List.of(due));
    }

    /** Of a thousand alike three are kept, and the rest counted. */
    @Test
    void manyAlikeAreCounted() {
        StringBuilder data = new StringBuilder();
        for (int i = 0; i < 1000; i++) {
            data.append(i + 1).append(',').append(1000 * i).append(",bad,0,0\n");
        }
        Recording read = PlainRecord.read(CFG.replace("1000,4", "1000,1000"), data.toString());
        assertEquals(
                List.of(
                        "RECORD_VALUE a.dat:1:5",
                        "RECORD_VALUE a.dat:2:8",
                        "RECORD_VALUE a.dat:3:8",
                        "RECORD_MORE_ALIKE a.dat"),
                PlainRecord.remarks(read));
        assertTrue(
                read.remarks().getLast().print().contains("997 more"),
                read.remarks().getLast().print());
        assertEquals(1000, read.analogs().getFirst().values().missing());
    }
}
