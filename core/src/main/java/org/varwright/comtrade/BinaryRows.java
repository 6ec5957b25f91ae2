package org.varwright.comtrade;

/** Samples of {@code BINARY}, {@code BINARY32} and {@code FLOAT32}: little-endian, of one length, without anything between them. */
final class BinaryRows implements Rows {
    /** Bytes of the sample's number and its time stamp. */
    static final int HEAD_BYTES = 8;

    private static final int NUMBER_BYTES = 4;
    private static final int WORD_BITS = 16;
    private static final int WORDS_IN_LONG = 4;
    private static final int BUFFER_BYTES = 1 << 16;
    private static final int INT16_MISSING = -0x8000;
    private static final long STAMP_MISSING = 0xFFFFFFFFL;

    private final Bytes bytes;
    private final DataFormat format;
    private final int rowBytes;
    private final int words;
    private final long samples;
    private final byte[] buffer;
    private long done;
    private int held;
    private int at;

    /**
     * Samples of binary data.
     *
     * @param bytes the data alone
     * @param format other than ASCII
     * @param rowBytes bytes of one sample
     * @param statuses channels
     */
    BinaryRows(Bytes bytes, DataFormat format, int rowBytes, int statuses) {
        this.bytes = bytes;
        this.format = format;
        this.rowBytes = rowBytes;
        this.words = words(statuses);
        this.samples = bytes.size() / rowBytes;
        this.buffer = new byte[Math.max(1, BUFFER_BYTES / rowBytes) * rowBytes];
        this.at = 0;
    }

    /** Bytes of one sample by the standard. */
    static long rowBytes(DataFormat format, int analogs, int statuses) {
        return HEAD_BYTES + (long) format.valueBytes() * analogs + 2L * words(statuses);
    }

    private static int words(int statuses) {
        return (statuses + WORD_BITS - 1) / WORD_BITS;
    }

    @Override
    public void rewind() {
        done = 0;
        held = 0;
        at = 0;
    }

    @Override
    public boolean next() {
        if (done == samples) {
            return false;
        }
        at += done == 0 ? 0 : rowBytes;
        if (done == 0 || at >= held) {
            fill();
            if (held < rowBytes) {
                return false;
            }
        }
        done++;
        return true;
    }

    /** Whole samples from the next one on. */
    private void fill() {
        long from = done * rowBytes;
        int wanted = (int) Math.min(buffer.length, (samples - done) * rowBytes);
        held = 0;
        at = 0;
        while (held < wanted) {
            int read = bytes.read(from + held, buffer, held, wanted - held);
            if (read <= 0) {
                held -= held % rowBytes;
                return;
            }
            held += read;
        }
    }

    @Override
    public double number() {
        return int32(at) & 0xFFFFFFFFL;
    }

    @Override
    public double stamp() {
        long stamp = int32(at + NUMBER_BYTES) & 0xFFFFFFFFL;
        return stamp == STAMP_MISSING ? Double.NaN : stamp;
    }

    @Override
    public void read(double[] numbers, long[] states) {
        int from = at + HEAD_BYTES;
        switch (format) {
            case BINARY -> {
                for (int i = 0; i < numbers.length; i++) {
                    int value = (short) ((buffer[from + 2 * i] & 0xFF) | (buffer[from + 2 * i + 1] << 8));
                    numbers[i] = value == INT16_MISSING ? Double.NaN : value;
                }
                from += 2 * numbers.length;
            }
            case BINARY32 -> {
                for (int i = 0; i < numbers.length; i++) {
                    int value = int32(from + 4 * i);
                    numbers[i] = value == Integer.MIN_VALUE ? Double.NaN : value;
                }
                from += 4 * numbers.length;
            }
            case FLOAT32 -> {
                for (int i = 0; i < numbers.length; i++) {
                    float value = Float.intBitsToFloat(int32(from + 4 * i));
                    // the largest magnitude is taken as a mark: common practice, no source
                    numbers[i] = Math.abs(value) < Float.MAX_VALUE ? value : Double.NaN;
                }
                from += 4 * numbers.length;
            }
            case ASCII -> throw new IllegalStateException("text among binary samples");
        }
        for (int i = 0; i < words; i++) {
            long word = (buffer[from + 2 * i] & 0xFFL) | ((buffer[from + 2 * i + 1] & 0xFFL) << 8);
            states[i / WORDS_IN_LONG] |= word << (WORD_BITS * (i % WORDS_IN_LONG));
        }
    }

    private int int32(int from) {
        return (buffer[from] & 0xFF)
                | ((buffer[from + 1] & 0xFF) << 8)
                | ((buffer[from + 2] & 0xFF) << 16)
                | (buffer[from + 3] << 24);
    }
}
