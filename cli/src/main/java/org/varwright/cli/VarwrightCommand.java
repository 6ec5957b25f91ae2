package org.varwright.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command that holds the others. */
@Command(
        name = "varwright",
        subcommands = {
            DemoCommand.class,
            ServeCommand.class,
            CheckCommand.class,
            TriageCommand.class,
            DrawCommand.class,
            InterlockCommand.class,
            IsolateCommand.class,
            DischargeCommand.class,
            UnbalanceCommand.class,
            LocateCommand.class,
            SurveyCommand.class,
            FitCommand.class,
            EnergizeCommand.class,
            FusesCommand.class,
            JobCommand.class,
            DutyCommand.class,
            ResonanceCommand.class,
            InrushCommand.class,
            RecordCommand.class,
            ReportCommand.class
        },
        mixinStandardHelpOptions = true,
        version = "varwright 0.1.0",
        synopsisSubcommandLabel = "COMMAND",
        description = {
            "Takes a medium-voltage capacitor bank from alarm to safely back in service.",
            "",
            "Planning information, never a permission to touch: local codes, the owner's rules, the maker's",
            "instructions and a licensed or authorized person's judgement come first."
        },
        footer = {
            "",
            "Exit: 0 done, 1 the answer is \"no\", 2 wrong use or unreadable input, 3 undecided, 70 a fault in the program."
        })
final class VarwrightCommand implements Runnable {
    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "say what to do: a command is missing");
    }
}
