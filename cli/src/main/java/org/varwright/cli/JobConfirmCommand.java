package org.varwright.cli;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import org.varwright.job.Order;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code job confirm FILE STEP}. */
@Command(
        name = "confirm",
        description = {
            "Confirms the next step of the order of work: it was done as written and what was expected was seen.",
            "Exit 2, and nothing is written, where the rules refuse it."
        })
final class JobConfirmCommand extends JobEntryCommand {
    @Parameters(paramLabel = "STEP", index = "1", description = "The number of the step.")
    private int step;

    @Option(names = "--second", paramLabel = "PERSON", description = "Who has confirmed it beside --by.")
    private @Nullable String second;

    @Option(
            names = "--reading",
            paramLabel = "TEXT",
            description = "What a tester or meter showed, or the number counted.")
    private @Nullable String reading;

    @Option(names = "--label", paramLabel = "TEXT", description = "What is written on the thing itself.")
    private @Nullable String label;

    @Option(
            names = "--ticked",
            paramLabel = "ITEM",
            description = "An item of the step that was seen to; repeat it for each.")
    private List<String> ticked = List.of();

    @Override
    Answer answer() {
        return write(this::confirmation);
    }

    private Fact confirmation(Job job) {
        Order order = job.currentOrder()
                .orElseThrow(
                        () -> new VarwrightException(Message.JOB_NO_ORDER, new Place(file().toString(), 0, 0, "")));
        return new Fact.StepConfirmed(
                order.id(),
                step,
                Optional.ofNullable(second),
                Optional.ofNullable(reading),
                Optional.ofNullable(label),
                ticked,
                Optional.empty());
    }
}
