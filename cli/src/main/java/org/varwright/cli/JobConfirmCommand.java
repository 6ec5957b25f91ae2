package org.varwright.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import org.varwright.job.Order;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code job confirm FILE STEP}. */
@Command(
        name = "confirm",
        mixinStandardHelpOptions = true,
        description = {
            "Confirms the next step of the order of work: it was done as written and what was expected was seen.",
            "Exit 2, and nothing is written, where the rules refuse it."
        })
final class JobConfirmCommand implements Callable<Integer> {
    @Parameters(paramLabel = "JOB", index = "0", description = "The job (.job.jsonl).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path file;

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

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private JobWriter writer;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private OutputOptions output;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Override
    public Integer call() {
        JobNames.require("--device", writer.device());
        Job job = new JobFile(file)
                .append(j -> j.propose(writer.device(), writer.by(), writer.nowMillis(), confirmation(j)));
        return output.print(spec.commandLine().getOut(), JobShowCommand.answer(job));
    }

    private Fact confirmation(Job job) {
        Order order = job.currentOrder()
                .orElseThrow(() -> new VarwrightException(Message.JOB_NO_ORDER, new Place(file.toString(), 0, 0, "")));
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
