package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Text data larger than any block that is read of them, and lines longer than a block: blocks don't show. Bytes come one or 4093 at a time, as from a slow disk. */
class TextBlocksTest {
    private static Recording read(String configuration, String data) {
        return RecordReader.read(
                RecordFiles.of(
                        PlainRecord.source("a.cfg", PlainRecord.bytes(configuration)),
                        Source.of("a.dat", new SlowBytes(PlainRecord.bytes(data), 7))),
                ReadOptions.ALL);
    }

    /** 6000 samples take some 170 kB. */
    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r", "  \r\n"})
    void manyLines(String end) {
        StringBuilder data = new StringBuilder();
        for (int i = 0; i < 6000; i++) {
            data.append(i % 5 == 0 ? " " : "")
                    .append(i + 1)
                    .append(',')
                    .append(1000 * i)
                    .append(',')
                    .append(2 * i);
            data.append(',').append(-3 * i).append(',').append(i % 2).append(end);
        }
        Recording read = read(PlainRecord.CFG.replace("1000,4", "1000,6000"), data.toString());
        assertEquals(List.of(), PlainRecord.remarks(read));
        assertEquals(6000, read.seconds().size());
        for (int i = 0; i < 6000; i++) {
            assertEquals(0.5 * 2 * i + 1.0, read.analogs().get(0).values().at(i), "sample " + i);
            assertEquals(0.001 * -3 * i, read.analogs().get(1).values().at(i), 1e-9, "sample " + i);
            assertEquals(i % 2 == 1, read.statuses().getFirst().bits().at(i), "sample " + i);
        }
    }

    /** 12 000 channels are a line of more than 64 kB. */
    @Test
    void longLines() {
        StringBuilder cfg = new StringBuilder("S,D,1999\n12000,12000A,0D\n");
        for (int c = 1; c <= 12_000; c++) {
            cfg.append(c).append(",I").append(c).append(",,,A,1,0,0,-99999,99998,1,2,P\n");
        }
        cfg.append("60\n1\n1000,3\n09/03/2024,14:05:07.025000\n09/03/2024,14:05:07.025000\nASCII\n1\n");
        StringBuilder data = new StringBuilder();
        for (int i = 0; i < 3; i++) {
            data.append(i + 1).append(',').append(1000 * i);
            for (int c = 0; c < 12_000; c++) {
                data.append(',').append(10_000 + c + i);
            }
            data.append("\r\n");
        }
        Recording read = read(cfg.toString(), data.toString());
        assertEquals(3, read.seconds().size());
        for (int i = 0; i < 3; i++) {
            for (int c : new int[] {0, 6000, 11_999}) {
                assertEquals(10_000.0 + c + i, read.analogs().get(c).values().at(i), i + " " + c);
            }
        }
    }

    /** A line far longer than its fields can be is no text: it is refused with its place, before it takes memory. */
    @Test
    void aLineWithoutEndIsRefused() {
        String line = "1,0,2,8500,0\n2,1000," + "4".repeat(200_000);
        assertEquals("RECORD_ROW_TOO_LONG a.dat:2:1", PlainRecord.refusal(PlainRecord.CFG, PlainRecord.bytes(line)));
    }
}
