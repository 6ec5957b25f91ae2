package org.varwright.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.varwright.archive.JobArchive;
import org.varwright.job.JobLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code job export FILE -o FILE.zip}. */
@Command(
        name = "export",
        mixinStandardHelpOptions = true,
        description = {
            "Puts a whole job into one ZIP file: its log and its attachments. The app and \"job import\" read it.",
            "Exit 1 where an attachment is not at hand; the archive is written without it, and says so."
        })
final class JobExportCommand implements Callable<Integer> {
    @Parameters(paramLabel = "JOB", index = "0", description = "The job (.job.jsonl).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path file;

    @Option(
            names = "--attachments",
            paramLabel = "DIR",
            description = "The folder of its attachments, each under its hash.")
    private @Nullable Path attachments;

    @Option(names = "-o", required = true, paramLabel = "FILE", description = "Where it goes: FILE.zip.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path target;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Override
    public Integer call() {
        JobLog log = new JobFile(file).log();
        JobArchive.Source source =
                attachments == null ? sha256 -> Optional.empty() : new AttachmentFolder(attachments)::file;
        List<String> missing = OutputFile.stream(target, out -> JobArchive.write(log, source, out));
        int all = JobArchive.attachments(log).size();
        spec.commandLine()
                .getOut()
                .println("job archive: " + target + ", " + log.events().size() + " events, " + (all - missing.size())
                        + " of " + all + " attachments");
        missing.forEach(hash -> spec.commandLine()
                .getErr()
                .println("varwright: attachment " + hash + " is not at hand; give its folder with --attachments"));
        return (missing.isEmpty() ? ExitCode.DONE : ExitCode.NO).code();
    }
}
