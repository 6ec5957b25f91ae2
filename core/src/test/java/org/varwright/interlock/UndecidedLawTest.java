package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;

/** Given up early, an answer is the one that it would have been, or not known: never enforced, never "no way", never harmless. */
class UndecidedLawTest {
    private static final long MEMORY = 1_000_000_000L;
    private static final int SEEDS = 25;

    /** What is said of each property must be what the whole search says, or nothing. */
    private static int assertNothingMore(Verification whole, Verification early, String where) {
        int undecided = 0;
        for (Property property : Property.values()) {
            String at = where + ", " + property.id();
            switch (early.outcome(property)) {
                case Verification.Outcome.Enforced enforced -> {
                    assertTrue(early.complete() && whole.isEnforced(property), at);
                    assertEquals(whole.states(), enforced.states(), at);
                }
                case Verification.Outcome.NotEnforced broken -> {
                    Verification.Outcome.NotEnforced full =
                            assertInstanceOf(Verification.Outcome.NotEnforced.class, whole.outcome(property), at);
                    assertEquals(full.path().size(), broken.path().size(), at + ": no shorter way");
                }
                case Verification.Outcome.Undecided open -> {
                    assertFalse(early.complete() || open.limit().isBlank(), at);
                    undecided++;
                }
            }
        }
        return undecided;
    }

    @Test
    void stoppedAtAnyDepthNothingIsEnforced() {
        int undecided = 0;
        for (long seed = 1; seed <= SEEDS; seed++) {
            Scheme scheme = RandomScheme.of(seed).scheme();
            Verification whole = Verifier.verify(scheme, MEMORY, Verifier.Progress.SILENT);
            for (int most = 0; most <= whole.depth(); most += 1 + most / 4) {
                int depth = most;
                Verification early = Verifier.verify(scheme, MEMORY, (states, moves, d) -> d < depth);
                undecided += assertNothingMore(whole, early, "seed " + seed + ", stopped at depth " + depth);
            }
        }
        assertTrue(undecided > SEEDS, undecided + " undecided");
    }

