package org.varwright.comtrade;

import java.util.Optional;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

/** Finds out how the samples are written and opens them: what the configuration says, unless the data prove it wrong. */
final class DataReader {
    private static final int SNIFFED = 512;

    /** So many numbers in a row that count up by one prove a length of samples that the configuration doesn't give. */
    private static final int PROOF = 4;

    private final Configuration configuration;
    private final Source source;
    private final Remarks remarks;

    DataReader(Configuration configuration, Source source, Remarks remarks) {
        this.configuration = configuration;
        this.source = source;
        this.remarks = remarks;
    }

    /** Rows with their format. */
    record Opened(Rows rows, DataFormat format) {}

    /**
     * Opens the data.
     *
     * @param combined format that a combined file states
     * @throws VarwrightException {@code RECORD_DATA_EMPTY}, {@code RECORD_DATA_FORMAT}, {@code RECORD_DATA_SHORT}
     */
    Opened open(Optional<DataFormat> combined) {
        if (source.bytes().size() == 0) {
            throw new VarwrightException(Message.RECORD_DATA_EMPTY, source.whole());
        }
        Optional<DataFormat> stated = combined.or(configuration::format);
        if (combined.isPresent() && configuration.format().isPresent() && !combined.equals(configuration.format())) {
            remarks.add(
                    Message.RECORD_FORMATS_DIFFER,
                    source.whole(),
                    combined.get().name(),
                    configuration.format().get().name());
        }
        boolean text = isText();
        DataFormat format = stated.orElseGet(() -> text ? DataFormat.ASCII : DataFormat.BINARY);
        if (stated.isEmpty() && !text) {
            format = binaryFormat();
        }
        if (text && format != DataFormat.ASCII) {
            remarks.add(Message.RECORD_DATA_IS_TEXT, source.whole(), format.name());
            format = DataFormat.ASCII;
        } else if (!text && format == DataFormat.ASCII) {
            format = binaryFormat();
            remarks.add(Message.RECORD_DATA_IS_BINARY, source.whole(), format.name());
        }
        return format == DataFormat.ASCII
                ? new Opened(new AsciiRows(source, configuration, remarks), format)
                : new Opened(binary(format), format);
    }

    /** Whether the first bytes are those of numbers, commas and line ends, with at least one comma. */
    private boolean isText() {
        byte[] head = source.bytes().part(0, SNIFFED).all();
        boolean comma = false;
        int control = 0;
        for (byte b : head) {
            int c = b & 0xFF;
            comma |= c == ',';
            control += (c < 0x09 || (c > 0x0D && c < 0x20 && c != 0x1A) || c >= 0x7F) ? 1 : 0;
        }
        return comma && control == 0;
    }

    /** The binary format whose samples count up, where no file says which. */
    private DataFormat binaryFormat() {
        for (DataFormat format : new DataFormat[] {DataFormat.BINARY, DataFormat.BINARY32}) {
            long length = rowBytes(format);
            if (length <= Integer.MAX_VALUE / 2 && countsUp((int) length)) {
                // whole numbers and floats of 32 bits look alike: the edition knows floats only by their name
                return format;
            }
        }
        throw new VarwrightException(Message.RECORD_DATA_FORMAT, source.whole());
    }

    private long rowBytes(DataFormat format) {
        return BinaryRows.rowBytes(
                format, configuration.analogs().size(), configuration.statuses().size());
    }

    private Rows binary(DataFormat format) {
        long size = source.bytes().size();
        long standard = rowBytes(format);
        long stated = configuration.rates().isEmpty()
                ? 0L
                : configuration.rates().get(configuration.rates().size() - 1).lastSample();
        long length = standard;
        boolean fits = size % standard == 0 && (stated == 0L || size / standard == stated);
        if (!fits && stated > 1L && size % stated == 0) {
            long other = size / stated;
            long least = BinaryRows.HEAD_BYTES
                    + (long) format.valueBytes() * configuration.analogs().size();
            if (other != standard
                    && other >= least
                    && other <= 2 * standard
                    && countsUp((int) other)
                    && !countsUp((int) standard)) {
                remarks.add(Message.RECORD_ROW_LENGTH, source.whole(), Long.toString(other), Long.toString(standard));
                length = other;
            }
        }
        if (length < standard) {
            throw new VarwrightException(
                    Message.RECORD_ROW_SHORT, source.whole(), Long.toString(length), Long.toString(standard));
        }
        if (size < length) {
            throw new VarwrightException(
                    Message.RECORD_DATA_SHORT, source.whole(), Long.toString(size), Long.toString(length));
        }
        if (size % length != 0) {
            remarks.add(
                    isEndMarks(size - size % length) ? Message.RECORD_END_MARKS : Message.RECORD_DATA_CUT,
                    source.whole(),
                    Long.toString(size % length),
                    Long.toString(size / length));
        }
        return new BinaryRows(
                source.bytes(), format, (int) length, configuration.statuses().size());
    }

    private boolean isEndMarks(long from) {
        byte[] rest = source.bytes().part(from, SNIFFED).all();
        for (byte b : rest) {
            if (b != 0x1A) {
                return false;
            }
        }
        return true;
    }

    /** Whether the numbers of the first samples of a length count up by one. */
    private boolean countsUp(int length) {
        long rows = Math.min(PROOF, source.bytes().size() / length);
        if (rows < 2) {
            return false;
        }
        long before = -1L;
        for (int i = 0; i < rows; i++) {
            byte[] head = source.bytes().part((long) i * length, 4).all();
            long number = (head[0] & 0xFFL)
                    | ((head[1] & 0xFFL) << 8)
                    | ((head[2] & 0xFFL) << 16)
                    | ((head[3] & 0xFFL) << 24);
            if (i > 0 && number != before + 1) {
                return false;
            }
            before = number;
        }
        return true;
    }
}
