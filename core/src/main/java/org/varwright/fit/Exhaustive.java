package org.varwright.fit;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Every plan with a given number of extra lifts, the best of them kept.
 *
 * <p><b>Model.</b> A plan's value depends only on the sum of capacitances in each group, so what is tried is: which classes of kept units leave their
 * group, to which open group each goes (or out for good), and which class of spare goes to each group still open. Orders that give the same sums are tried
 * once. The last spare of a plan is evaluated without touching the state (FIT-3).
 */
final class Exhaustive {
    private final Puzzle puzzle;
    private final List<Puzzle.Movable> movables;
    private final double[] farads;
    private final boolean[][] fits;
    private final SquaredBound[] bounds;
    private final StageState[] states;
    private final int[] open;
    private final int[] left;
    private final int[] used;
    private final int[] picked;
    private final int[] goesTo;
    private final boolean[] isOut;
    private final int[] slotGroup;
    private final int[] slotShelf;

    private int picks;
    private int slots;
    private int extra;
    private long examined;
    private double bestExcess;
    private double bestSquared;
    /** [stage] above this its alarm alone is broken further than in the best plan so far. */
    private final double[] mostSquared;

    private Optional<Found> best = Optional.empty();

    Exhaustive(Puzzle puzzle, int mostExtra) {
        this.puzzle = puzzle;
        this.movables = puzzle.movables();
        List<Puzzle.Shelf> shelf = puzzle.shelf();
        this.farads = shelf.stream().mapToDouble(Puzzle.Shelf::farads).toArray();
        this.fits = shelf.stream().map(Puzzle.Shelf::fits).toArray(boolean[][]::new);
        this.bounds = puzzle.stages().stream().map(SquaredBound::new).toArray(SquaredBound[]::new);
        this.states = puzzle.states();
        this.open = puzzle.open().clone();
        this.mostSquared = new double[puzzle.stages().size()];
        this.left = shelf.stream().mapToInt(s -> s.members().size()).toArray();
        this.used = new int[movables.size()];
        this.picked = new int[mostExtra];
        this.goesTo = new int[mostExtra];
        this.isOut = new boolean[mostExtra];
        this.slotGroup = new int[puzzle.openPlaces() + mostExtra];
        this.slotShelf = new int[puzzle.openPlaces() + mostExtra];
    }

    /** Plans evaluated so far. */
    long examined() {
        return examined;
    }

    /** The best of all plans with exactly {@code extraLifts} extra lifts; empty where there is none at all. */
    Optional<Found> best(int extraLifts) {
        extra = extraLifts;
        best = Optional.empty();
        bestExcess = Double.MAX_VALUE;
        bestSquared = Double.MAX_VALUE;
        Arrays.fill(mostSquared, Double.MAX_VALUE);
        for (int out = 0; 2 * out <= extraLifts; out++) {
            if (puzzle.openPlaces() + out <= puzzle.spares()) {
                pick(0, extraLifts - 2 * out, out);
            }
        }
        return best;
    }

    /**
     * Upper bound of the number of plans with so many extra lifts.
     *
     * <p><b>Model.</b> {@code Σ over o: C(m, r+o)·C(r+o, o)·(n+r+o)^r·s!/(s−n−o)!/∏(places of a group)!} with {@code r = extra − 2·o} units moved, {@code o} taken
     * out, {@code n} open places, {@code s} spares (FIT-4).
     */
    static double plans(Puzzle puzzle, int extra) {
        double sum = 0.0;
        int n = puzzle.openPlaces();
        int s = puzzle.spares();
        int units = puzzle.movables().size();
        double alike = 1.0;
        for (int o : puzzle.open()) {
            for (int i = 2; i <= o; i++) {
                alike *= i;
            }
        }
        for (int out = 0; 2 * out <= extra; out++) {
            int moved = extra - 2 * out;
            if (n + out > s || moved + out > units) {
                continue;
            }
            double plans = choose(units, moved + out) * choose(moved + out, out) * Math.pow(n + moved + out, moved);
            for (int i = 0; i < n + out; i++) {
                plans *= s - i;
            }
            sum += plans / alike;
        }
        return sum;
    }

    private static double choose(int n, int k) {
        double product = 1.0;
        for (int i = 0; i < k; i++) {
            product *= (n - i) / (double) (i + 1);
        }
        return product;
    }

    private void pick(int from, int moved, int out) {
        if (moved == 0 && out == 0) {
            send(0);
            return;
        }
        for (int k = from; k < movables.size(); k++) {
            Puzzle.Movable unit = movables.get(k);
            if (used[k] >= unit.members().size()) {
                continue;
            }
            double before = sum(unit.group());
            used[k]++;
            open[unit.group()]++;
            set(unit.group(), used[k] == unit.members().size() ? rest(unit, before) : before - unit.farads());
            picked[picks] = k;
            picks++;
            if (moved > 0) {
                isOut[picks - 1] = false;
                pick(k, moved - 1, out);
            }
            if (out > 0) {
                isOut[picks - 1] = true;
                pick(k, moved, out - 1);
            }
            picks--;
            set(unit.group(), before);
            open[unit.group()]--;
            used[k]--;
        }
    }

