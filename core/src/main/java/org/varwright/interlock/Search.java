package org.varwright.interlock;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;

/**
 * Finds the cheapest way from a state to one that fits, proven cheapest, the same every time.
 *
 * <p><b>Model.</b> Uniform-cost search over the states that the moves allow. Among equally cheap ways the one whose moves come first by name, compared move by
 * move from the start (ILK-6).
 */
public final class Search {
    /** By what is moved, then how, then to where. */
    static final Comparator<Move> BY_NAME = Comparator.comparing(Move::what)
            .thenComparing(Move::action)
            .thenComparing(m -> m.to().orElse(""))
            .thenComparing(m -> String.join(" ", m.keys()))
            .thenComparing(Move::text);

    private final Scheme scheme;
    private final Way allowed;
    private final ToIntFunction<Move> cost;
    private final Map<State, Integer> numbers = new HashMap<>();
    private final List<State> states = new ArrayList<>();
    private final List<Integer> costs = new ArrayList<>();
    private final List<List<Integer>> cheapestFrom = new ArrayList<>();

    private Search(Scheme scheme, Way allowed, ToIntFunction<Move> cost) {
        this.scheme = scheme;
        this.allowed = allowed;
        this.cost = cost;
    }

    /** Whether a way may lead over a move. */
    public interface Way {
        boolean allows(State before, Move move, State after);
    }

    /** What a search comes to. */
    public sealed interface Result {
        /**
         * The cheapest way.
         *
         * @param path the moves with the state after each; empty where the start fits
         * @param cost of the moves together
         * @param explored how many states were looked at
         */
        record Found(List<Step> path, int cost, int explored) implements Result {
            public Found {
                path = List.copyOf(path);
            }
        }

        /** Proven: no way leads there. */
        record None(int explored) implements Result {}

        /** Not known: the search was given up after {@code limit} states. Never to be read as safe or as impossible. */
        record Undecided(int limit) implements Result {}
    }

    /**
     * The cheapest way from a state to one that fits.
     *
     * @param goal what fits
     * @param allowed which moves may be used, judged with the states before and after
     * @param cost of a move, 1 or more
     * @param limit how many states may be looked at
     */
    public static Result cheapest(
            Scheme scheme, State start, Predicate<State> goal, Way allowed, ToIntFunction<Move> cost, int limit) {
        return new Search(scheme, allowed, cost).run(start, goal, limit);
    }

    private Result run(State start, Predicate<State> goal, int limit) {
        record Entry(int cost, int number) {}
        PriorityQueue<Entry> queue =
                new PriorityQueue<>(Comparator.comparingInt(Entry::cost).thenComparingInt(Entry::number));
        queue.add(new Entry(0, number(start, 0)));
        List<Integer> goals = new ArrayList<>();
        int best = Integer.MAX_VALUE;
        int explored = 0;
        while (!queue.isEmpty()) {
            Entry entry = queue.remove();
            if (entry.cost() > costs.get(entry.number())) {
                continue;
            }
            if (entry.cost() > best) {
                break;
            }
            State state = states.get(entry.number());
            explored++;
            if (goal.test(state)) {
                best = entry.cost();
                goals.add(entry.number());
                continue;
            }
            for (Step step : scheme.steps(state)) {
                if (!allowed.allows(state, step.move(), step.after())) {
                    continue;
                }
                int through = entry.cost() + requirePositive(cost.applyAsInt(step.move()));
                int next = number(step.after(), through);
                if (through < costs.get(next)) {
                    costs.set(next, through);
                    cheapestFrom.get(next).clear();
                }
                if (through == costs.get(next)) {
                    List<Integer> from = cheapestFrom.get(next);
                    if (from.isEmpty()) {
                        queue.add(new Entry(through, next));
                    }
                    if (!from.contains(entry.number())) {
                        from.add(entry.number());
                    }
                }
            }
            if (states.size() > limit) {
                return new Result.Undecided(limit);
            }
        }
        return goals.isEmpty()
                ? new Result.None(explored)
                : new Result.Found(firstByName(start, goals), best, explored);
    }

    private static int requirePositive(int cost) {
        if (cost < 1) {
            throw new IllegalArgumentException("a move costs 1 or more, not " + cost);
        }
        return cost;
    }

    private int number(State state, int cost) {
        Integer known = numbers.get(state);
        if (known != null) {
            return known;
        }
        numbers.put(state, states.size());
        states.add(state);
        costs.add(cost);
        cheapestFrom.add(new ArrayList<>(2));
        return states.size() - 1;
    }

    /** Of all cheapest ways to the goals, the first by name. */
    private List<Step> firstByName(State start, List<Integer> goals) {
        boolean[] onWay = new boolean[states.size()];
        List<Integer> open = new ArrayList<>(goals);
        open.forEach(g -> onWay[g] = true);
        while (!open.isEmpty()) {
            for (int from : cheapestFrom.get(open.removeLast())) {
                if (!onWay[from]) {
                    onWay[from] = true;
                    open.add(from);
                }
            }
        }
        List<Step> path = new ArrayList<>();
        State state = start;
        while (!goals.contains(numbers.get(state))) {
            State at = state;
            int spent = costOf(at);
            Step first = scheme.steps(at).stream()
                    .filter(s -> numbers.containsKey(s.after())
                            && onWay[numberOf(s.after())]
                            && allowed.allows(at, s.move(), s.after())
                            && spent + cost.applyAsInt(s.move()) == costOf(s.after()))
                    .min(Comparator.comparing(Step::move, BY_NAME))
                    .orElseThrow();
            path.add(first);
            state = first.after();
        }
        return path;
    }

    private int numberOf(State state) {
        return numbers.getOrDefault(state, -1);
    }

    private int costOf(State state) {
        return costs.get(numberOf(state));
    }
}
