package org.varwright.fit;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.quantity.Dimension;

/** Puts the answer of the search into the words of the bank. */
final class FitReport {
    private FitReport() {}

    static FitResult of(
            FitInput input,
            Request request,
            Board board,
            Search.Answer answer,
            Balance before,
            Arrangement after,
            List<RunOn> runOn,
            List<Spare> unused) {
        Bank bank = input.bank();
        Balance balance = Balance.of(bank, after);
        List<Check> checks = FitChecks.of(bank, after, balance);
        boolean broken = !balance.unsolved().isEmpty() || checks.stream().anyMatch(c -> c.verdict() == Verdict.FAIL);
        FitResult.Outcome outcome = !runOn.isEmpty()
                ? FitResult.Outcome.SPARES_MISSING
                : broken ? FitResult.Outcome.LIMIT_BROKEN : FitResult.Outcome.COMPLETE;
        List<FitResult.Alternative> alternatives = new ArrayList<>();
        if (runOn.isEmpty()) {
            for (Found found : answer.more()) {
                Arrangement other = board.realise(found);
                alternatives.add(new FitResult.Alternative(
                        found.extra() - answer.chosen().extra(),
                        other.movesFrom(request.asFound()),
                        Balance.of(bank, other),
                        Math.sqrt(found.squared())));
            }
        }
        List<FitResult.Rejected> rejected = rejected(input, request);
        return new FitResult(
                bank,
                outcome,
                after.movesFrom(request.asFound()),
                before,
                balance,
                Math.sqrt(answer.chosen().squared()),
                answer.provenBest() && runOn.isEmpty(),
                runOn.isEmpty()
                        ? answer.proof()
                        : "not proven best: spares are missing; for the stages that can be made whole: "
                                + answer.proof(),
                input.provisional(),
                alternatives,
                rejected,
                unused.stream()
                        .map(Spare::serial)
                        .filter(s -> rejected.stream().noneMatch(r -> r.serial().equals(s)))
                        .sorted()
                        .toList(),
                runOn,
                checks,
                FitBases.of(bank),
                notes(input, after),
                answer.examined());
    }

    /** Spares that fit no stage that needs one; where none needs any, no stage at all. */
    private static List<FitResult.Rejected> rejected(FitInput input, Request request) {
        Bank bank = input.bank();
        List<Stage> needing = bank.stages().stream()
                .filter(s -> Allotment.need(s, request.open()) > 0)
                .toList();
        List<Stage> asked = needing.isEmpty() ? bank.stages() : needing;
        List<FitResult.Rejected> rejected = new ArrayList<>();
        for (Spare spare : input.spares()) {
            if (request.withheld().contains(spare)) {
                rejected.add(new FitResult.Rejected(spare.serial(), "not to be used, as asked"));
                continue;
            }
            if (!request.spares().contains(spare)) {
                continue;
            }
            List<Optional<String>> reasons = asked.stream()
                    .map(s -> Compatibility.reason(bank, s, spare))
                    .toList();
            if (reasons.stream().allMatch(Optional::isPresent)) {
                rejected.add(new FitResult.Rejected(
                        spare.serial(),
                        String.join(
                                "; ",
                                new LinkedHashSet<>(reasons.stream()
                                        .flatMap(Optional::stream)
                                        .toList()))));
            }
        }
        return rejected;
    }

    private static List<String> notes(FitInput input, Arrangement after) {
        List<String> notes = new ArrayList<>(input.remarks());
        for (Fitted unit : input.units()) {
            if (unit.role() == Fitted.Role.IMMOVABLE && !unit.why().isEmpty()) {
                notes.add(unit.at().name() + ": " + unit.why());
            } else if (unit.role() == Fitted.Role.KEPT && !unit.why().isEmpty()) {
                notes.add(unit.at().name() + " is to be watched: " + unit.why());
            }
        }
        for (Stage stage : input.bank().stages()) {
            StageModel model = StageModel.of(input.bank(), stage);
            if (model.voltageIsHopeless) {
                notes.add(stage.name() + ": even with every unit alike its units bear "
                        + Dimension.digits(100.0 * model.leastUnitPerRated(), 4)
                        + " % of rated voltage at the highest voltage of the system: no fitting cures that, the rating or the"
                        + " voltage in the bank file is to be looked at");
            }
        }
        long nameplate = input.units().stream()
                .filter(u -> (u.role() == Fitted.Role.KEPT || u.role() == Fitted.Role.IMMOVABLE)
                        && u.from() == Fitted.From.NAMEPLATE)
                .count();
        if (nameplate > 0) {
            notes.add(nameplate + " of " + input.units().size()
                    + " units are counted with the nameplate's capacitance because no measurement is on file: the unbalance"
                    + " after the work can differ from what is shown");
        }
        for (UnitPosition position : after.contents().keySet()) {
            Content content = after.at(position);
            if (content instanceof Content.FromStock s) {
                Stage stage = input.bank().stage(position.stage()).orElseThrow();
                if (s.spare().capacitanceFarads().isEmpty()) {
                    notes.add("spare " + s.spare().serial()
                            + " is counted with its nameplate's capacitance: measure it before it is lifted in");
                }
                for (String caution : Compatibility.cautions(stage, s.spare().unit())) {
                    notes.add("spare " + s.spare().serial() + " " + caution);
                }
            }
        }
        return notes;
    }
}
