package org.varwright.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Runs through the plans by number of extra lifts and picks by the order of aims. */
final class Search {
    /** Plans that are tried for one number of extra lifts at most; a count, not a time, so that every machine gives the same answer. */
    static final double MOST_PLANS = 1.5e8;

    /** Extra lifts that the descent may use. */
    static final int MOST_DESCENT = 40;

    private Search() {}

    /**
     * What the search says.
     *
     * @param chosen the plan
     * @param more plans with more lifts than the chosen and less unbalance, by number of lifts
     * @param provenBest whether it is proven best in the sense of {@code proof}
     * @param proof in words
     * @param examined plans evaluated
     */
    record Answer(Found chosen, List<Found> more, boolean provenBest, String proof, long examined) {}

    /** The puzzle must have a spare that fits for every open place. */
    static Answer run(Puzzle puzzle, FitOptions options) {
        if (puzzle.groupCount() == 0) {
            Found nothing = new Found(0, 0.0, 0.0, new int[0], new int[0], new int[0], new int[0]);
            return new Answer(nothing, List.of(), true, "nothing has to be lifted", 0);
        }
        Exhaustive exhaustive = new Exhaustive(puzzle, options.extraLifts());
        List<Optional<Found>> levels = new ArrayList<>();
        for (int n = 0; n <= options.extraLifts() && Exhaustive.plans(puzzle, n) <= MOST_PLANS; n++) {
            levels.add(exhaustive.best(n));
        }
        return switch (options.aim()) {
            case FEWEST_LIFTS -> fewestLifts(puzzle, levels, exhaustive);
            case LEAST_UNBALANCE -> leastUnbalance(puzzle, options, levels, exhaustive);
        };
    }

    private static Answer fewestLifts(Puzzle puzzle, List<Optional<Found>> levels, Exhaustive exhaustive) {
        for (int n = 0; n < levels.size(); n++) {
            if (levels.get(n).isPresent() && levels.get(n).get().excess() == 0.0) {
                Found chosen = levels.get(n).get();
                String proof = n == 0
                        ? "proven best: every plan without extra lifts was tried, and no plan has fewer lifts"
                        : "proven best: no plan with fewer than " + lifts(n)
                                + " keeps every limit, and every plan with as many was tried";
                return new Answer(chosen, better(levels, n), true, proof, exhaustive.examined());
            }
        }
        Optional<Found> seed = leastBad(levels);
        Found start = seed.orElseGet(() -> Greedy.fill(puzzle));
        Descent descent = new Descent(puzzle);
        Found found = descent.run(start, true, MOST_DESCENT);
        long examined = exhaustive.examined() + descent.examined();
        String tried = levels.isEmpty()
                ? "not proven best: there are too many plans to try all of them"
                : "not proven best: none of all plans with up to " + lifts(levels.size() - 1) + " keeps every limit";
        if (found.excess() == 0.0) {
            String how = tried + "; this one was found by exchanging two units at a time";
            return new Answer(found, List.of(), false, how, examined);
        }
        Found fewest = levels.isEmpty() ? start : levels.getFirst().orElse(start);
        String how = tried + ", and none was found with more; this one has the fewest lifts";
        return new Answer(fewest, List.of(), false, how, examined);
    }

    private static Answer leastUnbalance(
            Puzzle puzzle, FitOptions options, List<Optional<Found>> levels, Exhaustive exhaustive) {
        Optional<Found> best = leastBad(levels);
        if (levels.size() == options.extraLifts() + 1 && best.isPresent()) {
            return new Answer(
                    best.get(),
                    List.of(),
                    true,
                    "proven best among all plans with at most " + lifts(options.extraLifts()),
                    exhaustive.examined());
        }
        Descent descent = new Descent(puzzle);
        Found found = descent.run(best.orElseGet(() -> Greedy.fill(puzzle)), false, options.extraLifts());
        return new Answer(
                found,
                List.of(),
                false,
                String.format(
                        Locale.ROOT,
                        "not proven best: all plans with up to %s were tried, those with more are too many; this one was"
                                + " found by exchanging two units at a time",
                        lifts(Math.max(0, levels.size() - 1))),
                exhaustive.examined() + descent.examined());
    }

    /** The best in limits, then unbalance; of equals the one with fewest lifts. */
    private static Optional<Found> leastBad(List<Optional<Found>> levels) {
        Optional<Found> best = Optional.empty();
        for (Optional<Found> level : levels) {
            if (level.isPresent()
                    && (best.isEmpty()
                            || level.get()
                                    .betterThan(best.get().excess(), best.get().squared()))) {
                best = level;
            }
        }
        return best;
    }

    private static List<Found> better(List<Optional<Found>> levels, int chosen) {
        List<Found> more = new ArrayList<>();
        double squared = levels.get(chosen).orElseThrow().squared();
        for (int n = chosen + 1; n < levels.size(); n++) {
            Optional<Found> level = levels.get(n);
            if (level.isPresent()
                    && level.get().excess() == 0.0
                    && Found.clearlyLess(level.get().squared(), squared)) {
                squared = level.get().squared();
                more.add(level.get());
            }
        }
        return more;
    }

    private static String lifts(int n) {
        return n == 0 ? "no extra lift" : n == 1 ? "1 extra lift" : n + " extra lifts";
    }
}
