package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class VerifierTest {
    private static final long MEMORY = 1_000_000_000L;

    private static Verification verify(Scheme scheme) {
        return Verifier.verify(scheme, MEMORY, Verifier.Progress.SILENT);
    }

    private static int shortest(Verification verification, Property property) {
        return assertInstanceOf(Verification.Outcome.NotEnforced.class, verification.outcome(property), property.id())
                .path()
                .size();
    }

    @Test
    void theExampleIsDecidedWithTheStatesAndMovesOfItsDescription() {
        Verification verification = verify(Schemes.enclosed(4).scheme());
        assertEquals(6122, verification.states());
        assertEquals(58228, verification.moves());
        assertTrue(verification.complete());
        assertEquals(2, shortest(verification, Property.RECHARGE));
        assertEquals(22, shortest(verification, Property.UNGROUNDED_ENTRY));
        assertEquals(1, shortest(verification, Property.EXPOSED_LOW_VOLTAGE));
        assertTrue(verification.isEnforced(Property.EXPOSED_LIVE));
        assertTrue(verification.isEnforced(Property.EXPOSED_CHARGED));
        assertTrue(verification.isEnforced(Property.CLOSED_TO_GROUND));
        assertTrue(verification.isEnforced(Property.LOAD_BREAK));
        assertTrue(verification.isEnforced(Property.GROUNDED_CHARGED));
        assertTrue(verification.isEnforced(Property.KEY_STRANDED));
    }

    @Test
    void anEnclosureOfEightStagesIsDecidedInSixteenBytesAState() {
        Verification verification = verify(Schemes.enclosed(8).scheme());
        assertEquals(1_297_802, verification.states());
        assertEquals(19_645_348, verification.moves());
        assertTrue(verification.heldBytes() <= 16L * verification.states(), verification.heldBytes() + " bytes");
    }

    @Test
    void whatDoesNotFitTheMemoryIsUndecidedAndWhatIsBrokenStaysKnown() {
        Verification verification = Verifier.verify(Schemes.enclosed(8).scheme(), 1_000_000, Verifier.Progress.SILENT);
        assertFalse(verification.complete());
        assertInstanceOf(Verification.Outcome.Undecided.class, verification.outcome(Property.EXPOSED_LIVE));
        assertInstanceOf(Verification.Outcome.Undecided.class, verification.outcome(Property.KEY_STRANDED));
        assertEquals(2, shortest(verification, Property.RECHARGE));
    }

    @Test
    void aCallerThatHasNoMoreTimeStopsIt() {
        Verification verification =
                Verifier.verify(Schemes.enclosed(8).scheme(), MEMORY, (states, moves, depth) -> depth < 5);
        assertFalse(verification.complete());
        assertInstanceOf(Verification.Outcome.Undecided.class, verification.outcome(Property.EXPOSED_LIVE));
    }
}
