package org.varwright.unbalance;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Construction;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Capacitances;
import org.varwright.network.Failure;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;
import org.varwright.network.Sweep;
import org.varwright.network.UnitBranch;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * Every failure of one stage, group by group, up to total loss of the group.
 *
 * <p><b>Model.</b> The network (NET-5, NET-9) for 1…P units out, 1…s−1 sections shorted (or 1…p−1 element fuses operated, where there are element fuses) and a
 * shorted unit, in every group of every string of every leg; in a string without fuses, sections shorted one after another along the whole string. Of units in
 * parallel the first ones stand for any.
 *
 * <p><b>Source.</b> First principles; the limit is the standard's.
 */
final class FailureTable {
    private final Stage stage;
    private final Network network;
    private final VoltageLimit limit;
    private final Solution.Solved healthy;
    private final Sweep sweep;

    FailureTable(Bank bank, Stage stage, Capacitances capacitances, Supply supply) {
        this.stage = stage;
        this.network = Network.of(bank, stage, capacitances, supply);
        this.limit = VoltageLimit.of(bank.standard());
        this.healthy = switch (network.healthy()) {
            case Solution.Solved solved -> solved;
            case Solution.Singular singular ->
                throw new VarwrightException(Message.NO_SOLUTION, Place.NOWHERE, stage.name(), singular.reason());
        };
        this.sweep = network.sweep().orElseThrow();
    }

    Solution.Solved healthy() {
        return healthy;
    }

    /** What one open phase does: a bank fuse, a switch pole, a lost phase. */
    Optional<Effect> phaseOpen() {
        return effect(List.of(new Failure.PhaseOpen(stage.name(), "A")));
    }

    List<FailureRow> rows() {
        List<FailureRow> rows = new ArrayList<>();
        for (List<UnitBranch> group : groups()) {
            rows.addAll(series("unit-out", group, group.size(), n -> out(group, n)));
            UnitBranch first = group.getFirst();
            Optional<Construction> construction = stage.unit().construction();
            if (construction.isPresent() && construction.get().internallyFused()) {
                rows.addAll(series(
                        "elements-out",
                        List.of(first),
                        construction.get().elements() - 1,
                        n -> List.of(new Failure.ElementsOut(first, n))));
            } else if (construction.isPresent() && !isFuselessString()) {
                rows.addAll(series(
                        "sections-shorted",
                        List.of(first),
                        construction.get().sections() - 1,
                        k -> List.of(new Failure.SectionsShorted(first, k))));
            }
            rows.addAll(series("unit-shorted", List.of(first), 1, n -> List.of(new Failure.UnitShorted(first))));
        }
        if (isFuselessString()) {
            strings().forEach(string -> rows.addAll(ofString(string)));
        }
        return List.copyOf(rows);
    }

    /** Units in series without fuses: sections shorted anywhere in a string add up, so they are counted along the whole of it. */
    private boolean isFuselessString() {
        return !stage.hasThreePhaseUnits()
                && stage.layout().units() == 1
                && stage.layout().groups() > 1
                && Unbalance.mainKind(stage).equals("sections-shorted");
    }

    private List<List<UnitBranch>> strings() {
        Map<String, List<UnitBranch>> strings = new LinkedHashMap<>();
        for (UnitBranch branch : network.branches()) {
            strings.computeIfAbsent(branch.stageLeg() + "/" + branch.at().string(), k -> new ArrayList<>())
                    .add(branch);
        }
        return List.copyOf(strings.values());
    }

    /** One section after another, unit after unit, until the rest of the string bears twice its voltage. */
    private List<FailureRow> ofString(List<UnitBranch> string) {
        int sections = stage.unit().construction().orElseThrow().sections();
        int most = Math.max(sections, string.size() * sections / 2);
        return series("sections-shorted", string, most, k -> {
            List<Failure> failures = new ArrayList<>();
            for (int left = k, u = 0; left > 0; left -= sections, u++) {
                failures.add(new Failure.SectionsShorted(string.get(u), Math.min(left, sections)));
            }
            return failures;
        });
    }

