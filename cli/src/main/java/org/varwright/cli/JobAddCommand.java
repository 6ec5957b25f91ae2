package org.varwright.cli;

import org.varwright.job.Fact;
import org.varwright.job.FactReader;
import org.varwright.json.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code job add FILE TYPE --body JSON}. */
@Command(
        name = "add",
        description = {
            "Adds an event of any type; docs/job-log.md lists the types and their members.",
            "Exit 2, and nothing is written, where the rules refuse it."
        })
final class JobAddCommand extends JobEntryCommand {
    @Parameters(paramLabel = "TYPE", index = "1", description = "The type, such as noted or order-made.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String type;

    @Option(
            names = "--body",
            required = true,
            paramLabel = "JSON",
            description = "Its members, such as '{\"text\": \"oil under stage 2\"}'.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String body;

    @Override
    Answer answer() {
        Fact fact = FactReader.read(type, Json.parse(body));
        return write(job -> fact);
    }
}
