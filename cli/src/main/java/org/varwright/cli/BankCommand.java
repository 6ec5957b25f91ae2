package org.varwright.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** A command that answers a question about one bank. */
@Command(mixinStandardHelpOptions = true)
abstract class BankCommand implements Callable<Integer> {
    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private BankArgument bank;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private OutputOptions output;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    /** Finds the answer. */
    abstract Answer answer(BankArgument bank);

    boolean explain() {
        return output.explain();
    }

    java.io.PrintWriter err() {
        return spec.commandLine().getErr();
    }

    @Override
    public Integer call() {
        return output.print(spec.commandLine().getOut(), answer(bank));
    }
}
