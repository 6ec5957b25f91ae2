package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayDeque;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SchemeTest {
    @Test
    void theExampleHasTheStatesAndMovesOfItsDescription() {
        Scheme scheme = Schemes.enclosed(4).scheme();
        Set<State> seen = new HashSet<>(Set.of(scheme.start()));
        ArrayDeque<State> queue = new ArrayDeque<>(seen);
        int moves = 0;
        while (!queue.isEmpty()) {
            State state = queue.remove();
            for (Move move : scheme.moves(state)) {
                moves++;
                State next = scheme.apply(state, move);
                if (seen.add(next)) {
                    queue.add(next);
                }
            }
        }
        assertEquals(6122, seen.size());
        assertEquals(58228, moves);
    }
}
