package org.varwright.cli;

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

    String by() {
        return by;
    }

    String device() {
        return device;
    }

    /** The wall clock of this machine [ms]. */
    long nowMillis() {
        return System.currentTimeMillis();
    }
}
