package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.ToIntFunction;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyCopies;

/** The guided search against the plain uniform-cost search, and the pairs against every reachable state. */
class GuidedSearchOracleTest {
    private static final int LIMIT = 200_000;

    private static int price(Move move) {
        return switch (move) {
            case Move.Operate operate -> operate.device().startsWith("52") ? 10 : 2;
            case Move.OpenDoor ignored -> 2;
            case Move.CloseDoor ignored -> 2;
            case Move.Withdraw ignored -> 1;
            case Move.Extend ignored -> 1;
            case Move.Give ignored -> 1;
            case Move.Return ignored -> 1;
            case Move.Wait ignored -> 1;
        };
    }

    /** Moves that break nothing by themselves. */
    private static Search.Way safe(Scheme scheme) {
        return (before, move, after) ->
                scheme.brokenBy(before, new Step(move, after)).isEmpty();
    }

    private static void assertSame(Scheme scheme, State start, Needs needs, Search.Way way, String where) {
        ToIntFunction<Move> cost = GuidedSearchOracleTest::price;
        Search.Result plain = Search.cheapest(scheme, start, needs.guard::holds, way, cost, LIMIT);
        Search.Result guided = GuidedSearch.cheapest(scheme, start, needs, s -> true, way, cost, LIMIT);
        if (plain instanceof Search.Result.Found expected) {
            Search.Result.Found found = (Search.Result.Found) guided;
            assertEquals(expected.cost(), found.cost(), where);
            assertEquals(expected.path(), found.path(), where);
        } else {
            assertTrue(guided instanceof Search.Result.None, where + ": " + guided);
        }
    }

    @Test
    void everyWayInAndBackOfTheExampleIsTheSame() {
        Scheme scheme = Schemes.enclosed(3).scheme();
        for (String door : List.of("controls", "incoming", "bay 1", "bay 2", "bay 3")) {
            Needs open = Needs.open(scheme, List.of(door));
            assertSame(scheme, scheme.start(), open, (b, m, a) -> true, door);
            assertSame(scheme, scheme.start(), open, safe(scheme), door + ", safe");
            if (GuidedSearch.cheapest(
                            scheme,
                            scheme.start(),
                            open,
                            s -> true,
                            (b, m, a) -> true,
                            GuidedSearchOracleTest::price,
                            LIMIT)
                    instanceof Search.Result.Found in) {
                Needs home = Needs.everythingOf(scheme, scheme.inService());
                assertSame(scheme, in.path().getLast().after(), home, (b, m, a) -> true, door + ", back");
            }
        }
    }

    @Test
    void randomSchemesAndStartsGiveTheSameWay() {
        for (int round = 0; round < 60; round++) {
            long seed = 71_000L + round;
            Random random = new Random(seed);
            Isolation whole = Schemes.enclosed(2).isolation();
            List<org.varwright.bank.Lock> locks = new ArrayList<>(whole.locks());
            for (int n = random.nextInt(3); n > 0; n--) {
                locks.remove(random.nextInt(locks.size()));
            }
            List<KeyCopies> keys = new ArrayList<>();
            whole.keyNames().forEach(k -> {
                if (random.nextInt(8) == 0) {
                    keys.add(new KeyCopies(k, 2, java.util.Optional.empty()));
                }
            });
            boolean first = locks.stream().anyMatch(l -> l.on().name().equals("43-2"));
            Isolation isolation = new Isolation(
                    whole.sources(),
                    whole.devices(),
                    whole.compartments(),
                    locks,
                    keys,
                    whole.exchanges(),
                    random.nextBoolean() ? whole.interlocks() : List.of(),
                    first && random.nextBoolean() ? whole.delays() : List.of(),
                    whole.start());
            Scheme scheme = Scheme.of(isolation, Schemes.enclosed(2).stages());
            State start = scheme.start();
            for (int n = random.nextInt(12); n > 0; n--) {
                List<Step> steps = scheme.steps(start);
                start = steps.get(random.nextInt(steps.size())).after();
            }
            String door = List.of("incoming", "bay 1", "bay 2").get(random.nextInt(3));
            Needs needs = Needs.open(scheme, List.of(door));
            assertSame(scheme, start, needs, (b, m, a) -> true, "seed " + seed + " " + door);
            assertSame(scheme, start, needs, safe(scheme), "seed " + seed + " " + door + ", safe");
        }
    }

    /** What pairs rule out is never so: over every reachable state, each device that is closed while a door is open is said to be closable then. */
    @Test
    void pairsRuleOutOnlyWhatIsNeverSo() {
        Scheme scheme = Schemes.enclosed(2).scheme();
        Set<State> seen = new HashSet<>(Set.of(scheme.start()));
        List<State> open = new ArrayList<>(seen);
        Set<String> reallyWithBay1 = new HashSet<>();
        while (!open.isEmpty()) {
            State state = open.removeLast();
            if (scheme.doors(state).getOrDefault("bay 1", false)) {
                scheme.positions(state).forEach((name, position) -> {
                    if (position.equals(Device.CLOSED)) {
                        reallyWithBay1.add(name);
                    }
                });
            }
            for (Step step : scheme.steps(state)) {
                if (seen.add(step.after())) {
                    open.add(step.after());
                }
            }
        }
        Set<String> closable =
                GuidedSearch.closableWithOpenDoors(scheme, scheme.start(), Needs.open(scheme, List.of("bay 1")));
        assertTrue(closable.containsAll(reallyWithBay1), reallyWithBay1 + " " + closable);
        assertEquals(Set.of("52-7", "57-2"), closable, "pairs are exact here");
    }

    /** Twelve stages have far too many states to look at one by one. */
    @Test
    void twelveStagesAreDecided() {
        Scheme scheme = Schemes.enclosed(12).scheme();
        Search.Result.Found found = (Search.Result.Found) GuidedSearch.cheapest(
                scheme,
                scheme.start(),
                Needs.open(scheme, List.of("bay 7")),
                s -> true,
                safe(scheme),
                GuidedSearchOracleTest::price,
                10_000);
        assertEquals(12 * 3 + 15, found.cost());
        assertTrue(found.explored() < 1_000, found.explored() + " states");
    }
}
