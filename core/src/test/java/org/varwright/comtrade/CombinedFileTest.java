package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/** Combined files (C37.111-2013, CFF) as programs write them: the parts are found, and places are those of the one file. */
class CombinedFileTest {
    private static final String CFG = PlainRecord.cfg2013();
    private static final String HEAD = "--- file type: CFG ---\n" + CFG;
    private static final String NOTES =
            "--- file type: INF ---\n[Public]\n--- file type: HDR ---\nwhat the relay said\n";
    private static final String DATA = "--- file type: DAT ASCII ---\n" + PlainRecord.DAT;

    private static Recording read(String text) {
        return read(text, new byte[0]);
    }

    private static Recording read(String text, byte[] data) {
        byte[] head = text.getBytes(StandardCharsets.ISO_8859_1);
        byte[] file = Arrays.copyOf(head, head.length + data.length);
        System.arraycopy(data, 0, file, head.length, data.length);
        return RecordReader.readCombined(Source.of("a.cff", Bytes.of(file)), ReadOptions.ALL);
    }

    private static String refusal(String text) {
        Problem problem = assertThrows(VarwrightException.class, () -> read(text))
                .problems()
                .getFirst();
        return problem.message() + " " + problem.place().print();
    }

    private static void isPlain(Recording read, String... remarks) {
        assertEquals(List.of(remarks), PlainRecord.remarks(read));
        assertEquals("Plover Hill", read.station());
        assertEquals(Samples.of(2.0, 3.0, 4.0, 5.0), read.analogs().getFirst().values());
        assertEquals(
                Bits.of(false, false, true, true), read.statuses().getFirst().bits());
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void partsWithAnyLineEnds(String end) {
        Recording read = read((HEAD + NOTES + DATA).replace("\n", end));
        isPlain(read);
        assertEquals("what the relay said", read.header());
        assertEquals("[Public]", read.information());
        assertEquals("-5h30", read.timing().clock().orElseThrow().timeCode());
    }

    /** Parts that a recorder leaves out, and the order in which it writes them, change nothing. */
    @Test
    void partsThatMayBeMissing() {
        isPlain(read(HEAD + DATA));
        isPlain(read("--- file type: HDR ---\nsaid\n" + HEAD + DATA));
        assertEquals(
                "said", read("--- file type: HDR ---\nsaid\n" + HEAD + DATA).header());
        assertEquals("", read(HEAD + "--- file type: HDR ---\n" + DATA).header());
    }

    @Test
    void partsThatMayNotBeMissing() {
        assertEquals("RECORD_CFF_PART a.cff", refusal(HEAD + NOTES));
        assertEquals("RECORD_CFF_PART a.cff", refusal(DATA));
        assertEquals("RECORD_CFF_PART a.cff", refusal("no combined file\n"));
        assertEquals("DAT", missing(HEAD + NOTES));
        assertEquals("DAT", missing(HEAD));
        assertEquals("CFG", missing(NOTES));
        assertEquals("CFG", missing(NOTES + DATA));
        assertEquals("RECORD_CFF_BASE64 a.cff:16:1", refusal(HEAD + "--- file type: DAT BASE64: 12 ---\nAAAA\n"));
    }

    private static String missing(String text) {
        String said = assertThrows(VarwrightException.class, () -> read(text))
                .problems()
                .getFirst()
                .print();
        return said.substring(said.indexOf('"') + 1, said.indexOf('"') + 4);
    }

    /** Seven ways to write a separator, each understood, the ones that aren't the standard's said. */
    @Test
    void separatorsAsTheyAreWritten() {
        isPlain(read(HEAD + "--- File Type: DAT ASCII ---\n" + PlainRecord.DAT), "RECORD_CFF_SEPARATOR a.cff:16:1");
        isPlain(read(HEAD + "---file type:DAT ASCII---\n" + PlainRecord.DAT), "RECORD_CFF_SEPARATOR a.cff:16:1");
        isPlain(read(HEAD + "-- file type DAT ASCII\n" + PlainRecord.DAT), "RECORD_CFF_SEPARATOR a.cff:16:1");
        isPlain(read(HEAD + "--- file type: dat ascii ---\n" + PlainRecord.DAT));
        isPlain(read(HEAD.replace(" CFG ", " ") + DATA), "RECORD_CFF_SEPARATOR a.cff:1:1");
        isPlain(read("\u00EF\u00BB\u00BF" + HEAD + DATA), "RECORD_BOM a.cff:1:1");
        isPlain(read(HEAD + "--- file type: XML ---\n<a/>\n" + DATA), "RECORD_CFF_UNKNOWN a.cff:16:1");
        // neither a line of hyphens nor one that only speaks of a file type is a separator
        Recording spoken = read(HEAD + "--- file type: HDR ---\nthe file type: DAT\n-----------\n-- \n" + DATA);
        isPlain(spoken);
        assertEquals("the file type: DAT\n-----------\n--", spoken.header());
    }

    @Test
    void whatIsWrongInAPartHasItsPlaceInTheFile() {
        assertEquals(
                "RECORD_CHANNEL_LINE a.cff:4:1",
                refusal(HEAD.replace("1,IA,A,,A,0.5,1,0,-99999,99998,600,5,S", "1,IA") + DATA));
        assertEquals(
                List.of("RECORD_VALUE a.cff:18:8"),
                PlainRecord.remarks(read(HEAD + DATA.replace("2,1000,4,", "2,1000,four,"))));
    }

    /** Binary data have their number of bytes in the separator: what follows is not theirs. */
    @Test
    void binaryDataByTheirCount() {
        String head = HEAD.replace("ASCII", "BINARY");
        byte[] data = binary(0);
        isPlain(read(head + "--- file type: DAT BINARY: 56 ---\n", data));
        isPlain(read(head + "--- file type: DAT BINARY: 56 ---\n", binary(5)));
        isPlain(read(head + "--- file type: DAT BINARY ---\n", data), "RECORD_CFF_NO_COUNT a.cff:16:1");
        isPlain(read(head + "--- file type: DAT BINARY: x6 ---\n", data), "RECORD_CFF_NO_COUNT a.cff:16:1");
        isPlain(read(head + "--- file type: DAT BINARY: 57 ---\n", data), "RECORD_CFF_CUT a.cff:16:1");
        isPlain(read(head + "--- file type: DAT ---\n", data), "RECORD_CFF_FORMAT a.cff:16:1");
        isPlain(read(HEAD + "--- file type: DAT BINARY: 56 ---\n", data), "RECORD_FORMATS_DIFFER a.cff");
        Recording two = read(head + "--- file type: DAT BINARY: 28 ---\n", data);
        assertEquals(2, two.seconds().size());
    }

    /** A part of a longer record begins at sample 10: its first byte is that of a line feed, and belongs to the data. */
    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n"})
    void dataThatBeginWithALineFeed(String end) {
        byte[] data = binary(0);
        for (int i = 0; i < 4; i++) {
            data[14 * i] = (byte) (10 + i);
        }
        String head = (HEAD.replace("ASCII", "BINARY") + "--- file type: DAT BINARY: 56 ---\n").replace("\n", end);
        isPlain(read(head, data));
    }

    /** The four samples in 14 bytes each, and some behind them. */
    private static byte[] binary(int behind) {
        ByteBuffer data = ByteBuffer.allocate(4 * 14 + behind).order(ByteOrder.LITTLE_ENDIAN);
        int[] volts = {8500, -8500, 100, 200};
        for (int i = 0; i < 4; i++) {
            data.putInt(i + 1).putInt(1000 * i).putShort((short) (2 * (i + 1))).putShort((short) volts[i]);
            data.putShort((short) (i >= 2 ? 1 : 0));
        }
        return data.array();
    }
}
