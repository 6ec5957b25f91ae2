package org.varwright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.Bank;
import org.varwright.basis.Basis;
import org.varwright.basis.BasisText;
import org.varwright.isolation.Access;
import org.varwright.isolation.IsolationJson;
import org.varwright.isolation.IsolationText;
import org.varwright.isolation.OrderOfWork;
import org.varwright.isolation.Plan;
import org.varwright.isolation.PlanRequest;
import org.varwright.isolation.SavedStateReader;
import org.varwright.isolation.SequenceCardText;
import org.varwright.json.Json;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code isolate BANK --access COMPARTMENT…}. */
@Command(
        name = "isolate",
        description = {
            "The order of work to get into compartments and back, proven step by step.",
            "Moves, looks, holds, tests, discharges, grounds, counts; every single fault is held against the step that shows it.",
            "Exit 1 where it is refused, 3 where it is undecided."
        })
final class IsolateCommand extends BankCommand {
    private static final Pattern STATE_PATH = Pattern.compile(
            "(bank|positions|openDoors|bolts|exchanges|charges|grounds|shorts)(\\..*)?", Pattern.DOTALL);

    @Option(
            names = "--access",
            required = true,
            arity = "1..*",
            paramLabel = "COMPARTMENT",
            description = "Compartments that people must get into.")
    private List<String> access = new ArrayList<>();

    @Option(
            names = "--start",
            paramLabel = "DEVICE=POSITION",
            description = "A device that does not stand as in service now; repeat it for each.")
    private List<String> start = new ArrayList<>();

    @Option(
            names = "--open",
            paramLabel = "COMPARTMENT",
            description = "A compartment whose door is open now; repeat it for each.")
    private List<String> open = new ArrayList<>();

    @Option(
            names = "--from",
            paramLabel = "STATE.json",
            description = "A saved state to start from, such as half-way through another order of work.")
    private @Nullable Path from;

    @Option(
            names = "--not-use",
            paramLabel = "DEVICE",
            description = "A device that must stay as it is; repeat it for each.")
    private List<String> notToUse = new ArrayList<>();

    @Option(names = "--card", description = "Print the sequence card only: the moves with their keys on one page.")
    private boolean card;

    @Option(
            names = "--state-after",
            paramLabel = "STEP",
            description = "Print the state after that step as JSON, for --from: when the scope changes half-way.")
    private @Nullable Integer stateAfter;

    @Option(
            names = "--card-drawing",
            paramLabel = "FILE.svg",
            description =
                    "Draw the sequence card as well: moves as rows, keys as lanes, one sheet to hang on the door.")
    private @Nullable Path cardDrawing;

    @Override
    Answer answer(BankArgument argument) {
        Bank bank = argument.bank(err());
        PlanRequest request = PlanRequest.to(access).from(startState()).without(new LinkedHashSet<>(notToUse));
        Plan plan = plan(bank, request);
        String text = IsolationText.of(bank, access, plan);
        if (plan instanceof Plan.Planned(OrderOfWork order)) {
            text = (card ? SequenceCardText.of(order) : text) + (explain() ? BasisText.of(bases(order)) : "");
            if (stateAfter != null) {
                Json state = order.stateAfter(stateAfter).json();
                return new Answer(state.print(), state, ExitCode.DONE);
            }
            if (cardDrawing != null) {
                OutputFile.write(cardDrawing, CardDrawing.of(order).getBytes(StandardCharsets.UTF_8));
            }
        }
        return new Answer(text, IsolationJson.of(access, plan), code(plan));
    }

    /** What a saved state says of this bank and can't be so is told with the name of its file. */
    private Plan plan(Bank bank, PlanRequest request) {
        try {
            return Access.plan(bank, request);
        } catch (VarwrightException e) {
            if (from == null) {
                throw e;
            }
            String file = from.toString();
            throw new VarwrightException(e.problems().stream()
                    .map(p -> STATE_PATH.matcher(p.place().path()).matches()
                            ? new Problem(
                                    p.message(), new Place(file, 0, 0, p.place().path()), p.arguments())
                            : p)
                    .toList());
        }
    }

    private static List<Basis> bases(OrderOfWork order) {
        return order.steps().stream().flatMap(step -> step.basis().stream()).toList();
    }

    private PlanRequest.Start startState() {
        if (from != null) {
            if (!start.isEmpty() || !open.isEmpty()) {
                throw new VarwrightException(Message.ISOLATION_TWO_STARTS, Place.NOWHERE, from.toString());
            }
            return new PlanRequest.Start.Saved(
                    SavedStateReader.read(from.toString(), new String(InputFile.read(from), StandardCharsets.UTF_8)));
        }
        return start.isEmpty() && open.isEmpty()
                ? new PlanRequest.Start.AsInFile()
                : new PlanRequest.Start.Positions(NamedValues.of("--start", start), new LinkedHashSet<>(open));
    }

    static ExitCode code(Plan plan) {
        return switch (plan) {
            case Plan.Planned planned -> ExitCode.DONE;
            case Plan.Refused refused -> ExitCode.NO;
            case Plan.Undecided undecided -> ExitCode.UNDECIDED;
        };
    }
}
