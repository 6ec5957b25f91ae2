package org.varwright.cli;

import org.varwright.job.Fact;
import org.varwright.job.Job;
import org.varwright.job.Proposal;
import picocli.CommandLine.Option;

/** Who writes an event, on which device, and when. */
final class JobWriter {
    @Option(names = "--by", required = true, paramLabel = "PERSON", description = "Who does or has seen it.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String by;

    @Option(
            names = "--device",
            paramLabel = "NAME",
            defaultValue = "desk",
            description = "The device that writes: small letters, digits and hyphens (default: ${DEFAULT-VALUE}).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String device;

    /**
     * Holds the device's name against what names may be.
     *
     * @throws VarwrightException {@code JOB_NAME}
     */
    void requireDevice() {
        JobNames.require("--device", device);
    }

    /** The event as this person and device would write it now. */
    Proposal propose(Job job, Fact fact) {
        return job.propose(device, by, System.currentTimeMillis(), fact);
    }
}
