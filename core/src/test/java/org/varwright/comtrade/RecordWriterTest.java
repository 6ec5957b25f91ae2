package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** The writer against lines and bytes made by hand from the form of the standard. */
class RecordWriterTest {
    private static final Instant START = new Instant(2024, 3, 9, 14, 5, 7, 25_000_000);

    /** Four samples at 1 kHz: a current with one value missing, a voltage, two states. */
    private static final Recording FOUR = new RecordDraft("Plover Hill", "REC 1, bay 2", 60.0, 1000.0, START)
            .analog("IA", "A", "A", new Ratio(Ratio.Side.SECONDARY, 600.0, 5.0), 0.0, 1.5, Double.NaN, -1.5)
            .analog("VA", "A", "kV", Ratio.UNKNOWN, 8.5, 4.0, 2.0, -8.5)
            .status("CLOSED", "A", true, true, false, true)
            .status("TRIP", "", false, false, true, false)
            .triggered(0.002)
            .build();

    @Test
    void theConfigurationOf1999HasItsLines() {
        assertEquals("""
                Plover Hill,REC 1  bay 2,1999
                4,2A,2D
                1,IA,A,,A,4.577777E-5,0,0,-32767,32767,600,5,S
                2,VA,A,,kV,2.594074E-4,0,0,-32767,32767,1,1,P
                1,CLOSED,A,,0
                2,TRIP,,,0
                60
                1
                1000,4
                09/03/2024,14:05:07.025000
                09/03/2024,14:05:07.027000
                BINARY
                1
                """, configuration(Revision.C1999, DataFormat.BINARY));
    }

    @Test
    void theConfigurationOf1991HasNoYearNoRatioAndTheMonthFirst() {
        assertEquals("""
                Plover Hill,REC 1  bay 2
                4,2A,2D
                1,IA,A,,A,1.500031E-5,0,0,-99998,99998
                2,VA,A,,kV,8.500171E-5,0,0,-99998,99998
                1,CLOSED,0
                2,TRIP,0
                60
                1
                1000,4
                03/09/24,14:05:07.025000
                03/09/24,14:05:07.027000
                ASCII
                """, configuration(Revision.C1991, DataFormat.ASCII));
    }

    @Test
    void theConfigurationOf2013SaysThatItsClockIsNotKnown() {
        String text = configuration(Revision.C2013, DataFormat.FLOAT32);
        assertEquals("FLOAT32\n1\n0,x\nF,3\n", text.substring(text.indexOf("FLOAT32")));
    }

    @Test
    void missingValuesAreMarkedAsTheRevisionMarksThem() {
        assertEquals("3,2000,999999,23529,0,1", row(Revision.C1991));
        assertEquals("3,2000,99999,23529,0,1", row(Revision.C1999));
        assertEquals("3,2000,,23529,0,1", row(Revision.C2013));
    }

    /** Sample 3: number, stamp, missing, 2 kV of 8.5 kV, second state alone; lowest byte first. */
    @Test
    void binaryDataHaveTheWidthsOfTheStandard() {
        byte[] short16 =
                RecordWriter.write(FOUR, Revision.C1999, DataFormat.BINARY).data();
        assertEquals(4 * 14, short16.length);
        assertArrayEquals(
                bytes(14)
                        .putInt(3)
                        .putInt(2000)
                        .putShort((short) 0x8000)
                        .putShort((short) 7710)
                        .putShort((short) 2)
                        .array(),
                Arrays.copyOfRange(short16, 28, 42));
        byte[] int32 =
                RecordWriter.write(FOUR, Revision.C2013, DataFormat.BINARY32).data();
        assertEquals(4 * 18, int32.length);
        byte[] float32 =
                RecordWriter.write(FOUR, Revision.C2013, DataFormat.FLOAT32).data();
        assertArrayEquals(
                bytes(18)
                        .putInt(3)
                        .putInt(2000)
                        .putFloat(Float.NaN)
                        .putFloat(2.0f)
                        .putShort((short) 2)
                        .array(),
                Arrays.copyOfRange(float32, 36, 54));
    }

    @Test
    void theCombinedFileNamesItsPartsAndCountsTheBytesOfBinaryData() {
        String text = new String(
                RecordWriter.write(FOUR, Revision.C2013, DataFormat.BINARY).combined(), StandardCharsets.ISO_8859_1);
        assertEquals(0, text.indexOf("--- file type: CFG ---\r\nPlover Hill,"));
        String parts = "\r\n--- file type: INF ---\r\n--- file type: HDR ---\r\n--- file type: DAT BINARY: 56 ---\r\n";
        assertEquals(56, text.length() - text.indexOf(parts) - parts.length());
    }

    @Test
    void olderRevisionsHaveNoThirtyTwoBitFormats() {
        assertThrows(
                IllegalArgumentException.class, () -> RecordWriter.write(FOUR, Revision.C1999, DataFormat.FLOAT32));
    }

    /** At 4800 samples a second a step is 208 1/3 µs: 2013 writes nanoseconds, and nine digits of the second to say so. */
    @Test
    void stepsThatAreNoWholeMicrosecondsAreWrittenInNanosecondsIn2013() {
        Recording recording = new RecordDraft("S", "D", 60.0, 4800.0, START)
                .analog("I", "", "A", Ratio.UNKNOWN, 0.0, 0.5, 1.0)
                .build();
        WrittenRecord written = RecordWriter.write(recording, Revision.C2013, DataFormat.ASCII);
        assertEquals(
                "2,208333,49999\r\n3,416667,99998\r\n",
                new String(written.data(), StandardCharsets.US_ASCII).substring("1,0,0\r\n".length()));
        assertEquals(
                true,
                new String(written.configuration(), StandardCharsets.US_ASCII)
                        .contains("\r\n09/03/2024,14:05:07.025000000\r\n"));
    }

    private static ByteBuffer bytes(int count) {
        return ByteBuffer.allocate(count).order(ByteOrder.LITTLE_ENDIAN);
    }

    private static String configuration(Revision revision, DataFormat format) {
        return new String(RecordWriter.write(FOUR, revision, format).configuration(), StandardCharsets.UTF_8)
                .replace("\r\n", "\n");
    }

    private static String row(Revision revision) {
        byte[] data = RecordWriter.write(FOUR, revision, DataFormat.ASCII).data();
        return new String(data, StandardCharsets.US_ASCII).split("\r\n", -1)[2];
    }
}
