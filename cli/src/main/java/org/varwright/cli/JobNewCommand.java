package org.varwright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import org.varwright.job.JobJson;
import org.varwright.job.JobText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code job new FILE --bank BANK}. */
@Command(name = "new", description = "Begins a job: a new file whose first event holds the bank file whole.")
final class JobNewCommand extends AnswerCommand {
    @Parameters(paramLabel = "JOB", index = "0", description = "The file to begin (.job.jsonl).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path file;

    @Option(names = "--bank", required = true, paramLabel = "BANK", description = "The bank file.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path bank;

    @Option(names = "--title", required = true, paramLabel = "TEXT", description = "What the job is, in a few words.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String title;

    @Option(
            names = "--name",
            paramLabel = "NAME",
            description = "The job's own name: small letters, digits and hyphens (default: the file's name).")
    private @Nullable String name;

    @Option(names = "--number", paramLabel = "TEXT", description = "What the owner calls the job.")
    private @Nullable String number;

    @Option(names = "--reason", paramLabel = "TEXT", description = "Why it is done.")
    private @Nullable String reason;

    @Option(names = "--alarm", paramLabel = "TEXT", description = "What was reported.")
    private @Nullable String alarm;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private JobWriter writer;

    @Override
    Answer answer() {
        String text = new String(InputFile.read(bank), StandardCharsets.UTF_8);
        String job = name != null ? name : JobNames.of(file);
        Fact opened = new Fact.Opened(
                title, text, Optional.ofNullable(number), Optional.ofNullable(reason), Optional.ofNullable(alarm));
        JobNames.require("--name", job);
        writer.requireDevice();
        Job begun = new JobFile(file).begin(job, j -> writer.propose(j, opened));
        return new Answer(JobText.of(begun), JobJson.of(begun), ExitCode.DONE);
    }
}
