package org.varwright.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code job …}: the job as a file of events. */
@Command(
        name = "job",
        mixinStandardHelpOptions = true,
        subcommands = {
            JobNewCommand.class,
            JobShowCommand.class,
            JobConfirmCommand.class,
            JobAddCommand.class,
            JobMergeCommand.class,
            JobListCommand.class,
            JobMeterCommand.class,
            JobVisitCommand.class,
            JobDueCommand.class,
            JobExportCommand.class,
            JobImportCommand.class
        },
        synopsisSubcommandLabel = "COMMAND",
        description = {
            "Keeps a job as a file of events (.job.jsonl), one a line, each chained to the one before it by its hash.",
            "An event is only ever added; what the rules refuse is not written. Files of two devices are merged, never overwritten."
        })
final class JobCommand implements Runnable {
    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "say what to do with the job: a command is missing");
    }
}