    /** An empty group holds exactly nothing, not a rounding error. */
    private static double rest(Puzzle.Movable unit, double before) {
        double rest = before - unit.farads();
        return rest < 1e-9 * unit.farads() ? 0.0 : rest;
    }

    private void send(int i) {
        if (i == picks) {
            collect();
            return;
        }
        Puzzle.Movable unit = movables.get(picked[i]);
        if (isOut[i]) {
            goesTo[i] = Found.OUT;
            send(i + 1);
            return;
        }
        for (int g = 0; g < open.length; g++) {
            if (open[g] == 0 || g == unit.group() || !unit.fits()[puzzle.stageOf()[g]]) {
                continue;
            }
            double before = sum(g);
            set(g, before + unit.farads());
            open[g]--;
            goesTo[i] = g;
            send(i + 1);
            open[g]++;
            set(g, before);
        }
    }

    private void collect() {
        slots = 0;
        for (int g = 0; g < open.length; g++) {
            for (int i = 0; i < open[g]; i++) {
                slotGroup[slots++] = g;
            }
        }
        if (slots == 0) {
            examined++;
            double squared = 0.0;
            for (StageState state : states) {
                squared += state.squared();
            }
            consider(squared);
        } else {
            fill(0);
        }
    }

    private void fill(int i) {
        int g = slotGroup[i];
        int stage = puzzle.stageOf()[g];
        int first = i > 0 && slotGroup[i - 1] == g ? slotShelf[i - 1] : 0;
        if (i == slots - 1) {
            last(g, stage, first);
            return;
        }
        for (int s = first; s < left.length; s++) {
            if (left[s] > 0 && fits[s][stage]) {
                double before = sum(g);
                set(g, before + farads[s]);
                left[s]--;
                slotShelf[i] = s;
                fill(i + 1);
                left[s]++;
                set(g, before);
            }
        }
    }

    private void last(int g, int stage, int first) {
        double others = 0.0;
        for (int t = 0; t < states.length; t++) {
            if (t != stage) {
                others += states[t].squared();
            }
        }
        StageState state = states[stage];
        state.aim(puzzle.localOf()[g]);
        if (outOfReach(state, stage, first, others)) {
            return;
        }
        for (int s = first; s < left.length; s++) {
            if (left[s] == 0 || !fits[s][stage]) {
                continue;
            }
            examined++;
            double own = state.squaredWith(farads[s]);
            double squared = others + own;
            if (own > mostSquared[stage] || (bestExcess == 0.0 && !Found.clearlyLess(squared, bestSquared))) {
                continue;
            }
            double before = sum(g);
            set(g, before + farads[s]);
            slotShelf[slots - 1] = s;
            consider(squared);
            set(g, before);
        }
    }

    /** Whether none of the spares left can be better than the best; they count as examined. */
    private boolean outOfReach(StageState state, int stage, int first, double others) {
        double fewest = Double.MAX_VALUE;
        double most = 0.0;
        int count = 0;
        for (int s = first; s < left.length; s++) {
            if (left[s] > 0 && fits[s][stage]) {
                fewest = Math.min(fewest, farads[s]);
                most = Math.max(most, farads[s]);
                count++;
            }
        }
        if (count < 2) {
            return false;
        }
        double least = bounds[stage].least(state, fewest, most);
        if (least <= mostSquared[stage] && (bestExcess > 0.0 || Found.clearlyLess(others + least, bestSquared))) {
            return false;
        }
        examined += count;
        return true;
    }

    private void consider(double squared) {
        if (bestExcess == 0.0 && !Found.clearlyLess(squared, bestSquared)) {
            return;
        }
        double excess = 0.0;
        for (StageState state : states) {
            excess += state.excess();
        }
        if (Found.better(excess, squared, bestExcess, bestSquared)) {
            bestExcess = excess;
            bestSquared = squared;
            for (int s = 0; s < states.length; s++) {
                mostSquared[s] = puzzle.stages().get(s).squaredAtExcess(excess);
            }
            best = Optional.of(new Found(
                    extra,
                    excess,
                    squared,
                    Arrays.copyOf(picked, picks),
                    Arrays.copyOf(goesTo, picks),
                    Arrays.copyOf(slotGroup, slots),
                    Arrays.copyOf(slotShelf, slots)));
        }
    }

    private double sum(int group) {
        return states[puzzle.stageOf()[group]].sums[puzzle.localOf()[group]];
    }

    private void set(int group, double farads) {
        states[puzzle.stageOf()[group]].set(puzzle.localOf()[group], farads);
    }
}
