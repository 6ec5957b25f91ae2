package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Reference cases ILK-001, ILK-004 and ILK-006: which hazards can be reached with legal lock operations, and by which shortest way. Source: first principles
 * (independent calculation); the situation is common in practice. State counts depend on the grain of a model and are not compared. Where two moves of the
 * reference are one turn of a key here ("remove A", "insert A"), they are still two: the bolt extended, the other bolt withdrawn.
 */
class TeachingSchemeReferenceTest {
    private static Verification verify(String variant) {
        return Verifier.verify(TeachingScheme.of(variant).scheme(), 1_000_000_000L, Verifier.Progress.SILENT);
    }

    private static List<String> way(Verification verification, Property property) {
        return verification.outcome(property) instanceof Verification.Outcome.NotEnforced broken
                ? broken.path().stream()
                        .map(s -> s.move().action() + " " + s.move().what())
                        .toList()
                : List.of();
    }

    /** ILK-001: access is possible and no hazard reachable. Recharging is outside that case: it ends with the doors open. */
    @Test
    void theCorrectSchemeLetsPeopleInAndNoHarm() {
        Verification verification = verify("correct");
        for (Property property : List.of(
                Property.EXPOSED_LIVE,
                Property.EXPOSED_CHARGED,
                Property.CLOSED_TO_GROUND,
                Property.GROUNDED_CHARGED,
                Property.UNGROUNDED_ENTRY,
                Property.KEY_STRANDED)) {
            assertTrue(verification.isEnforced(property), property.id());
        }
        Scheme scheme = TeachingScheme.of("correct").scheme();
        for (String door : List.of("door 1", "door 2")) {
            assertTrue(
                    Search.cheapest(
                                    scheme,
                                    scheme.start(),
                                    s -> scheme.doors(s)
                                            .equals(Map.of(
                                                    "door 1", door.equals("door 1"), "door 2", door.equals("door 2"))),
                                    (before, move, after) -> true,
                                    m -> 1,
                                    10_000)
                            instanceof Search.Result.Found,
                    door);
        }
    }

    /** ILK-004: "insert B in door 1", "open door 1": door open, not grounded, source closed. */
    @Test
    void aSpareDoorKeyLeadsToALiveConductorInTwoMoves() {
        Verification verification = verify("spare key");
        List<String> expected = List.of("withdraw door 1", "open-door door 1");
        assertEquals(expected, way(verification, Property.EXPOSED_LIVE));
        assertEquals(expected, way(verification, Property.UNGROUNDED_ENTRY));
    }

    /** ILK-006: "open breaker", "remove A from breaker lock", "insert A in earth-switch lock", "close earth switch". */
    @Test
    void withoutTheDelayTheBankIsGroundedChargedInFourMoves() {
        Verification verification = verify("no delay");
        assertEquals(
                List.of("operate Q0", "extend Q0", "withdraw ES", "operate ES"),
                way(verification, Property.GROUNDED_CHARGED));
        assertTrue(verification.isEnforced(Property.EXPOSED_LIVE));
        assertTrue(verification.isEnforced(Property.UNGROUNDED_ENTRY));
    }
}
