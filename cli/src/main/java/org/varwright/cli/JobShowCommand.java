package org.varwright.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.varwright.job.Job;
import org.varwright.job.JobJson;
import org.varwright.job.JobText;
import org.varwright.job.Planner;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code job show FILE}. */
@Command(
        name = "show",
        mixinStandardHelpOptions = true,
        description = {
            "What stands in a job: the order of work and how far it has come, who is on the bank, what disagrees.",
            "Every line is checked against the hash chain. Exit 1 where the chain is broken, lines are missing or can't be read."
        })
final class JobShowCommand implements Callable<Integer> {
    @Parameters(paramLabel = "JOB", index = "0", description = "The job (.job.jsonl).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path file;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private OutputOptions output;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Override
    public Integer call() {
        return output.print(spec.commandLine().getOut(), answer(Job.of(new JobFile(file).log(), Planner.ANEW)));
    }

    static Answer answer(Job job) {
        return new Answer(
                JobText.of(job), JobJson.of(job), job.log().findings().isEmpty() ? ExitCode.DONE : ExitCode.NO);
    }
}
