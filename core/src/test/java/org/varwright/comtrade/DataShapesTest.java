package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.varwright.comtrade.PlainRecord.CFG;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** How data are told and opened: by what the configuration says, unless the bytes prove it wrong. Numbers by hand from a and b: 0.5·x + 1 A, 0.001·x kV. */
class DataShapesTest {
    private static final String BINARY = CFG.replace("ASCII", "BINARY").replace("1000,4", "1000,5");

    /** Five samples; the first value is 2, 4, 6 …, the second −1000, −2000 …, the state 0, 0, 1, 1, 1. */
    private static byte[] samples(DataFormat format, int padding) {
        int row = 8 + 2 * format.valueBytes() + 2 + padding;
        ByteBuffer data = ByteBuffer.allocate(5 * row).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < 5; i++) {
            data.putInt(i + 1).putInt(1000 * i);
            for (int value : new int[] {2 * (i + 1), -1000 * (i + 1)}) {
                switch (format) {
                    case BINARY -> data.putShort((short) value);
                    case BINARY32 -> data.putInt(value);
                    case FLOAT32 -> data.putFloat(value);
                    case ASCII -> throw new IllegalArgumentException();
                }
            }
            data.putShort((short) (i >= 2 ? 1 : 0));
            data.put(new byte[padding]);
        }
        return data.array();
    }

    private static void isRead(Recording read, DataFormat format, String... remarks) {
        assertEquals(List.of(remarks), PlainRecord.remarks(read));
        assertEquals(format, read.origin().format());
        assertEquals(Samples.of(2.0, 3.0, 4.0, 5.0, 6.0), read.analogs().get(0).values());
        assertEquals(
                Samples.of(-1.0, -2.0, -3.0, -4.0, -5.0), read.analogs().get(1).values());
        assertEquals(
                Bits.of(false, false, true, true, true),
                read.statuses().getFirst().bits());
    }

    @Test
    void everyFormatByItsName() {
        for (DataFormat format : List.of(DataFormat.BINARY, DataFormat.BINARY32, DataFormat.FLOAT32)) {
            isRead(PlainRecord.read(BINARY.replace("BINARY", format.name()), samples(format, 0)), format);
            isRead(
                    PlainRecord.read(
                            BINARY.replace("BINARY", " " + format.name().toLowerCase(java.util.Locale.ROOT)),
                            samples(format, 0)),
                    format);
        }
    }

    /** Numbers that count up by one at the length of a format prove it; floats can't be told from whole numbers and are never guessed. */
    @Test
    void aFormatThatIsNotSaidIsToldFromTheNumbers() {
        String unsaid = BINARY.replace("BINARY", "?");
        isRead(PlainRecord.read(unsaid, samples(DataFormat.BINARY, 0)), DataFormat.BINARY, "RECORD_FORMAT a.cfg:11:1");
        isRead(
                PlainRecord.read(unsaid, samples(DataFormat.BINARY32, 0)),
                DataFormat.BINARY32,
                "RECORD_FORMAT a.cfg:11:1");
        byte[] broken = samples(DataFormat.BINARY, 0);
        broken[14] = 9;
        assertEquals("RECORD_DATA_FORMAT a.dat", PlainRecord.refusal(unsaid, broken));
        assertEquals(
                "RECORD_DATA_FORMAT a.dat",
                PlainRecord.refusal(unsaid, Arrays.copyOf(samples(DataFormat.BINARY, 0), 20)));
    }

    @Test
    void dataThatAreNotWhatIsSaid() {
        isRead(
                PlainRecord.read(BINARY.replace("BINARY", "ASCII"), samples(DataFormat.BINARY, 0)),
                DataFormat.BINARY,
                "RECORD_DATA_IS_BINARY a.dat");
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 5; i++) {
            text.append(i + 1)
                    .append(',')
                    .append(1000 * i)
                    .append(',')
                    .append(2 * (i + 1))
                    .append(',');
            text.append(-1000 * (i + 1)).append(',').append(i >= 2 ? 1 : 0).append('\n');
        }
        isRead(PlainRecord.read(BINARY, text.toString()), DataFormat.ASCII, "RECORD_DATA_IS_TEXT a.dat");
    }

    /** Some recorders pad a sample: a length that the number of samples gives and the numbers prove. */
    @Test
    void samplesThatAreLongerThanTheStandardsAreProvenByTheirNumbers() {
        isRead(PlainRecord.read(BINARY, samples(DataFormat.BINARY, 2)), DataFormat.BINARY, "RECORD_ROW_LENGTH a.dat");
        isRead(
                PlainRecord.read(BINARY.replace("BINARY", "BINARY32"), samples(DataFormat.BINARY32, 6)),
                DataFormat.BINARY32,
                "RECORD_ROW_LENGTH a.dat");
        // more than twice as long is no padding
        Recording twice = PlainRecord.read(BINARY, samples(DataFormat.BINARY, 15));
        assertEquals(10, twice.seconds().size(), "145 bytes of 14");
    }

    /** Without the word of states a sample is shorter than it must be: the channels can't be told apart from states. */
    @Test
    void samplesThatAreShorterThanTheStandardsAreRefused() {
        ByteBuffer data = ByteBuffer.allocate(5 * 12).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < 5; i++) {
            data.putInt(i + 1).putInt(1000 * i).putShort((short) 1).putShort((short) 2);
        }
        assertEquals("RECORD_ROW_SHORT a.dat", PlainRecord.refusal(BINARY, data.array()));
        assertEquals(
                "RECORD_DATA_SHORT a.dat",
                PlainRecord.refusal(BINARY, Arrays.copyOf(samples(DataFormat.BINARY, 0), 13)));
        assertEquals("RECORD_DATA_EMPTY a.dat", PlainRecord.refusal(BINARY, new byte[0]));
    }

    @Test
    void whatFollowsTheLastSample() {
        byte[] plain = samples(DataFormat.BINARY, 0);
        byte[] marked = Arrays.copyOf(plain, plain.length + 2);
        Arrays.fill(marked, plain.length, marked.length, (byte) 0x1A);
        isRead(PlainRecord.read(BINARY, marked), DataFormat.BINARY, "RECORD_END_MARKS a.dat");
        isRead(
                PlainRecord.read(BINARY, Arrays.copyOf(plain, plain.length + 3)),
                DataFormat.BINARY,
                "RECORD_DATA_CUT a.dat");
    }

    /** 0x8000, 0x80000000, a float that is no number, infinite or of the largest magnitude: missing. One step beside each is a value. */
    @Test
    void marksOfMissingValues() {
        assertEquals(
                Samples.of(Double.NaN, 0.5 * -32767 + 1.0, 0.5 * 32767 + 1.0),
                values(DataFormat.BINARY, -32768, -32767, 32767));
        assertEquals(
                Samples.of(Double.NaN, 0.5 * (Integer.MIN_VALUE + 1.0) + 1.0, 0.5 * Integer.MAX_VALUE + 1.0),
                values(DataFormat.BINARY32, Integer.MIN_VALUE, Integer.MIN_VALUE + 1, Integer.MAX_VALUE));
        float below = Math.nextDown(Float.MAX_VALUE);
        assertEquals(
                Samples.of(Double.NaN, Double.NaN, Double.NaN, 0.5 * below + 1.0, 0.5 * 1.5f + 1.0),
                values(
                        DataFormat.FLOAT32,
                        Float.floatToIntBits(Float.NaN),
                        Float.floatToIntBits(-Float.MAX_VALUE),
                        Float.floatToIntBits(Float.POSITIVE_INFINITY),
                        Float.floatToIntBits(below),
                        Float.floatToIntBits(1.5f)));
    }

    private static Samples values(DataFormat format, int... raw) {
        ByteBuffer data =
                ByteBuffer.allocate(raw.length * (10 + 2 * format.valueBytes())).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < raw.length; i++) {
            data.putInt(i + 1).putInt(1000 * i);
            for (int value : new int[] {raw[i], 0}) {
                if (format == DataFormat.BINARY) {
                    data.putShort((short) value);
                } else {
                    data.putInt(value);
                }
            }
            data.putShort((short) 0);
        }
        return PlainRecord.read(
                        BINARY.replace("BINARY", format.name()).replace("1000,5", "1000," + raw.length), data.array())
                .analogs()
                .getFirst()
                .values();
    }

    /** More samples than a buffer holds, and samples larger than it; 1 to 7 bytes come at a time, as from a slow disk. */
    @Test
    void blocksDontShow() {
        for (int analogs : new int[] {1, 9_000}) {
            int samples = analogs == 1 ? 9_000 : 40;
            StringBuilder cfg = new StringBuilder("S,D,1999\n" + (analogs + 17) + "," + analogs + "A,17D\n");
            for (int c = 1; c <= analogs; c++) {
                cfg.append(c).append(",I").append(c).append(",,,A,1,0,0,-9,9,1,2,P\n");
            }
            for (int c = 1; c <= 17; c++) {
                cfg.append(c).append(",S").append(c).append(",,,0\n");
            }
            cfg.append("60\n1\n1000,").append(samples).append("\n09/03/2024,14:05:07.025000\n");
            cfg.append("09/03/2024,14:05:07.025000\nBINARY\n1\n");
            ByteBuffer data =
                    ByteBuffer.allocate(samples * (8 + 2 * analogs + 4)).order(ByteOrder.LITTLE_ENDIAN);
            for (int i = 0; i < samples; i++) {
                data.putInt(i + 1).putInt(1000 * i);
                for (int c = 0; c < analogs; c++) {
                    data.putShort((short) (i + 3 * c));
                }
                data.putShort((short) i).putShort((short) (i % 2));
            }
            Recording read = RecordReader.read(
                    RecordFiles.of(
                            PlainRecord.source("a.cfg", PlainRecord.bytes(cfg.toString())),
                            Source.of("a.dat", new SlowBytes(data.array(), 3))),
                    ReadOptions.ALL);
            assertEquals(List.of(), PlainRecord.remarks(read));
            assertEquals(samples, read.seconds().size());
            for (int i = 0; i < samples; i++) {
                for (int c : new int[] {0, analogs - 1}) {
                    assertEquals(
                            (short) (i + 3 * c), read.analogs().get(c).values().at(i), "sample " + i + " channel " + c);
                }
                for (int s = 0; s < 17; s++) {
                    boolean due = s < 16 ? (i >> s & 1) == 1 : i % 2 == 1;
                    assertEquals(due, read.statuses().get(s).bits().at(i), "sample " + i + " state " + s);
                }
            }
        }
    }
}
