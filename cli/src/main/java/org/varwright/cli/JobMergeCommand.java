package org.varwright.cli;

import java.nio.file.Path;
import java.util.List;
import org.varwright.job.Job;
import org.varwright.job.JobLog;
import org.varwright.job.Planner;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code job merge FILE… -o FILE}. */
@Command(
        name = "merge",
        description = {
            "Puts the lines of several devices into one file. Nothing is lost: what disagrees is kept and shown.",
            "In whatever order and however often files are merged, the same lines give the same job."
        })
final class JobMergeCommand extends AnswerCommand {
    @Parameters(paramLabel = "JOB", arity = "1..*", description = "Files of one job (.job.jsonl).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private List<Path> files;

    @Option(
            names = "-o",
            required = true,
            paramLabel = "FILE",
            description = "Where the merged job goes; may be one of them. What stands there already stays.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path target;

    @Override
    Answer answer() {
        JobLog merged = files.stream()
                .map(f -> new JobFile(f).log())
                .reduce(JobLog::merge)
                .orElseThrow();
        return JobShowCommand.answer(Job.of(new JobFile(target).merge(merged), Planner.keeping()));
    }
}
