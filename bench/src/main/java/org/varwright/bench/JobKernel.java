package org.varwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.varwright.job.Job;
import org.varwright.job.LongJob;

/** A job told from its log, its plan kept. */
@State(Scope.Benchmark)
public class JobKernel {
    @Param({"100", "1000"})
    public int events;

    private String lines = "";

    @Setup
    public void write() throws IOException {
        lines = LongJob.of(Files.readString(Examples.TAMARACK), Examples.TAMARACK_COMPARTMENT, events)
                .log()
                .text();
    }

    /** Lines read, hashes checked, every rule applied. */
    @Benchmark
    public Job tell() {
        return LongJob.told(lines);
    }
}
