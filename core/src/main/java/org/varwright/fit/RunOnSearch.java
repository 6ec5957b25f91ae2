package org.varwright.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;

/**
 * Which positions to leave empty, and which good units to take out on other legs, so that a stage short of units keeps its limits (FIT-5).
 *
 * <p><b>Model.</b> Choices are counts of empty positions in each group, all of them with few units taken out, plus the two regular patterns (every leg like
 * the worst, every group like the worst). Which unit of a group is taken out is settled by exchange afterwards. No leg is left without a unit.
 */
final class RunOnSearch {
    /** Choices evaluated at most. */
    static final int MOST_CHOICES = 60_000;

    /** A way that loses more is shown only when it leaves less than this part of the unbalance. */
    private static final double CLEARLY_BETTER = 0.8;

    private final Bank bank;
    private final Stage stage;
    private final StageModel model;
    private final Arrangement start;
    private final List<Spare> spares;
    private final List<List<UnitPosition>> open = new ArrayList<>();
    private final List<List<UnitPosition>> removable = new ArrayList<>();
    private final double[] kept;
    private int choices;

    /**
     * One choice.
     *
     * <ul>
     * <li>{@code filled}: [group] open positions that get a spare
     * <li>{@code removed}: [group] good units taken out
     * <li>{@code excess}: how far limits are broken
     * <li>{@code squared}: unbalance
     * </ul>
     */
    private static final class Choice {
        private final int[] filled;
        private final int[] removed;
        private final double excess;
        private final double squared;

        Choice(int[] filled, int[] removed, double excess, double squared) {
            this.filled = filled;
            this.removed = removed;
            this.excess = excess;
            this.squared = squared;
        }

        int[] filled() {
            return filled;
        }

        int[] removed() {
            return removed;
        }

        double excess() {
            return excess;
        }

        double squared() {
            return squared;
        }

        int taken() {
            return Arrays.stream(removed).sum();
        }
    }

    RunOnSearch(
            Bank bank,
            Stage stage,
            Arrangement start,
            Set<UnitPosition> openPositions,
            Set<UnitPosition> fixed,
            List<Spare> spares) {
        this.bank = bank;
        this.stage = stage;
        this.model = StageModel.of(bank, stage);
        this.start = start;
        this.spares =
                spares.stream().sorted(Comparator.comparing(Spare::serial)).toList();
        this.kept = new double[model.groupCount];
        for (int g = 0; g < model.groupCount; g++) {
            open.add(new ArrayList<>());
            removable.add(new ArrayList<>());
        }
        for (UnitPosition position : stage.positions()) {
            int g = model.groupOf(position);
            if (openPositions.contains(position)) {
                open.get(g).add(position);
            } else {
                kept[g] += start.farads(position);
                if (!fixed.contains(position)
                        && start.at(position) instanceof Content.InPlace u
                        && u.unit().role() == Fitted.Role.KEPT) {
                    removable.get(g).add(position);
                }
            }
        }
    }

    /**
     * Advice and where it leads.
     *
     * @param advice for the stage
     * @param after the recommended way; where none keeps every limit, the condemned units out and nothing in their places
     */
    record Outcome(RunOn advice, Arrangement after) {}

    /** An option with what it makes of the bank. */
    private record Way(RunOn.Option option, Arrangement after) {}

    Outcome search() {
        int missing = open.stream().mapToInt(List::size).sum() - spares.size();
        List<Choice> all = new ArrayList<>();
        int taken = 0;
        boolean complete = true;
        for (; complete && taken <= removable.stream().mapToInt(List::size).sum(); taken++) {
            complete = fillAndRemove(new int[model.groupCount], 0, spares.size(), taken, all);
        }
        int tried = complete ? taken - 1 : taken - 2;
        patterns(all);
        List<Way> ways = new ArrayList<>();
        Comparator<Choice> byLoss = Comparator.comparingDouble(Choice::excess)
                .thenComparingInt(Choice::taken)
                .thenComparingDouble(Choice::squared);
        Optional<Choice> leastLoss = all.stream().min(byLoss);
        leastLoss.ifPresent(c ->
                ways.add(way(c, c.taken() == 0 ? "nothing else taken out" : "least kvar lost that keeps the limits")));
        all.stream()
                .filter(c -> c.excess() == 0.0)
                .min(Comparator.comparingDouble((Choice c) -> Math.rint(Math.sqrt(c.squared()) * 1e4))
                        .thenComparing(byLoss))
                .filter(c -> leastLoss.isPresent() && c != leastLoss.get())
                .map(c -> way(c, "best balanced"))
                .filter(w -> w.option().signalPrimary()
                        < CLEARLY_BETTER * ways.getFirst().option().signalPrimary())
                .ifPresent(ways::add);
        all.stream()
                .filter(c -> c.taken() == 0)
                .min(byLoss)
                .filter(c -> leastLoss.isPresent() && c != leastLoss.get())
                .ifPresent(c -> ways.add(way(c, "nothing else taken out")));
        boolean keeps = !ways.isEmpty() && ways.getFirst().option().limitsKept();
        Map<UnitPosition, Content> out = new HashMap<>();
        open.forEach(positions -> positions.forEach(p -> out.put(p, new Content.Nothing())));
        RunOn advice = new RunOn(
                stage.name(),
                missing,
                ways.stream().map(Way::option).toList(),
                keeps,
                String.format(
                        Locale.ROOT,
                        "every choice of groups with up to %d good unit%s taken out, and the regular patterns; which unit of a"
                                + " group by exchange",
                        Math.max(0, tried),
                        tried == 1 ? "" : "s"));
        return new Outcome(advice, keeps ? ways.getFirst().after() : start.with(out));
    }

