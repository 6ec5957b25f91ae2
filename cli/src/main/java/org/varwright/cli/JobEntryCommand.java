package org.varwright.cli;

import java.nio.file.Path;
import java.util.function.Function;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** A command that writes one event into a job, where the rules take it. */
abstract class JobEntryCommand extends AnswerCommand {
    @Parameters(paramLabel = "JOB", index = "0", description = "The job (.job.jsonl).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path file;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private JobWriter writer;

    final Path file() {
        return file;
    }

    /** The job with the event in it, which is on disk then. */
    final Answer write(Function<Job, Fact> fact) {
        writer.requireDevice();
        return JobShowCommand.answer(new JobFile(file).append(job -> writer.propose(job, fact.apply(job))));
    }
}
