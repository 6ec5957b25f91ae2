package org.varwright.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.interlock.KeyPlace;
import org.varwright.interlock.Move;
import org.varwright.interlock.Scheme;
import org.varwright.interlock.State;

class DrawingStateTest {
    static List<Path> examples() throws IOException {
        return OneLineDrawingTest.examples().toList();
    }

    @ParameterizedTest
    @MethodSource("examples")
    void inServiceIsTheSchemesOwn(Path file) {
        Bank bank = OneLineDrawingTest.read(file);
        Scheme scheme = Scheme.of(bank);
        assertEquals(SchemeDrawing.state(bank, scheme, scheme.inService(), "in service"), DrawingState.inService(bank));
    }

    /** Walks at random through states and compares with the scheme, which works it out in another way. */
    @ParameterizedTest
    @MethodSource("examples")
    void conductorsAndKeysAreThoseOfTheScheme(Path file) {
        Bank bank = OneLineDrawingTest.read(file);
        Scheme scheme = Scheme.of(bank);
        SplittableRandom random = new SplittableRandom(7);
        State state = scheme.start();
        Set<ConductorState> seen = new LinkedHashSet<>();
        for (int step = 0; step < 2_000; step++) {
            DrawingState drawn = SchemeDrawing.state(bank, scheme, state, "step " + step);
            Map<String, ConductorState> expected = new LinkedHashMap<>();
            scheme.conductors(state).forEach((c, s) -> expected.put(c, ConductorState.valueOf(s.name())));
            assertEquals(expected, drawn.conductors(), "step " + step);
            seen.addAll(drawn.conductors().values());
            scheme.keys(state).forEach((key, places) -> {
                boolean free = places.stream().allMatch(p -> p instanceof KeyPlace.Free);
                assertEquals(free, drawn.keys().getOrDefault(key, "").equals(DrawingState.FREE), key);
            });
            List<Move> moves = scheme.moves(state);
            state = scheme.apply(state, moves.get(random.nextInt(moves.size())));
        }
        assertTrue(seen.contains(ConductorState.LIVE) && seen.contains(ConductorState.CHARGED), seen.toString());
    }

    @Test
    void aDeviceWithUnknownPositionMakesWhatItMayJoinUnknown() {
        Bank bank = OneLineDrawingTest.tamarack();
        Map<String, String> positions =
                new LinkedHashMap<>(DrawingState.inService(bank).positions());
        positions.put("52-7", "open");
        positions.remove("89-2");
        DrawingState dead = DrawingState.of(bank, "x", positions, Set.of(), List.of(), Set.of(), Set.of());
        assertEquals(ConductorState.FLOATING, dead.conductor("bus"));
        positions.put("52-7", "closed");
        DrawingState maybe = DrawingState.of(bank, "x", positions, Set.of(), List.of(), Set.of(), Set.of());
        assertEquals(ConductorState.LIVE, maybe.conductor("cable"));
        assertEquals(ConductorState.UNKNOWN, maybe.conductor("bus"));
        assertEquals(ConductorState.UNKNOWN, maybe.conductor("stage 1"));
        positions.put("57-2", "closed");
        DrawingState grounded = DrawingState.of(bank, "x", positions, Set.of(), List.of(), Set.of(), Set.of());
        assertEquals(ConductorState.UNKNOWN, grounded.conductor("bus"));
    }

    @Test
    void aPositionThatTheKindDoesNotHaveIsUnknownToo() {
        Bank bank = OneLineDrawingTest.tamarack();
        Map<String, String> positions =
                new LinkedHashMap<>(DrawingState.inService(bank).positions());
        positions.put("89-2", "ajar");
        Set<String> charged = Set.copyOf(bank.stages().stream().map(Stage::name).toList());
        DrawingState state = DrawingState.of(bank, "x", positions, Set.of(), List.of(), Set.of(), charged);
        assertEquals(ConductorState.UNKNOWN, state.conductor("bus"));
    }

    @Test
    void theStartStateTakesTheFilesPositions() {
        Bank bank = OneLineDrawingTest.tamarack();
        assertEquals(
                DrawingState.inService(bank).conductors(),
                DrawingState.atStart(bank).conductors());
    }
}
