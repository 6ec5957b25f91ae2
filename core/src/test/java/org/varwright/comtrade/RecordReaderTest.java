package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/** What records in the field get wrong, one thing a test: how it is read, and that it is said. */
class RecordReaderTest {
    private static final String CFG = """
            Plover Hill,REC 1,1999
            3,2A,1D
            1,IA,A,,A,0.5,1,0,-99999,99998,600,5,S
            2,VA,A,,kV,0.001,0,0,-99999,99998,7200,120,P
            1,TRIP,,,0
            60
            1
            1000,4
            09/03/2024,14:05:07.025000
            09/03/2024,14:05:07.027000
            ASCII
            1
            """;
    private static final String DAT = "1,0,2,8500,0\n2,1000,4,-8500,0\n3,2000,6,100,1\n4,3000,8,200,1\n";

    @Test
    void aRecordAsTheStandardHasItIsReadWithoutARemark() {
        Recording read = read(CFG, DAT);
        assertEquals(List.of(), read.remarks());
        assertEquals(Revision.C1999, read.revision());
        assertEquals(Samples.of(2.0, 3.0, 4.0, 5.0), read.analogs().getFirst().values());
        assertEquals(Samples.of(8.5, -8.5, 0.1, 0.2), read.analogs().get(1).values());
        assertEquals(1e3, read.analogs().get(1).toSi());
        assertEquals(120.0, read.analogs().getFirst().toPrimarySi());
        assertEquals(
                Bits.of(false, false, true, true), read.statuses().getFirst().bits());
        assertEquals(Samples.of(0.0, 0.001, 0.002, 0.003), read.seconds());
        assertEquals(0.002, read.triggerSeconds().orElseThrow(), 1e-12);
    }

    @Test
    void missingValuesOfEveryEditionAreNotTakenAsData() {
        Recording read = read(CFG, "1,0,99999,999999,0\n2,1000,,8500,0\n3,2000,6,100,1\n4,3000,8,200,1\n");
        assertEquals(2, read.analogs().getFirst().values().missing());
        assertEquals(1, read.analogs().get(1).values().missing());
        assertTrue(has(read, Message.RECORD_MARK), "999999 is the mark of 1991");
        // A channel whose declared range goes beyond the mark has it as a value.
        Recording wide =
                read(CFG.replace("-99999,99998,600", "-999999,999900,600"), "1,0,99999,0,0\n2,1000,999999,0,0\n");
        assertEquals(Samples.of(50_000.5, Double.NaN), wide.analogs().getFirst().values());
    }

    @Test
    void binaryMissingValuesAreThoseOfTheStandard() {
        String cfg = CFG.replace("ASCII", "BINARY").replace("1000,4", "1000,2");
        Recording read = read(cfg, binary(2, 0, -0x8000, 5, 0, 1, -1, 7, 1));
        assertEquals(Samples.of(Double.NaN, 0.5), read.analogs().getFirst().values(), "0x8000 marks, 0xFFFF is -1");
    }

    /** Status channel 17 is bit 0 of the second word. */
    @Test
    void statesComeFromTheWordAndBitOfTheirNumber() {
        StringBuilder cfg = new StringBuilder("S,D,1999\n17,0A,17D\n");
        for (int i = 1; i <= 17; i++) {
            cfg.append(i).append(",S").append(i).append(",,,0\n");
        }
        cfg.append("60\n1\n1000,2\n09/03/2024,14:05:07.025000\n09/03/2024,14:05:07.025000\nBINARY\n1\n");
        byte[] data = ByteBuffer.allocate(24)
                .order(ByteOrder.LITTLE_ENDIAN)
                .putInt(1)
                .putInt(0)
                .putShort((short) 0x8001)
                .putShort((short) 0)
                .putInt(2)
                .putInt(1000)
                .putShort((short) 0)
                .putShort((short) 1)
                .array();
        Recording read = read(bytes(cfg.toString()), data);
        assertEquals(Bits.of(true, false), read.statuses().get(0).bits());
        assertEquals(Bits.of(true, false), read.statuses().get(15).bits());
        assertEquals(Bits.of(false, true), read.statuses().get(16).bits());
        assertEquals(Samples.of(0.0, 0.001), read.seconds());
    }

    @Test
    void aYearThatIsNoneMeans1991WithTheMonthFirst() {
        String old = CFG.replace(",1999\n", "\n")
                .replace(",600,5,S", "")
                .replace(",7200,120,P", "")
                .replace("1,TRIP,,,0", "1,TRIP,0")
                .replace("ASCII\n1\n", "ASCII\n")
                .replace("09/03/2024", "03/09/95");
        Recording read = read(old, DAT);
        assertEquals(List.of(), read.remarks());
        assertEquals(Revision.C1991, read.revision());
        assertEquals("1995-03-09T14:05:07.025000", read.timing().start().print());
        assertTrue(Double.isNaN(read.analogs().getFirst().toPrimarySi()), "1991 doesn't say the side");
    }

