package org.varwright.interlock;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import org.varwright.bank.Device;

/**
 * Finds what {@link Search} finds, the same way to the last move, but looks only where a bound says that something cheap can still lie.
 *
 * <p><b>Model.</b> A* with {@link Bound}; then move by move the first by name from which the rest can still be made at the cost that is left, found or ruled out by
 * bounded searches that remember what they have proven (ILK-10).
 */
public final class GuidedSearch {
    private final Scheme scheme;
    private final Predicate<State> goal;
    private final Search.Way allowed;
    private final ToIntFunction<Move> cost;
    private final Bound bound;
    private final int limit;
    /** Costs from states to the nearest goal, where known. */
    private final Map<State, Integer> exact = new HashMap<>();
    /** Costs that are proven not to be enough, plus one. */
    private final Map<State, Integer> atLeast = new HashMap<>();

    private int explored;
    private boolean gaveUp;

    private GuidedSearch(
            Scheme scheme,
            Predicate<State> goal,
            Search.Way allowed,
            ToIntFunction<Move> cost,
            Bound bound,
            int limit) {
        this.scheme = scheme;
        this.goal = goal;
        this.allowed = allowed;
        this.cost = cost;
        this.bound = bound;
        this.limit = limit;
    }

    /**
     * The cheapest way from a state to one that fits, the first by name among equally cheap ones.
     *
     * @param needs what every state that fits has; the more it says, the less is looked at
     * @param goal what fits
     * @param allowed which moves may be used, judged with the states before and after
     * @param cost of a move, 1 or more
     * @param limit how many states may be looked at
     */
    public static Search.Result cheapest(
            Scheme scheme,
            State start,
            Needs needs,
            Predicate<State> goal,
            Search.Way allowed,
            ToIntFunction<Move> cost,
            int limit) {
        if (!new Pairs(scheme, start).canHold(needs.guard, needs.guard)) {
            return new Search.Result.None(0);
        }
        Predicate<State> fits = state -> needs.guard.holds(state) && goal.test(state);
        return new GuidedSearch(scheme, fits, allowed, cost, new Bound(scheme, needs, cost), limit).run(start);
    }

    /**
     * Devices that can be closed in some reachable state in which these doors are open, at most.
     *
     * @param start from which it is to be reached
     */
    public static Set<String> closableWithOpenDoors(Scheme scheme, State start, Needs doors) {
        Pairs pairs = new Pairs(scheme, start);
        Set<String> names = new HashSet<>();
        for (Device device : scheme.layout().switching) {
            if (pairs.canHold(scheme.layout().device(device, Device.CLOSED), doors.guard)) {
                names.add(device.name());
            }
        }
        return names;
    }

    private Search.Result run(State start) {
        int best = solve(start, Integer.MAX_VALUE);
        if (gaveUp) {
            return new Search.Result.Undecided(limit);
        }
        if (best < 0) {
            return new Search.Result.None(explored);
        }
        List<Step> path = new ArrayList<>();
        State at = start;
        int left = best;
        while (left > 0) {
            State here = at;
            List<Step> steps = new ArrayList<>(scheme.steps(here));
            steps.sort(Comparator.comparing(Step::move, Search.BY_NAME));
            Step next = null;
            for (Step step : steps) {
                int rest = left - cost.applyAsInt(step.move());
                if (rest >= 0 && allowed.allows(here, step.move(), step.after()) && solve(step.after(), rest) == rest) {
                    next = step;
                    left = rest;
                    break;
                }
                if (gaveUp) {
                    return new Search.Result.Undecided(limit);
                }
            }
            if (next == null) {
                throw new IllegalStateException("the cheapest way is lost at " + here);
            }
            path.add(next);
            at = next.after();
        }
        return new Search.Result.Found(path, best, explored);
    }

    private int estimate(State state) {
        Integer known = exact.get(state);
        if (known != null) {
            return known;
        }
        int computed = bound.of(state);
        return computed < 0 ? -1 : Math.max(computed, atLeast.getOrDefault(state, 0));
    }

    private record Entry(int total, int spent, int order, State state) {
        /** Least total first; among equals the one nearest to the goal, then the latest. */
        static final Comparator<Entry> NEAREST = Comparator.comparingInt(Entry::total)
                .thenComparing(Comparator.comparingInt(Entry::spent).reversed())
                .thenComparing(Comparator.comparingInt(Entry::order).reversed());
    }

    /** The cost from a state to the nearest goal, −1 where it is more than {@code most} or there is none. */
    private int solve(State from, int most) {
        int first = estimate(from);
        if (first < 0 || first > most) {
            return -1;
        }
        Map<State, Integer> spent = new HashMap<>();
        Map<State, State> parent = new HashMap<>();
        PriorityQueue<Entry> queue = new PriorityQueue<>(Entry.NEAREST);
        spent.put(from, 0);
        queue.add(new Entry(first, 0, 0, from));
        int order = 0;
        while (!queue.isEmpty()) {
            Entry entry = queue.remove();
            State state = entry.state();
            if (entry.spent() > spent.getOrDefault(state, Integer.MAX_VALUE)) {
                continue;
            }
            if (exact.containsKey(state) || goal.test(state)) {
                int total = entry.spent() + exact.getOrDefault(state, 0);
                remember(from, state, total, spent, parent);
                return total;
            }
            explored++;
            if (explored > limit) {
                gaveUp = true;
                return -1;
            }
            for (Step step : scheme.steps(state)) {
                State after = step.after();
                int through = entry.spent() + cost.applyAsInt(step.move());
                if (through >= spent.getOrDefault(after, Integer.MAX_VALUE)
                        || !allowed.allows(state, step.move(), after)) {
                    continue;
                }
                int rest = estimate(after);
                if (rest < 0 || rest > most - through) {
                    continue;
                }
                spent.put(after, through);
                parent.put(after, state);
                queue.add(new Entry(through + rest, through, ++order, after));
            }
        }
        // none of these reaches a goal within what was left of the cost
        if (most != Integer.MAX_VALUE) {
            spent.forEach((state, used) -> atLeast.merge(state, most - used + 1, Math::max));
        }
        return -1;
    }

    private void remember(State from, State end, int total, Map<State, Integer> spent, Map<State, State> parent) {
        List<State> way = new ArrayList<>(List.of(end));
        while (!way.getLast().equals(from)) {
            way.add(parent.getOrDefault(way.getLast(), from));
        }
        Collections.reverse(way);
        for (State state : way) {
            exact.put(state, total - spent.getOrDefault(state, 0));
        }
    }
}