    @Test
    void stoppedWhileItLooksForTheWayHomeNothingIsEnforced() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            Scheme scheme = RandomScheme.of(seed).scheme();
            Verification whole = Verifier.verify(scheme, MEMORY, Verifier.Progress.SILENT);
            int[] asked = {0};
            Verifier.verify(scheme, MEMORY, (states, moves, d) -> {
                asked[0]++;
                return true;
            });
            for (int last = 1; last <= asked[0]; last++) {
                int until = last;
                int[] times = {0};
                Verification early = Verifier.verify(scheme, MEMORY, (states, moves, d) -> ++times[0] < until);
                assertNothingMore(whole, early, "seed " + seed + ", stopped at question " + until);
                assertFalse(early.complete(), "seed " + seed + ", stopped at question " + until);
            }
        }
    }

    @Test
    void withLittleMemoryNothingIsEnforced() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            Scheme scheme = RandomScheme.of(seed).scheme();
            Verification whole = Verifier.verify(scheme, MEMORY, Verifier.Progress.SILENT);
            for (long bytes : new long[] {0, 100_000, 150_000, 200_000}) {
                assertNothingMore(
                        whole,
                        Verifier.verify(scheme, bytes, Verifier.Progress.SILENT),
                        "seed " + seed + ", " + bytes + " bytes");
            }
        }
        Verification none = Verifier.verify(Schemes.enclosed(2).scheme(), 0, Verifier.Progress.SILENT);
        assertFalse(none.complete());
        assertInstanceOf(Verification.Outcome.Undecided.class, none.outcome(Property.CLOSED_TO_GROUND));
    }

    @Test
    void aSearchWithFewStatesFindsTheSameWayOrDoesNotKnow() {
        Scheme scheme = Schemes.enclosed(2).scheme();
        Search.Way safe = (before, move, after) ->
                scheme.brokenBy(before, new Step(move, after)).isEmpty();
        for (String door : List.of("bay 1", "incoming")) {
            for (Search.Way way : List.<Search.Way>of((b, m, a) -> true, safe)) {
                Needs open = Needs.open(scheme, List.of(door));
                Search.Result guided = guided(scheme, open, way, 100_000);
                Search.Result plain = plain(scheme, open, way, 100_000);
                Set<String> kinds = new TreeSet<>();
                for (int limit = 1; limit < 4_000; limit += 1 + limit / 3) {
                    kinds.add(assertSameOrNotKnown(guided, guided(scheme, open, way, limit), door + " " + limit));
                    kinds.add(assertSameOrNotKnown(plain, plain(scheme, open, way, limit), door + " " + limit));
                }
                assertEquals(2, kinds.size(), "both given up and found: " + kinds);
            }
        }
    }

    private static Search.Result guided(Scheme scheme, Needs needs, Search.Way way, int limit) {
        return GuidedSearch.cheapest(scheme, scheme.start(), needs, s -> true, way, m -> 1, limit);
    }

    private static Search.Result plain(Scheme scheme, Needs needs, Search.Way way, int limit) {
        return Search.cheapest(scheme, scheme.start(), needs.guard::holds, way, m -> 1, limit);
    }

    private static String assertSameOrNotKnown(Search.Result whole, Search.Result early, String where) {
        switch (early) {
            case Search.Result.Found found ->
                assertEquals(
                        assertInstanceOf(Search.Result.Found.class, whole, where)
                                .path(),
                        found.path(),
                        where);
            case Search.Result.None none -> assertInstanceOf(Search.Result.None.class, whole, where);
            case Search.Result.Undecided undecided -> {}
        }
        return early.getClass().getSimpleName();
    }

    /** {@code 57-2} closed with {@code 89-2} closed is never; the others are, some only together with what is not named. */
    @Test
    void aStartThatIsLookedForTooShortlyIsNeitherReachedNorRefused() {
        Scheme scheme = Schemes.enclosed(2).scheme();
        for (Map<String, String> positions : List.of(
                Map.of("24-1", "open"),
                Map.of("43-2", "off", "24-1", "open", "24-2", "open", "89-2", "open"),
                Map.of("89-2", "open"),
                Map.of("89-2", "closed", "57-2", "closed"))) {
            StartState whole = StartState.of(scheme, positions, Set.of(), 100_000);
            for (int limit = 1; limit < 2_000; limit += 1 + limit / 3) {
                StartState early = StartState.of(scheme, positions, Set.of(), limit);
                if (early instanceof StartState.Undecided undecided) {
                    assertEquals(limit, undecided.limit());
                } else {
                    assertEquals(whole, early, positions + " with " + limit);
                }
            }
        }
        assertEquals(
                new StartState.Undecided(1),
                StartState.of(scheme, Map.of("24-1", "open", "24-2", "open"), Set.of(), 1));
    }

    @Test
    void whatAWayToBelievedGroundIsWorthWhenTheSearchStops() {
        Scheme scheme = Schemes.enclosed(2).scheme();
        BelievedGrounded believed = new BelievedGrounded(scheme);
        Search.Result.Found found = assertInstanceOf(
                Search.Result.Found.class, Verifier.shortestTo(scheme, believed, MEMORY, Verifier.Progress.SILENT));
        assertTrue(believed.test(found.path().getLast().after()));
        assertInstanceOf(
                Search.Result.Undecided.class,
                Verifier.shortestTo(scheme, believed, MEMORY, (states, moves, depth) -> depth < 5));
        assertInstanceOf(
                Search.Result.None.class,
                Verifier.shortestTo(scheme, state -> false, MEMORY, Verifier.Progress.SILENT));
    }

    /** A key shared by two banks that can't be verified is counted as harmful, for the one and for the other. */
    @Test
    void aSharedKeyThatCannotBeJudgedIsNamedForBothBanks() {
        Bank one = InterlockingTest.read(Path.of("..", "examples", "tamarack-flats-2.bank.yaml"));
        List<DesignFault> faults = SharedKeys.of(List.of(one, one), 0, Verifier.Progress.SILENT);
        assertEquals(2 * one.isolation().orElseThrow().keyNames().size(), faults.size());
        assertTrue(
                faults.stream().allMatch(f -> f.text().contains("undecided: count it as harmful")), faults.toString());
    }

    /** What was not enforced because nobody knows may be just what the lock protects. */
    @Test
    void whatALockProtectsIsNotKnownWhereTheSchemeItselfIsNot() {
        Bank bank = InterlockingTest.read(Path.of("..", "examples", "demo", "lantern-mesa-1.bank.yaml"));
        Interlocking open = Interlocking.examine(bank, 0, Verifier.Progress.SILENT);
        assertFalse(open.verification().complete());
        InterlockAudit audit = InterlockAudit.of(open, MEMORY, Verifier.Progress.SILENT);
        for (InterlockAudit.LockItem lock : audit.locks()) {
            assertInstanceOf(InterlockAudit.Protects.NotKnown.class, lock.protects());
        }
        assertTrue(InterlockAuditText.of(audit).contains("count it as vital"));
    }

    @Test
    void whatALockProtectsIsNotAllKnownWhereTheRestIsTooLarge() {
        Bank bank = InterlockingTest.read(Path.of("..", "examples", "demo", "lantern-mesa-1.bank.yaml"));
        Interlocking known = InterlockingTest.examine(bank);
        List<String> some = whys(known, 6);
        assertTrue(
                some.stream().allMatch(w -> w.startsWith("at least ") && w.endsWith("; too large to tell what else")),
                some.toString());
        List<String> none = whys(known, 0);
        assertTrue(none.contains("too large to tell"), none.toString());
    }

    private static List<String> whys(Interlocking known, int mostDepth) {
        return InterlockAudit.of(known, MEMORY, (states, moves, depth) -> depth < mostDepth).locks().stream()
                .map(l -> assertInstanceOf(InterlockAudit.Protects.NotKnown.class, l.protects())
                        .why())
                .toList();
    }
}