    @Test
    void dayAndMonthInTheOtherOrderAreUnderstoodWhereOnlyOneOrderIsADate() {
        Recording read = read(CFG.replace("09/03/2024", "03/19/2024"), DAT);
        assertEquals("2024-03-19T14:05:07.025000", read.timing().start().print());
        assertTrue(has(read, Message.RECORD_DATE_ORDER));
    }

    @Test
    void timesThatAreNoneAreNotKnownAndStopNothing() {
        Recording read = read(CFG.replace("14:05:07.027000", "11:28:18581309.000"), DAT);
        assertTrue(read.timing().trigger().instant().isEmpty());
        assertTrue(read.triggerSeconds().isEmpty());
        assertTrue(has(read, Message.RECORD_DATE));
        Recording single = read(CFG.replace("14:05:07.027000", " 4:5:7.5"), DAT);
        assertEquals("2024-03-09T04:05:07.500000", single.timing().trigger().print());
        assertTrue(has(single, Message.RECORD_SHORT_FRACTION));
    }

    @Test
    void theDataDecideHowManySamplesThereAre() {
        Recording few = read(CFG.replace("1000,4", "1000,885"), DAT);
        assertEquals(4, few.seconds().size());
        assertTrue(has(few, Message.RECORD_SAMPLE_COUNT));
        Recording cut = read(CFG, DAT.substring(0, DAT.length() - 5));
        assertEquals(3, cut.seconds().size());
        assertTrue(has(cut, Message.RECORD_ROW_CUT), "a value may be cut in the middle");
        byte[] binary = binary(2, 0, 1, 5, 0, 1, -1, 7, 1);
        Recording torn = read(
                CFG.replace("ASCII", "BINARY").replace("1000,4", "1000,2"), Arrays.copyOf(binary, binary.length - 3));
        assertEquals(1, torn.seconds().size());
        assertTrue(has(torn, Message.RECORD_DATA_CUT));
    }

    @Test
    void rateZeroTakesTheTimeStampsWithTheirMultiplier() {
        String cfg = CFG.replace("1\n1000,4", "0\n0,4").replace("ASCII\n1\n", "ASCII\n2.5\n");
        Recording read = read(cfg, "1,100,0,0,0\n2,500,0,0,0\n3,540,0,0,0\n4,2100,0,0,0\n");
        assertEquals(TimeBasis.STAMPS, read.timing().basis());
        for (int i = 0; i < 4; i++) {
            assertEquals(
                    new double[] {0.0, 1e-3, 1.1e-3, 5e-3}[i], read.seconds().at(i), 1e-12);
        }
    }

    @Test
    void severalRatesAreFollowedOneAfterTheOther() {
        Recording read = read(CFG.replace("1\n1000,4", "2\n1000,2\n100,4"), DAT.replaceAll(",[0-9]000,", ",,"));
        assertEquals(0.0, read.seconds().at(0));
        assertEquals(0.001, read.seconds().at(1), 1e-12);
        assertEquals(0.01, read.seconds().at(3) - read.seconds().at(2), 1e-12);
    }

    /** Sixteen bits of microseconds begin anew every 65.536 ms. */
    @Test
    void aCounterThatBeginsAnewIsCountedOn() {
        StringBuilder data = new StringBuilder();
        for (int i = 0; i < 200; i++) {
            data.append(i + 1).append(',').append(i * 1000 % 65_536).append(",0,0,0\n");
        }
        Recording stamped = read(CFG.replace("1\n1000,4", "0\n0,200"), data.toString());
        assertEquals(0.199, stamped.seconds().at(199), 1e-9);
        assertTrue(has(stamped, Message.RECORD_WRAPS));
    }

    @Test
    void aGapThatOnlyTheStampsShowIsKept() {
        StringBuilder data = new StringBuilder();
        for (int i = 0; i < 100; i++) {
            data.append(i + 1)
                    .append(',')
                    .append(i * 1000 + (i >= 50 ? 160_000 : 0))
                    .append(",0,0,0\n");
        }
        Recording read = read(CFG.replace("1000,4", "1000,100"), data.toString());
        assertEquals(TimeBasis.RATES_WITH_GAPS, read.timing().basis());
        assertEquals(0.259, read.seconds().at(99), 1e-9);
        assertTrue(has(read, Message.RECORD_GAP));
    }

    @Test
    void namesInAnotherCodePageAreShownAndSaid() {
        byte[] cyrillic = CFG.replace("Plover Hill", "Подстанция Северная").getBytes(Charset.forName("windows-1251"));
        Recording read = read(cyrillic, bytes(DAT));
        assertEquals("Подстанция Северная", read.station());
        assertEquals("windows-1251", read.origin().codePage());
        assertTrue(has(read, Message.RECORD_CODE_PAGE_GUESSED));
        byte[] umlaut = CFG.replace("Plover Hill", "Grünholz").getBytes(StandardCharsets.ISO_8859_1);
        assertEquals("Grünholz", read(umlaut, bytes(DAT)).station());
        assertEquals(
                List.of(),
                read(bytes(CFG.replace("Plover Hill", "Grünholz")), bytes(DAT)).remarks());
    }

