package org.varwright.cli;

import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;
import picocli.CommandLine.Mixin;

/** A command that answers a question about one bank. */
abstract class BankCommand extends AnswerCommand {
    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private BankArgument bank;

    /** Finds the answer. */
    abstract Answer answer(BankArgument bank);

    @Override
    final Answer answer() {
        try {
            return answer(bank);
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
