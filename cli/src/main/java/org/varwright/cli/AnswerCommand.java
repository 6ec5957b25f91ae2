package org.varwright.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** A command that answers a question, as text or JSON; its answer's code is the process's. */
@Command(mixinStandardHelpOptions = true)
abstract class AnswerCommand implements Callable<Integer> {
    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private OutputOptions output;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    /** Finds the answer. */
    abstract Answer answer();

    final boolean explain() {
        return output.explain();
    }

    final PrintWriter err() {
        return spec.commandLine().getErr();
    }

    @Override
    public final Integer call() {
        return output.print(spec.commandLine().getOut(), answer());
    }
}
