package org.varwright.fit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.problem.VarwrightException;

/**
 * Decides which unit goes where.
 *
 * <p>Order of aims: every limit kept and the unbalance under the alarm; fewest lifts; least unbalance; the same result for the same input. A stage that needs
 * nothing is not opened to balance another.
 */
public final class Fit {
    private Fit() {}

    /**
     * The plan.
     *
     * @throws VarwrightException with a {@code FIT_…} code where an option names what isn't there or can't be done
     */
    public static FitResult plan(FitInput input) {
        Bank bank = input.bank();
        Request request = Request.resolve(input);
        Balance before = Balance.of(bank, request.asFound());
        List<Stage> whole = Allotment.whole(bank, request.open(), request.spares());
        List<Stage> inPlay = inPlay(input, request, whole);
        Set<UnitPosition> open = new HashSet<>(request.open());
        open.removeIf(p -> inPlay.stream().noneMatch(s -> s.name().equals(p.stage())));

        Board board = Board.of(bank, inPlay, request.start(), open, request.fixed(), request.spares());
        Search.Answer answer = Search.run(board.puzzle(), input.options());
        Arrangement plan = board.realise(answer.chosen());

        List<RunOn> runOn = new ArrayList<>();
        Arrangement after = plan;
        for (Stage stage : bank.stages()) {
            if (!whole.contains(stage)) {
                List<Spare> left = unused(request, after).stream()
                        .filter(s -> Compatibility.reason(bank, stage, s).isEmpty())
                        .toList();
                RunOnSearch.Outcome outcome =
                        new RunOnSearch(bank, stage, after, request.open(), request.fixed(), left).search();
                runOn.add(outcome.advice());
                after = outcome.after();
            }
        }
        return FitReport.of(input, request, board, answer, before, after, runOn, unused(request, after));
    }

    /** Stages that are whole and need something: an open position, a broken limit, or everything where least unbalance is asked for. */
    private static List<Stage> inPlay(FitInput input, Request request, List<Stage> whole) {
        boolean all = input.options().aim() == FitOptions.Aim.LEAST_UNBALANCE;
        return whole.stream()
                .filter(s ->
                        all || Allotment.need(s, request.open()) > 0 || excess(input.bank(), s, request.start()) > 0.0)
                .toList();
    }

    private static double excess(Bank bank, Stage stage, Arrangement arrangement) {
        StageModel model = StageModel.of(bank, stage);
        double[] sums = new double[model.groupCount];
        for (UnitPosition position : stage.positions()) {
            sums[model.groupOf(position)] += arrangement.farads(position);
        }
        return new StageState(model, sums).excess();
    }

    /** Spares that could be used and are not. */
    private static List<Spare> unused(Request request, Arrangement after) {
        Map<String, Spare> left = new HashMap<>();
        request.spares().forEach(s -> left.put(s.serial(), s));
        after.contents().values().forEach(content -> {
            if (content instanceof Content.FromStock s) {
                left.remove(s.spare().serial());
            }
        });
        return request.spares().stream()
                .filter(s -> Optional.ofNullable(left.get(s.serial())).isPresent())
                .toList();
    }
}