    /** Distributes spares over open groups, then units to take out over groups; false when there are too many choices. */
    private boolean fillAndRemove(int[] filled, int group, int sparesLeft, int take, List<Choice> all) {
        if (sparesLeft == 0 || group == model.groupCount) {
            return sparesLeft > 0 || remove(filled, new int[model.groupCount], 0, take, all);
        }
        for (int n = Math.min(sparesLeft, open.get(group).size()); n >= 0; n--) {
            filled[group] = n;
            if (!fillAndRemove(filled, group + 1, sparesLeft - n, take, all)) {
                return false;
            }
        }
        filled[group] = 0;
        return true;
    }

    private boolean remove(int[] filled, int[] removed, int group, int take, List<Choice> all) {
        if (take == 0) {
            if (++choices > MOST_CHOICES) {
                return false;
            }
            evaluate(filled, removed).ifPresent(all::add);
            return true;
        }
        if (group == model.groupCount) {
            return true;
        }
        int most = filled[group] > 0 ? 0 : Math.min(take, removable.get(group).size());
        for (int n = most; n >= 0; n--) {
            removed[group] = n;
            if (!remove(filled, removed, group + 1, take - n, all)) {
                return false;
            }
        }
        removed[group] = 0;
        return true;
    }

    /** Every leg like the worst leg, group by group; every group like the worst group. */
    private void patterns(List<Choice> all) {
        int[] none = new int[model.groupCount];
        int[] spareFirst = new int[model.groupCount];
        int left = spares.size();
        for (int g = 0; g < model.groupCount; g++) {
            spareFirst[g] = Math.min(left, open.get(g).size());
            left -= spareFirst[g];
        }
        int worst = 0;
        for (int g = 0; g < model.groupCount; g++) {
            worst = Math.max(worst, open.get(g).size() - spareFirst[g]);
        }
        int[] everywhere = none.clone();
        int[] everyLeg = none.clone();
        for (int g = 0; g < model.groupCount; g++) {
            int empty = open.get(g).size() - spareFirst[g];
            everywhere[g] = Math.min(worst - empty, removable.get(g).size());
            int likeIt = 0;
            for (int other = 0; other < model.groupCount; other++) {
                if (sameRank(g, other)) {
                    likeIt = Math.max(likeIt, open.get(other).size() - spareFirst[other]);
                }
            }
            everyLeg[g] = Math.min(likeIt - empty, removable.get(g).size());
        }
        for (int[] removed : List.of(everyLeg, everywhere)) {
            boolean known = all.stream()
                    .anyMatch(c -> Arrays.equals(c.removed(), removed) && Arrays.equals(c.filled(), spareFirst));
            if (!known) {
                evaluate(spareFirst, removed).ifPresent(all::add);
            }
        }
    }

    /** Whether two groups stand at the same rank of their leg. */
    private boolean sameRank(int g, int other) {
        return rank(g) == rank(other);
    }

    private int rank(int group) {
        int string = model.stringOfGroup[group];
        int[] strings = model.stringsOfLeg[model.legsOfString[string][0]];
        return group - model.groupsOfString[strings[0]][0];
    }

    private Optional<Choice> evaluate(int[] filled, int[] removed) {
        double[] sums = kept.clone();
        int spare = 0;
        for (int g = 0; g < sums.length; g++) {
            for (int i = 0; i < filled[g]; i++) {
                sums[g] += new Content.FromStock(spares.get(spare++)).farads();
            }
            int out = removed[g];
            int there = removable.get(g).size();
            if (out > 0) {
                double mean = removable.get(g).stream()
                        .mapToDouble(start::farads)
                        .average()
                        .orElse(0.0);
                boolean all = out == there && kept[g] - there * mean < 1e-9 * mean;
                sums[g] = all ? 0.0 : sums[g] - out * mean;
            }
        }
        StageState state = new StageState(model, sums);
        for (double leg : state.legs) {
            if (leg <= 0.0) {
                return Optional.empty();
            }
        }
        return Optional.of(new Choice(filled.clone(), removed.clone(), state.excess(), state.squared()));
    }

