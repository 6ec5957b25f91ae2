package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.varwright.comtrade.PlainRecord.CFG;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.varwright.problem.Message;

/** Times of samples by rates and stamps, each worked out by hand in milliseconds. A time that is wrong makes every angle and every delay wrong. */
class TimeLineTest {
    /** A record by its lines of rates (number and lines) and its stamps in the record's units; "-" where one is missing. */
    private static Recording read(String rates, String multiplier, String... stamps) {
        StringBuilder data = new StringBuilder();
        for (int i = 0; i < stamps.length; i++) {
            data.append(i + 1).append(',').append(stamps[i].replace("-", "")).append(",0,0,0\n");
        }
        return PlainRecord.read(
                CFG.replace("1\n1000,4", rates).replace("ASCII\n1\n", "ASCII\n" + multiplier + "\n"), data.toString());
    }

    private static void times(Recording read, double... millis) {
        double[] found =
                Arrays.stream(read.seconds().toArray()).map(s -> s * 1e3).toArray();
        assertArrayEquals(millis, found, 1e-9, Arrays.toString(found));
    }

    @Test
    void aRateAloneGivesTimesWithoutStamps() {
        Recording read = read("1\n1000,4", "1", "-", "-", "-", "-");
        times(read, 0.0, 1.0, 2.0, 3.0);
        assertEquals(TimeBasis.RATES, read.timing().basis());
        assertTrue(read.remarks().isEmpty(), read.remarks().toString());
    }

    /** The sample behind the last one of a rate is taken at the next rate, and so is the step to it. */
    @Test
    void rateByRateWithoutStamps() {
        times(read("2\n1000,3\n100,6", "1", "-", "-", "-", "-", "-", "-"), 0.0, 1.0, 2.0, 12.0, 22.0, 32.0);
        times(read("3\n1000,2\n500,3\n250,5", "1", "-", "-", "-", "-", "-"), 0.0, 1.0, 3.0, 7.0, 11.0);
    }

    /** The standard doesn't say whose rate the step between two rates has: stamps do. */
    @Test
    void stampsSayWhoseTheStepBetweenTwoRatesIs() {
        times(
                read("2\n1000,3\n100,6", "1", "0", "1000", "2000", "3000", "13000", "23000"),
                0.0,
                1.0,
                2.0,
                3.0,
                13.0,
                23.0);
        times(
                read("2\n1000,3\n100,6", "1", "0", "1000", "2000", "12000", "22000", "32000"),
                0.0,
                1.0,
                2.0,
                12.0,
                22.0,
                32.0);
    }

    /** Two and two samples written as counts: 1000 Hz for the first three, 100 Hz for the other three. */
    @Test
    void countsInsteadOfLastSamples() {
        Recording read = read("2\n1000,3\n100,3", "1", "-", "-", "-", "-", "-", "-");
        times(read, 0.0, 1.0, 2.0, 12.0, 22.0, 32.0);
        assertTrue(PlainRecord.has(read, Message.RECORD_RATE_COUNTS));
        Recording falls = read("2\n1000,4\n100,2", "1", "-", "-", "-", "-");
        times(falls, 0.0, 1.0, 2.0, 3.0);
        assertTrue(PlainRecord.has(falls, Message.RECORD_RATE_ORDER));
    }

    @Test
    void samplesBehindTheLastRateGoOnAtIt() {
        times(read("1\n1000,2", "1", "-", "-", "-", "-"), 0.0, 1.0, 2.0, 3.0);
    }

    @Test
    void stampsAloneInTheirUnitsAndMultiplier() {
        times(read("0\n0,4", "1", "0", "400", "900", "1000"), 0.0, 0.4, 0.9, 1.0);
        times(read("0\n0,4", "2.5", "100", "500", "540", "2100"), 0.0, 1.0, 1.1, 5.0);
        times(read("0\n0,4", "1000", "5", "6", "7", "9"), 0.0, 1.0, 2.0, 4.0);
    }

    /** Equal stamps are equal times; a stamp that is missing is counted on by the step before it. */
    @Test
    void stampsThatAreMissingOrEqual() {
        times(read("0\n0,5", "1", "0", "1000", "1000", "2000", "3000"), 0.0, 1.0, 1.0, 2.0, 3.0);
        times(read("0\n0,6", "1", "0", "1000", "-", "-", "4000", "5000"), 0.0, 1.0, 2.0, 3.0, 4.0, 5.0);
        // nothing is known of a step before the first: the samples stand at the last time that is known
        times(read("0\n0,5", "1", "0", "-", "2000", "3000", "4000"), 0.0, 0.0, 2.0, 3.0, 4.0);
        // nor of the time before the first stamp
        times(read("0\n0,4", "1", "-", "1000", "2000", "3000"), 0.0, 0.0, 1.0, 2.0);
        // the step over a hole is no step of one sample
        times(read("0\n0,7", "1", "0", "1000", "-", "3000", "-", "5000", "6000"), 0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0);
        // what was counted on too far is not taken back: time doesn't run backwards
        times(read("0\n0,5", "1", "0", "1000", "-", "1500", "2500"), 0.0, 1.0, 2.0, 2.0, 3.0);
    }

    @Test
    void stampsThatRunBackwardsTakeTheStepBefore() {
        Recording read = read("0\n0,5", "1", "0", "1000", "500", "2500", "3500");
        times(read, 0.0, 1.0, 2.0, 4.0, 5.0);
        assertTrue(PlainRecord.has(read, Message.RECORD_BACKWARDS));
        Recording first = read("0\n0,4", "1", "1000", "500", "2500", "3500");
        times(first, 0.0, 0.0, 2.0, 3.0);
    }

