package org.varwright.comtrade;

import java.util.Optional;

/**
 * The files of one record.
 *
 * @param configuration {@code .cfg}
 * @param data {@code .dat}
 * @param header {@code .hdr}
 * @param information {@code .inf}
 * @param dataFormat as a combined file states it
 */
public record RecordFiles(
        Source configuration,
        Source data,
        Optional<Source> header,
        Optional<Source> information,
        Optional<DataFormat> dataFormat) {
    public static RecordFiles of(Source configuration, Source data) {
        return new RecordFiles(configuration, data, Optional.empty(), Optional.empty(), Optional.empty());
    }

    public RecordFiles withHeader(Source source) {
        return new RecordFiles(configuration, data, Optional.of(source), information, dataFormat);
    }

    public RecordFiles withInformation(Source source) {
        return new RecordFiles(configuration, data, header, Optional.of(source), dataFormat);
    }
}
