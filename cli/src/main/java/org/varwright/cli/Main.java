package org.varwright.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.varwright.page.Page;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Where the process starts. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        StandardOutput standard = new StandardOutput();
        PrintWriter out = new PrintWriter(standard, false, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, false, StandardCharsets.UTF_8);
        int code = run(out, err, args);
        out.flush();
        Optional<String> lost = standard.lost();
        lost.ifPresent(why -> err.println("varwright: "
                + Problem.of(Message.ANSWER_LOST, Place.NOWHERE, why).print()));
        err.flush();
        System.exit(lost.isPresent() ? ExitCode.BAD_INPUT.code() : code);
    }

    /** Runs one command line; never throws, never ends the process. */
    static int run(PrintWriter out, PrintWriter err, String... args) {
        CommandLine commandLine = new CommandLine(new VarwrightCommand())
                .setOut(out)
                .setErr(err)
                .setUsageHelpWidth(100)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setParameterExceptionHandler(wrongUse())
                .setExecutionExceptionHandler(failed());
        return commandLine.execute(args);
    }

    private static IParameterExceptionHandler wrongUse() {
        return (ParameterException e, String[] args) -> {
            CommandLine command = e.getCommandLine();
            PrintWriter err = command.getErr();
            err.println("varwright: " + Page.plain(String.valueOf(e.getMessage())) + "; see \""
                    + command.getCommandSpec().qualifiedName() + " --help\"");
            UnmatchedArgumentException.printSuggestions(e, err);
            return ExitCode.BAD_INPUT.code();
        };
    }

    private static IExecutionExceptionHandler failed() {
        return (Exception e, CommandLine command, CommandLine.ParseResult parsed) -> {
            PrintWriter err = command.getErr();
            if (e instanceof VarwrightException bad) {
                for (Problem problem : bad.problems()) {
                    err.println("varwright: " + Page.plain(problem.print()));
                }
                return ExitCode.BAD_INPUT.code();
            }
            err.println("varwright: a fault in the program itself, not in your input: " + e
                    + "; nothing was written. Set VARWRIGHT_TRACE=1 and run again to see where, and report it");
            if (System.getenv("VARWRIGHT_TRACE") != null) {
                e.printStackTrace(err);
            }
            return ExitCode.INTERNAL.code();
        };
    }
}
