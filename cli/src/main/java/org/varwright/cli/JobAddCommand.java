package org.varwright.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.varwright.job.Fact;
import org.varwright.job.FactReader;
import org.varwright.job.Job;
import org.varwright.json.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code job add FILE TYPE --body JSON}. */
@Command(
        name = "add",
        mixinStandardHelpOptions = true,
        description = {
            "Adds an event of any type; docs/job-log.md lists the types and their members.",
            "Exit 2, and nothing is written, where the rules refuse it."
        })
final class JobAddCommand implements Callable<Integer> {
    @Parameters(paramLabel = "JOB", index = "0", description = "The job (.job.jsonl).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path file;

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

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private JobWriter writer;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private OutputOptions output;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Override
    public Integer call() {
        JobNames.require("--device", writer.device());
        Fact fact = FactReader.read(type, Json.parse(body));
        Job job = new JobFile(file).append(j -> j.propose(writer.device(), writer.by(), writer.nowMillis(), fact));
        return output.print(spec.commandLine().getOut(), JobShowCommand.answer(job));
    }
}
