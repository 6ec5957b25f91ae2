package org.varwright.bench;

import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.varwright.comtrade.Bytes;
import org.varwright.comtrade.DataFormat;
import org.varwright.comtrade.ReadOptions;
import org.varwright.comtrade.RecordFiles;
import org.varwright.comtrade.RecordReader;
import org.varwright.comtrade.Recording;
import org.varwright.comtrade.Revision;
import org.varwright.comtrade.Source;
import org.varwright.comtrade.WrittenRecord;

/** A record of 16 analog and 32 status channels, 20 000 samples, decoded from memory. */
@State(Scope.Benchmark)
public class RecordKernel {
    private static final int SAMPLES = 20_000;

    @Param({"BINARY", "ASCII"})
    public DataFormat format = DataFormat.BINARY;

    private RecordFiles files = files(DataFormat.BINARY);

    @Setup
    public void write() {
        files = files(format);
    }

    private static RecordFiles files(DataFormat format) {
        WrittenRecord written = RecordSubject.written(SAMPLES, format, Revision.C1999);
        return RecordFiles.of(
                Source.of("bench.cfg", Bytes.of(written.configuration())),
                Source.of("bench.dat", Bytes.of(written.data())));
    }

    /** Configuration and all samples. */
    @Benchmark
    public Recording decode() {
        return RecordReader.read(files, ReadOptions.ALL);
    }
}
