package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.varwright.comtrade.PlainRecord.CFG;
import static org.varwright.comtrade.PlainRecord.DAT;

import java.nio.charset.Charset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

/** What is asked for is what is given, and what can't be given is refused by name. */
class ReadOptionsTest {
    private static Recording read(ReadOptions options) {
        return RecordReader.read(
                RecordFiles.of(
                        PlainRecord.source("a.cfg", PlainRecord.bytes(CFG)),
                        PlainRecord.source("a.dat", PlainRecord.bytes(DAT))),
                options);
    }

    private static Message refused(ReadOptions options) {
        return assertThrows(VarwrightException.class, () -> read(options))
                .problems()
                .getFirst()
                .message();
    }

    @Test
    void channelsByNameOrNumberInTheRecordsOrder() {
        for (List<String> wanted : List.of(List.of("VA"), List.of("va "), List.of("2"), List.of("2", "VA"))) {
            Recording read = read(ReadOptions.ALL.channels(wanted));
            assertEquals(1, read.analogs().size(), wanted.toString());
            assertEquals("VA", read.analogs().getFirst().name());
            assertEquals(2, read.analogs().getFirst().number());
            assertEquals(
                    Samples.of(8.5, -8.5, 0.1, 0.2), read.analogs().getFirst().values());
        }
        assertEquals(
                List.of("IA", "VA"),
                read(ReadOptions.ALL.channels(List.of("2", "IA"))).analogs().stream()
                        .map(Analog::name)
                        .toList());
        assertEquals(Message.RECORD_NO_CHANNEL, refused(ReadOptions.ALL.channels(List.of("IA", "3"))));
    }

    /** Both ends belong to the window. */
    @Test
    void aWindowHoldsItsEnds() {
        Recording read = read(ReadOptions.ALL.window(0.001, 0.002));
        assertEquals(Samples.of(0.001, 0.002), read.seconds());
        assertEquals(Samples.of(3.0, 4.0), read.analogs().getFirst().values());
        assertEquals(Bits.of(false, true), read.statuses().getFirst().bits());
        assertEquals(4, read.origin().samples(), "the record itself has four");
        assertEquals(
                Samples.of(0.002, 0.003),
                read(ReadOptions.ALL.window(0.0015, Double.POSITIVE_INFINITY)).seconds());
        assertEquals(
                Samples.of(0.0),
                read(ReadOptions.ALL.window(Double.NEGATIVE_INFINITY, 0.0005)).seconds());
        assertEquals(Message.RECORD_NOTHING_THERE, refused(ReadOptions.ALL.window(0.0031, 1.0)));
        assertEquals(Message.RECORD_NOTHING_THERE, refused(ReadOptions.ALL.window(-1.0, -0.5)));
    }

    /** A sample takes its time, two values and a word of states: four values. */
    @Test
    void asManyValuesAsAreAllowedAndNotOneMore() {
        assertEquals(4, read(ReadOptions.ALL.atMost(16)).seconds().size());
        assertEquals(Message.RECORD_TOO_MANY, refused(ReadOptions.ALL.atMost(15)));
        assertEquals(
                3, read(ReadOptions.ALL.window(0.0, 0.002).atMost(12)).seconds().size());
        assertEquals(
                Message.RECORD_TOO_MANY,
                refused(ReadOptions.ALL.window(0.0, 0.002).atMost(11)));
        // one channel less is a value less
        assertEquals(
                4,
                read(ReadOptions.ALL.channels(List.of("IA")).atMost(12))
                        .seconds()
                        .size());
    }

    @Test
    void theRefusalSaysHowManyWouldFit() {
        String text = assertThrows(VarwrightException.class, () -> read(ReadOptions.ALL.atMost(8)))
                .problems()
                .getFirst()
                .print();
        assertTrue(text.contains("4 samples") && text.contains("2"), text);
    }

    @Test
    void aCodePageThatIsAskedForIsTakenAndAnUnknownOneRefused() {
        byte[] cyrillic = CFG.replace("Plover Hill", "Северная").getBytes(Charset.forName("windows-1251"));
        RecordFiles files = RecordFiles.of(
                        PlainRecord.source("a.cfg", cyrillic), PlainRecord.source("a.dat", PlainRecord.bytes(DAT)))
                .withHeader(PlainRecord.source("a.hdr", "Реле".getBytes(Charset.forName("windows-1251"))));
        Recording asked =
                RecordReader.read(files, ReadOptions.ALL.codePage(Optional.of("windows-1251"), CodePages.NONE));
        assertEquals("Северная", asked.station());
        assertEquals("Реле", asked.header());
        assertEquals(List.of(), asked.remarks());
        VarwrightException unknown = assertThrows(
                VarwrightException.class,
                () -> RecordReader.read(files, ReadOptions.ALL.codePage(Optional.of("EBCDIC"), CodePages.NONE)));
        assertEquals(Message.RECORD_CODE_PAGE, unknown.problems().getFirst().message());
    }

    /** A dozen names are enough to choose from; how many more there are is said. */
    @Test
    void aRefusalNamesADozenChannels() {
        StringBuilder cfg = new StringBuilder("S,D,1999\n13,13A,0D\n");
        for (int c = 1; c <= 13; c++) {
            cfg.append(c).append(",I").append(c).append(",,,A,1,0,0,-9,9,1,2,P\n");
        }
        cfg.append("60\n1\n1000,1\n09/03/2024,14:05:07.025000\n09/03/2024,14:05:07.025000\nASCII\n1\n");
        VarwrightException refused = assertThrows(
                VarwrightException.class,
                () -> RecordReader.read(
                        RecordFiles.of(
                                PlainRecord.source("a.cfg", PlainRecord.bytes(cfg.toString())),
                                PlainRecord.source("a.dat", PlainRecord.bytes("1,0" + ",0".repeat(13) + "\n"))),
                        ReadOptions.ALL.channels(List.of("V"))));
        String text = refused.problems().getFirst().print();
        assertTrue(text.contains("12 \"I12\", 1 more") && !text.contains("I13"), text);
    }
}