    @Test
    void withoutRatesAndStampsSamplesAreCounted() {
        for (Recording read : new Recording[] {
            read("0\n0,4", "1", "-", "-", "-", "-"),
            read("0\n0,4", "1", "0", "0", "0", "0"),
            read("0\n0,4", "1", "0", "-", "-", "1000")
        }) {
            assertEquals(TimeBasis.NONE, read.timing().basis());
            times(read, 0.0, 1000.0, 2000.0, 3000.0);
            assertTrue(PlainRecord.has(read, Message.RECORD_NO_TIME));
        }
        assertEquals(TimeBasis.STAMPS, read("0\n0,1", "1", "0").timing().basis(), "one sample has its time");
    }

    /** A hole of three samples: the stamps go on 4 ms later. One and a half steps are still none. */
    @Test
    void gapsOfMoreThanHalfAStepAreKept() {
        String[] stamps = new String[40];
        for (int i = 0; i < 40; i++) {
            stamps[i] = Integer.toString(1000 * i + (i >= 20 ? 3000 : 0));
        }
        Recording gap = read("1\n1000,40", "1", stamps);
        assertEquals(TimeBasis.RATES_WITH_GAPS, gap.timing().basis());
        assertEquals(0.019, gap.seconds().at(19), 1e-12);
        assertEquals(0.023, gap.seconds().at(20), 1e-12);
        assertEquals(0.042, gap.seconds().at(39), 1e-12);
        for (int i = 0; i < 40; i++) {
            stamps[i] = Integer.toString(1000 * i + (i >= 20 ? 500 : 0));
        }
        Recording none = read("1\n1000,40", "1", stamps);
        assertEquals(TimeBasis.RATES, none.timing().basis());
        assertEquals(0.039, none.seconds().at(39), 1e-12);
    }

    /** Three gaps are gaps; where one step in five is larger, the stamps mean something else and the rates stand. */
    @Test
    void stampsFullOfHolesAreNoGaps() {
        String[] stamps = new String[100];
        int at = 0;
        for (int i = 0; i < 100; i++) {
            stamps[i] = Integer.toString(at);
            at += i % 5 == 4 ? 3000 : 1000;
        }
        Recording read = read("1\n1000,100", "1", stamps);
        assertEquals(TimeBasis.RATES, read.timing().basis());
        assertEquals(0.099, read.seconds().at(99), 1e-12);
    }

    /** A counter of 32 bits begins anew: 2^32 µs are 71.6 minutes. All bits 1 mean that there is no stamp. */
    @Test
    void aBinaryCounterOf32BitsIsCountedOn() {
        long[] stamps = {0xFFFFFFFFL - 1499L, 0xFFFFFFFFL - 499L, 500L, 0xFFFFFFFFL, 2500L, 3500L};
        ByteBuffer data = ByteBuffer.allocate(6 * 14).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < 6; i++) {
            data.putInt(i + 1)
                    .putInt((int) stamps[i])
                    .putShort((short) 0)
                    .putShort((short) 0)
                    .putShort((short) 0);
        }
        Recording read = PlainRecord.read(CFG.replace("1\n1000,4", "0\n0,6").replace("ASCII", "BINARY"), data.array());
        times(read, 0.0, 1.0, 2.0, 3.0, 4.0, 5.0);
        assertTrue(PlainRecord.has(read, Message.RECORD_WRAPS));
        assertFalse(PlainRecord.has(read, Message.RECORD_BACKWARDS));
    }

    /** Nine digits of the second make the stamps nanoseconds, in 2013 alone (C37.111-2013, critical time information). */
    @Test
    void nanosecondsBelongTo2013() {
        String cfg = PlainRecord.cfg2013().replace("1\n1000,4", "0\n0,4").replace("025000", "025000000");
        String data = "1,0,0,0,0\n2,250,0,0,0\n3,500,0,0,0\n4,1000,0,0,0\n";
        times(PlainRecord.read(cfg, data), 0.0, 0.00025, 0.0005, 0.001);
        String old = CFG.replace("1\n1000,4", "0\n0,4").replace("025000", "025000000");
        times(PlainRecord.read(old, data), 0.0, 0.25, 0.5, 1.0);
    }

    @Test
    void theTriggerIsWhereTheLinesSayIt() {
        assertEquals(
                0.002, PlainRecord.read(CFG, PlainRecord.DAT).triggerSeconds().orElseThrow(), 1e-12);
        // a trigger at the last sample may lie behind it by the rounding of the lines
        assertEquals(
                0.0035,
                PlainRecord.read(CFG.replace("07.027000", "07.028500"), PlainRecord.DAT)
                        .triggerSeconds()
                        .orElseThrow(),
                1e-12);
        // stamps from −2 ms on: the line of the start is the trigger's, 2 ms after the first sample
        Recording negative = PlainRecord.read(
                CFG.replace("07.027000", "07.025000"), "1,-2000,2,0,0\n2,-1000,4,0,0\n3,0,6,0,1\n4,1000,8,0,1\n");
        assertEquals(0.002, negative.triggerSeconds().orElseThrow(), 1e-12);
        assertTrue(PlainRecord.has(negative, Message.RECORD_NEGATIVE_STAMP));
        // over midnight at the turn of the year
        assertEquals(
                0.002,
                PlainRecord.read(
                                CFG.replace("09/03/2024,14:05:07.025000", "31/12/2023,23:59:59.999000")
                                        .replace("09/03/2024,14:05:07.027000", "01/01/2024,00:00:00.001000"),
                                PlainRecord.DAT)
                        .triggerSeconds()
                        .orElseThrow(),
                1e-12);
    }
}
