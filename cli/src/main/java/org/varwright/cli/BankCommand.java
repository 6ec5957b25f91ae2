package org.varwright.cli;

import java.util.concurrent.Callable;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;
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
        try {
            return output.print(spec.commandLine().getOut(), answer(bank));
        } catch (VarwrightException e) {
            throw new VarwrightException(e.problems().stream().map(this::placed).toList());
        }
    }

    /** A problem that names only a path inside the bank file gets the line and column at which that stands. */
    private Problem placed(Problem problem) {
        Place place = problem.place();
        if (!place.file().isEmpty() || !place.path().matches("[a-z-]+(\\[[0-9]+]|\\.[a-z-]+).*")) {
            return problem;
        }
        Place found = bank.reading().place(place.path());
        return new Problem(
                problem.message(),
                new Place(found.file(), found.line(), found.column(), place.path()),
                problem.arguments());
    }
}
