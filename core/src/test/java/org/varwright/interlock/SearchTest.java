package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SearchTest {
    private static final int LIMIT = 100_000;
    private final Scheme scheme = Schemes.enclosed(4).scheme();

    @Test
    void theCheapestWayIntoABayIsTheOneThatTheKeysPrescribe() {
        Search.Result result = Search.cheapest(
                scheme,
                scheme.start(),
                s -> scheme.doors(s).getOrDefault("bay 1", false),
                (before, move, after) -> true,
                m -> 1,
                LIMIT);
        Search.Result.Found found = assertInstanceOf(Search.Result.Found.class, result);
        List<String> moves = found.path().stream().map(s -> s.move().text()).toList();
        // four switches opened and waited for, selector off and locked, 89-2 unlocked, opened, locked, 57-2 unlocked,
        // closed, locked, exchange, bay
        assertEquals(8 + 2 + 3 + 3 + 1 + 2, found.cost(), String.join("\n", moves));
        assertTrue(moves.contains("open 89-2"));
        State last = found.path().getLast().after();
        assertEquals(ConductorState.GROUNDED, scheme.conductors(last).get("bus"));
        assertEquals(ConductorState.LIVE, scheme.conductors(last).get("cable"));
        assertEquals(ConductorState.FLOATING, scheme.conductors(last).get("stage 1"));
    }

    @Test
    void equalWaysAreOrderedByName() {
        Search.Result.Found found = assertInstanceOf(
                Search.Result.Found.class,
                Search.cheapest(
                        scheme,
                        scheme.start(),
                        s -> !scheme.charges(s).containsValue(true),
                        (before, move, after) -> true,
                        m -> 1,
                        LIMIT));
        assertEquals(
                List.of("52-7", "stage 1", "stage 2", "stage 3", "stage 4"),
                found.path().stream().map(s -> s.move().what()).toList());
    }

    @Test
    void aStateThatTheLocksAllowIsFoundWithItsStagesCharged() {
        StartState.Reachable reachable = assertInstanceOf(
                StartState.Reachable.class,
                StartState.of(scheme, Map.of("24-1", "open", "52-7", "withdrawn"), Set.of(), LIMIT));
        assertEquals("withdrawn", scheme.positions(reachable.state()).get("52-7"));
        assertFalse(scheme.charges(reachable.state()).containsValue(false));
    }

    @Test
    void aStateThatTheLocksForbidIsRefusedWithTheReason() {
        StartState.Refused half = assertInstanceOf(
                StartState.Refused.class, StartState.of(scheme, Map.of("89-2", "open"), Set.of(), LIMIT));
        assertTrue(
                half.reasons().getFirst().contains("43-2 off"), half.reasons().toString());
        StartState.Refused never = assertInstanceOf(
                StartState.Refused.class,
                StartState.of(scheme, Map.of("89-2", "closed", "57-2", "closed"), Set.of(), LIMIT));
        assertTrue(
                never.reasons().getFirst().startsWith("no sequence of moves"),
                never.reasons().toString());
        StartState.Refused unknown = assertInstanceOf(
                StartState.Refused.class, StartState.of(scheme, Map.of("89-9", "open"), Set.of("attic"), LIMIT));
        assertEquals(2, unknown.reasons().size());
    }
}