    @Test
    void theHeaderFileNeverStopsARecord() {
        Recording read = RecordReader.read(
                RecordFiles.of(source("a.cfg", bytes(CFG)), source("a.dat", bytes(DAT)))
                        .withHeader(source("a.hdr", new byte[] {(byte) 0x81, (byte) 0xFF, 'o', 'k', 0})),
                ReadOptions.ALL);
        assertTrue(read.header().endsWith("ok"), read.header());
    }

    @Test
    void endMarksBlankLinesAndACommaAtTheEndAreSkipped() {
        Recording read = read(
                CFG + "\u001a\u001a",
                DAT.replace("\n", ",\n\n").replace("4,3000", " 4 , 3000 ") + "\u001a\u001a\u001a");
        assertEquals(4, read.seconds().size());
        assertEquals(Samples.of(2.0, 3.0, 4.0, 5.0), read.analogs().getFirst().values());
    }

    @Test
    void whatCannotBeReadNamesFileLineAndColumn() {
        assertEquals(
                Message.RECORD_COUNTS,
                refusal(CFG.replace("3,2A,1D", "three"), DAT).message());
        Problem wrongCounts = refusal(CFG.replace("3,2A,1D", "5,4A,1D"), DAT);
        assertEquals(Message.RECORD_CHANNEL_LINE, wrongCounts.message());
        assertEquals("a.cfg:5:1", wrongCounts.place().print());
        assertEquals(
                Message.RECORD_LINES_MISSING,
                refusal("S,D,1999\n9,9A,0D\n", DAT).message());
        assertEquals(Message.RECORD_DATA_EMPTY, refusal(CFG, "").message());
        assertEquals(Message.RECORD_NOT_A_CFG, refusal("", DAT).message());
        VarwrightException channel = assertThrows(
                VarwrightException.class,
                () -> RecordReader.read(
                        RecordFiles.of(source("a.cfg", bytes(CFG)), source("a.dat", bytes(DAT))),
                        ReadOptions.ALL.channels(List.of("IB"))));
        assertTrue(String.valueOf(channel.getMessage()).contains("1 \"IA\", 2 \"VA\""), channel.getMessage());
    }

    @Test
    void aWordInAValueIsMissingAndHasItsPlace() {
        Recording read = read(CFG, DAT.replace("3,2000,6", "3,2000,six"));
        assertTrue(Double.isNaN(read.analogs().getFirst().values().at(2)));
        Problem remark = read.remarks().stream()
                .filter(r -> r.message() == Message.RECORD_VALUE)
                .findFirst()
                .orElseThrow();
        assertEquals("a.dat:3:8", remark.place().print());
    }

    @Test
    void aCombinedFileMayHoldASeparatorInItsSamples() {
        byte[] samples = binary(1, 0, 0x2D2D, 0x202D, 0);
        String text = "--- file type: CFG ---\n"
                + CFG.replace("ASCII", "BINARY").replace("1000,4", "1000,1").replace(",1999", ",2013") + "0,0\n0,0\n"
                + "--- file type: INF ---\n--- file type: HDR ---\nwhat the relay said\n--- file type: DAT BINARY: "
                + samples.length + " ---\n";
        byte[] head = bytes(text);
        byte[] file = Arrays.copyOf(head, head.length + samples.length);
        System.arraycopy(samples, 0, file, head.length, samples.length);
        Recording read = RecordReader.readCombined(source("a.cff", file), ReadOptions.ALL);
        assertEquals(0x2D2D * 0.5 + 1.0, read.analogs().getFirst().values().at(0));
        assertEquals("what the relay said", read.header());
        assertEquals("clock locked", read.timing().clock().orElseThrow().qualityText());
        assertFalse(has(read, Message.RECORD_CFF_SEPARATOR));
    }

    private static Recording read(String configuration, String data) {
        return read(bytes(configuration), bytes(data));
    }

    private static Recording read(String configuration, byte[] data) {
        return read(bytes(configuration), data);
    }

    private static Recording read(byte[] configuration, byte[] data) {
        return RecordReader.read(
                RecordFiles.of(source("a.cfg", configuration), source("a.dat", data)), ReadOptions.ALL);
    }

    private static Problem refusal(String configuration, String data) {
        return assertThrows(VarwrightException.class, () -> read(configuration, data))
                .problems()
                .getFirst();
    }

    private static boolean has(Recording recording, Message message) {
        return recording.remarks().stream().anyMatch(r -> r.message() == message);
    }

    /** Samples at 1 kHz of two values and a word of states each: {@code stamp, value, value, states} one after the other. */
    private static byte[] binary(int samples, int... numbers) {
        ByteBuffer buffer = ByteBuffer.allocate(14 * samples).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < samples; i++) {
            buffer.putInt(i + 1).putInt(numbers[4 * i] * 1000);
            for (int k = 1; k < 4; k++) {
                buffer.putShort((short) numbers[4 * i + k]);
            }
        }
        return buffer.array();
    }

    private static Source source(String name, byte[] bytes) {
        return Source.of(name, Bytes.of(bytes));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