    /** One row for units that are out together, wherever they stand. */
    FailureRow together(List<UnitPosition> positions) {
        List<Failure> failures = new ArrayList<>();
        for (UnitPosition position : positions) {
            for (UnitBranch branch : network.branches()) {
                if (branch.at().equals(position)) {
                    failures.add(new Failure.UnitOut(branch));
                }
            }
        }
        Optional<Effect> effect = effect(failures);
        RunVerdict verdict = effect.isEmpty()
                        || effect.get().legLost()
                        || !limit.holds(effect.get().highestPerRated())
                ? RunVerdict.TAKE_OUT
                : RunVerdict.ALARM;
        List<String> legs = List.copyOf(
                new LinkedHashSet<>(positions.stream().map(UnitPosition::leg).toList()));
        return new FailureRow(
                stage.name(),
                legs.size() == 1 ? legs.getFirst() : "",
                positions,
                "unit-out",
                positions.size(),
                failures,
                effect,
                verdict,
                reason(effect, verdict, "what else may fail has not been counted"));
    }

    /** Branches that share their nodes, group by group. */
    private List<List<UnitBranch>> groups() {
        Map<String, List<UnitBranch>> groups = new LinkedHashMap<>();
        for (UnitBranch branch : network.branches()) {
            String star = stage.hasThreePhaseUnits() ? branch.name() : "";
            String key = branch.stageLeg() + "/" + branch.at().string() + "/"
                    + branch.at().group() + star;
            groups.computeIfAbsent(key, k -> new ArrayList<>()).add(branch);
        }
        return List.copyOf(groups.values());
    }

    private static List<Failure> out(List<UnitBranch> group, int count) {
        return group.subList(0, count).stream()
                .<Failure>map(Failure.UnitOut::new)
                .toList();
    }

    private interface Of {
        List<Failure> count(int n);
    }

    private List<FailureRow> series(String kind, List<UnitBranch> units, int most, Of of) {
        List<Optional<Effect>> effects = new ArrayList<>();
        for (int n = 1; n <= most; n++) {
            effects.add(effect(of.count(n)));
        }
        List<FailureRow> rows = new ArrayList<>();
        for (int n = 1; n <= most; n++) {
            Optional<Effect> effect = effects.get(n - 1);
            RunVerdict verdict = RunVerdict.ALARM;
            String next = "there is no more to lose here";
            if (!isWithin(effect)) {
                verdict = RunVerdict.TAKE_OUT;
            } else if (n < most) {
                verdict = isWithin(effects.get(n)) ? RunVerdict.RUN_ON : RunVerdict.ALARM;
                next = "one more " + (verdict == RunVerdict.RUN_ON ? "would still be within it" : "would not be");
            }
            List<Failure> failures = of.count(n);
            rows.add(new FailureRow(
                    stage.name(),
                    units.getFirst().stageLeg(),
                    positions(failures),
                    kind,
                    n,
                    failures,
                    effect,
                    verdict,
                    reason(effect, verdict, next)));
        }
        return rows;
    }

    private static List<UnitPosition> positions(List<Failure> failures) {
        List<UnitPosition> positions = new ArrayList<>();
        for (Failure failure : failures) {
            if (failure instanceof Failure.OfBranch of) {
                positions.add(of.at().at());
            }
        }
        return positions;
    }

    private boolean isWithin(Optional<Effect> effect) {
        return effect.filter(e -> !e.legLost() && limit.holds(e.highestPerRated()))
                .isPresent();
    }

    private String reason(Optional<Effect> effect, RunVerdict verdict, String next) {
        if (effect.isEmpty()) {
            return "a short circuit across the supply, or a part without any connection; its fuse or the breaker must clear it";
        }
        Effect e = effect.get();
        String value = String.format(Locale.ROOT, "%.3f of rated, limit %.2f", e.highestPerRated(), limit.multiple());
        if (verdict == RunVerdict.TAKE_OUT && e.legLost() && limit.holds(e.highestPerRated())) {
            return "a whole leg carries no current";
        }
        return verdict == RunVerdict.TAKE_OUT ? value : value + "; " + next;
    }

    private Optional<Effect> effect(List<Failure> failures) {
        return sweep.set(sweep.fault(failures)) ? Optional.of(Effect.of(sweep, healthy)) : Optional.empty();
    }

    VoltageLimit limit() {
        return limit;
    }
}
