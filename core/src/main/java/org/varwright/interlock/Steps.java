package org.varwright.interlock;

import java.util.ArrayList;
import java.util.List;

/** Replays moves from the start. */
final class Steps {
    private Steps() {}

    static List<Step> replay(Scheme scheme, List<Move> moves) {
        List<Step> steps = new ArrayList<>();
        State state = scheme.start();
        for (Move move : moves) {
            state = scheme.apply(state, move);
            steps.add(new Step(move, state));
        }
        return List.copyOf(steps);
    }
}