    private Way way(Choice choice, String title) {
        Map<UnitPosition, Content> changes = new HashMap<>();
        open.forEach(positions -> positions.forEach(p -> changes.put(p, new Content.Nothing())));
        List<UnitPosition> filledPositions = new ArrayList<>();
        Map<UnitPosition, List<UnitPosition>> removedOf = new LinkedHashMap<>();
        int spare = 0;
        for (int g = 0; g < model.groupCount; g++) {
            for (int i = 0; i < choice.filled()[g]; i++) {
                UnitPosition p = open.get(g).get(i);
                filledPositions.add(p);
                changes.put(p, new Content.FromStock(spares.get(spare++)));
            }
            for (int i = 0; i < choice.removed()[g]; i++) {
                UnitPosition p = removable.get(g).get(i);
                removedOf.put(p, removable.get(g));
                changes.put(p, new Content.Nothing());
            }
        }
        improve(changes, filledPositions, removedOf);
        Arrangement after = start.with(changes);
        StageState state = stateOf(after);
        List<String> empty = stage.positions().stream()
                .filter(p -> after.at(p) instanceof Content.Nothing)
                .map(UnitPosition::name)
                .toList();
        UnbalanceSignal signal = model.signals.getFirst();
        double base = UnbalanceSignal.base(bank, stage, signal.kind()) * model.rise(signal.kind());
        return new Way(
                new RunOn.Option(
                        title,
                        empty,
                        after.movesFrom(start),
                        empty.size() * stage.unit().ratedVars(),
                        state.excess() == 0.0
                                && state.highestUnitPerRated() <= FitLimits.VOLTS_PER_RATED * (1.0 + 1e-9),
                        state.highestUnitPerRated(),
                        signal.words(),
                        Math.sqrt(state.squared()) * base,
                        unit(signal.kind()),
                        RunOnSettings.of(bank, stage, model, after)),
                after);
    }

    private static String unit(UnbalanceSignal.Kind kind) {
        return switch (kind) {
            case NEUTRAL_VOLTS, TAP -> "V";
            case NEUTRAL_AMPERES, BETWEEN_NEUTRALS, DIFFERENTIAL, BRIDGE -> "A";
            case LEG_DEVIATION -> "";
        };
    }

    /** Takes another unit of the same group out, or exchanges two spares, as long as that helps. */
    private void improve(
            Map<UnitPosition, Content> changes,
            List<UnitPosition> filled,
            Map<UnitPosition, List<UnitPosition>> removedOf) {
        boolean better = true;
        StageState state = stateOf(start.with(changes));
        double excess = state.excess();
        double squared = state.squared();
        while (better) {
            better = false;
            for (UnitPosition out : List.copyOf(removedOf.keySet())) {
                for (UnitPosition other : removedOf.getOrDefault(out, List.of())) {
                    if (changes.containsKey(other) || !changes.containsKey(out)) {
                        continue;
                    }
                    Map<UnitPosition, Content> trial = new HashMap<>(changes);
                    trial.remove(out);
                    trial.put(other, new Content.Nothing());
                    StageState t = stateOf(start.with(trial));
                    if (Found.better(t.excess(), t.squared(), excess, squared)) {
                        excess = t.excess();
                        squared = t.squared();
                        List<UnitPosition> group = removedOf.getOrDefault(out, List.of());
                        removedOf.remove(out);
                        removedOf.put(other, group);
                        changes.remove(out);
                        changes.put(other, new Content.Nothing());
                        better = true;
                        break;
                    }
                }
            }
            for (int a = 0; a < filled.size(); a++) {
                for (int b = a + 1; b < filled.size(); b++) {
                    Map<UnitPosition, Content> trial = new HashMap<>(changes);
                    Content first = trial.getOrDefault(filled.get(a), new Content.Nothing());
                    trial.put(filled.get(a), trial.getOrDefault(filled.get(b), new Content.Nothing()));
                    trial.put(filled.get(b), first);
                    StageState t = stateOf(start.with(trial));
                    if (Found.better(t.excess(), t.squared(), excess, squared)) {
                        excess = t.excess();
                        squared = t.squared();
                        changes.putAll(trial);
                        better = true;
                    }
                }
            }
        }
    }

    private StageState stateOf(Arrangement arrangement) {
        double[] sums = new double[model.groupCount];
        for (UnitPosition position : stage.positions()) {
            sums[model.groupOf(position)] += arrangement.farads(position);
        }
        return new StageState(model, sums);
    }
}
