package org.varwright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Bank;
import org.varwright.drawing.DrawingOptions;
import org.varwright.drawing.DrawingState;
import org.varwright.drawing.OneLineDrawing;
import org.varwright.drawing.SchemeDrawing;
import org.varwright.interlock.Scheme;
import org.varwright.interlock.StartState;
import org.varwright.json.Json;
import org.varwright.page.Page;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code draw BANK -o FILE.svg}. */
@Command(
        name = "draw",
        description = {
            "One-line diagram as SVG: compartments, locks, where each key is, what is live, charged, grounded.",
            "Exit 1 where the locks don't allow the state asked for."
        })
final class DrawCommand extends BankCommand {
    /** States looked at to find the one asked for. */
    private static final int SEARCH_LIMIT = 2_000_000;

    @Option(names = "-o", required = true, paramLabel = "FILE.svg", description = "Where the drawing goes.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path target;

    @Option(
            names = "--state",
            paramLabel = "DEVICE=POSITION",
            description = "A device that does not stand as in service; repeat it for each.")
    private List<String> states = List.of();

    @Option(
            names = "--open",
            paramLabel = "COMPARTMENT",
            description = "A compartment whose door is open; repeat it for each.")
    private List<String> open = List.of();

    @Option(names = "--portrait", description = "A4 upright instead of across.")
    private boolean portrait;

    @Option(names = "--black-and-white", description = "No colour; line style and text carry the state in either case.")
    private boolean blackAndWhite;

    @Override
    Answer answer(BankArgument argument) {
        Bank bank = argument.bank(err());
        Map<String, String> positions = NamedValues.of("--state", states);
        if (positions.isEmpty() && open.isEmpty()) {
            return draw(bank, DrawingState.atStart(bank));
        }
        Scheme scheme = Scheme.of(bank);
        return switch (StartState.of(scheme, positions, new LinkedHashSet<>(open), SEARCH_LIMIT)) {
            case StartState.Reachable reachable ->
                draw(bank, SchemeDrawing.state(bank, scheme, reachable.state(), "as asked for"));
            case StartState.Refused refused ->
                answer(notDrawn(refused.reasons()), Json.strings(refused.reasons()), ExitCode.NO);
            case StartState.Undecided undecided ->
                answer(
                        "undecided after " + undecided.limit() + " states: nothing was drawn",
                        Json.strings(List.of()),
                        ExitCode.UNDECIDED);
        };
    }

    private static String notDrawn(List<String> reasons) {
        Page page = new Page();
        reasons.forEach(reason -> page.item("not drawn: ", reason));
        return page.print();
    }

    private Answer draw(Bank bank, DrawingState state) {
        DrawingOptions options = new DrawingOptions(
                portrait ? DrawingOptions.Page.A4_PORTRAIT : DrawingOptions.Page.A4_LANDSCAPE,
                blackAndWhite ? DrawingOptions.Colours.BLACK_AND_WHITE : DrawingOptions.Colours.COLOUR);
        OutputFile.write(target, OneLineDrawing.draw(bank, state, options).getBytes(StandardCharsets.UTF_8));
        return answer("drawn: " + target, Json.strings(List.of()), ExitCode.DONE);
    }

    private Answer answer(String text, Json refused, ExitCode code) {
        return new Answer(
                text,
                Json.object()
                        .put("file", code == ExitCode.DONE ? Json.of(target.toString()) : Json.none())
                        .put("refused", refused)
                        .build(),
                code);
    }
}
