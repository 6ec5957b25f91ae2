package org.varwright.interlock;

import java.util.ArrayList;
import java.util.List;

/** Finds the moves that led to a state, by undoing rules and asking the table of states seen. */
final class WayBack {
    private final Scheme scheme;
    private final Expansion expansion;
    private final StateTable table;
    private final long start;
    private final List<Long> numbers = new ArrayList<>();

    WayBack(Scheme scheme, Expansion expansion, StateTable table) {
        this.scheme = scheme;
        this.expansion = expansion;
        this.table = table;
        start = expansion.number(scheme.start());
    }

    /** The numbers of the states on a shortest way from the start, which is left out, to a state that lies this deep. */
    List<Long> to(long state, int depth) {
        numbers.clear();
        if (!back(state, depth)) {
            throw new IllegalStateException("no way back from a state that was reached");
        }
        return List.copyOf(numbers.reversed());
    }

    /** Depths are remembered modulo {@link StateTable#DEPTHS}; a wrong turn that this allows ends away from the start and is taken back. */
    private boolean back(long number, int depth) {
        if (depth == 0) {
            return number == start;
        }
        State after = expansion.state(number);
        for (Rule rule : scheme.rules().reversed()) {
            if (!rule.effect().holds(after)) {
                continue;
            }
            for (State before : undone(rule, after)) {
                long beforeNumber = expansion.number(before);
                if (StateTable.hasDepth(table.get(beforeNumber), depth - 1) && leads(beforeNumber, number)) {
                    numbers.add(number);
                    if (back(beforeNumber, depth - 1)) {
                        return true;
                    }
                    numbers.removeLast();
                }
            }
        }
        return false;
    }

    /** States from which the rule can have led here; stages that it made live may have been charged before or not. */
    private List<State> undone(Rule rule, State after) {
        State bare = rule.guard().applyTo(after);
        if (rule.switching() == 0) {
            return List.of(bare);
        }
        long made = expansion.circuit(after.plant()).liveStages & ~expansion.circuit(bare.plant()).liveStages;
        List<State> all = new ArrayList<>();
        long subset = made;
        while (true) {
            all.add(new State((bare.plant() & ~made) | subset, bare.access()));
            if (subset == 0) {
                return all;
            }
            subset = (subset - 1) & made;
        }
    }

    private boolean leads(long before, long after) {
        int count = expansion.of(before);
        for (int m = 0; m < count; m++) {
            if (expansion.after[m] == after) {
                return true;
            }
        }
        return false;
    }
}
