package org.varwright.comtrade;

/**
 * Writes recordings in every revision and data format of C37.111, exactly by the standard: to export simulated events and to test readers.
 *
 * <p><b>Accuracy.</b> A channel keeps its own scale where that gives back every value; else the largest magnitude takes the whole range of the format and the
 * rest is rounded to it: half of 1/32767 of the largest in {@code BINARY}, of 1/99998 in {@code ASCII}, of 1/2147483647 in {@code BINARY32}; {@code FLOAT32}
 * rounds every value to 24 bits. Times are kept to half a microsecond, in 2013 to half a nanosecond where the record is shorter than 4 seconds.
 *
 * <p><b>Not checked.</b> The standard's limits for the length of names.
 */
public final class RecordWriter {
    private RecordWriter() {}

    /**
     * The files of a recording.
     *
     * @throws IllegalArgumentException where the revision doesn't know the format ({@code BINARY32} and {@code FLOAT32} came with 2013)
     */
    public static WrittenRecord write(Recording recording, Revision revision, DataFormat format) {
        if (revision != Revision.C2013 && format.valueBytes() == 4) {
            throw new IllegalArgumentException(revision.standard() + " has no " + format);
        }
        Stamps stamps = Stamps.of(recording, revision);
        DataWriter data = new DataWriter(recording, revision, format, stamps);
        return new WrittenRecord(
                ConfigurationWriter.write(recording, revision, format, stamps, data.scales()),
                data.write(),
                format,
                recording.header(),
                recording.information());
    }
}
