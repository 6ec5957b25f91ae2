package org.varwright.cli;

import java.nio.file.Path;
import org.varwright.job.Job;
import org.varwright.job.JobJson;
import org.varwright.job.JobText;
import org.varwright.job.Planner;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code job show FILE}. */
@Command(
        name = "show",
        description = {
            "What stands in a job: the order of work and how far it has come, who is on the bank, what disagrees.",
            "Every line is checked against the hash chain. Exit 1 where the chain is broken, lines are missing or can't be read."
        })
final class JobShowCommand extends AnswerCommand {
    @Parameters(paramLabel = "JOB", index = "0", description = "The job (.job.jsonl).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path file;

    @Override
    Answer answer() {
        return answer(Job.of(new JobFile(file).log(), Planner.keeping()));
    }

    static Answer answer(Job job) {
        return new Answer(
                JobText.of(job), JobJson.of(job), job.log().findings().isEmpty() ? ExitCode.DONE : ExitCode.NO);
    }
}
