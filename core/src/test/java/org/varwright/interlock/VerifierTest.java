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
        Verification verification =
                Verifier.verifyOneByOne(Schemes.enclosed(8).scheme(), MEMORY, Verifier.Progress.SILENT);
        assertEquals(1_297_802, verification.visited());
        assertEquals(1_297_802, verification.states());
        assertEquals(19_645_348, verification.moves());
        assertTrue(verification.heldBytes() <= 16L * verification.states(), verification.heldBytes() + " bytes");
    }

    @Test
    void whatDoesNotFitTheMemoryIsUndecidedAndWhatIsBrokenStaysKnown() {
        Verification verification =
                Verifier.verifyOneByOne(Schemes.enclosed(8).scheme(), 1_000_000, Verifier.Progress.SILENT);
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

    @Test
    void stagesThatAreAlikeAreVisitedOnceAndCountedEach() {
        for (int stages = 2; stages <= 6; stages++) {
            Scheme scheme = Schemes.enclosed(stages).scheme();
            Verification oneByOne = Verifier.verifyOneByOne(scheme, MEMORY, Verifier.Progress.SILENT);
            Verification swapped = verify(scheme);
            assertEquals(oneByOne.states(), swapped.states());
            assertEquals(oneByOne.moves(), swapped.moves());
            assertEquals(oneByOne.depth(), swapped.depth());
            assertEquals(oneByOne.possible(), swapped.possible());
            assertEquals(TwinOracleTest.shortest(oneByOne), TwinOracleTest.shortest(swapped));
            assertTrue(swapped.visited() < oneByOne.visited(), swapped.visited() + " visited");
            assertEquals(swapped.states(), oneByOne.visited());
        }
    }

    /**
     * Twelve stages on two bus sections, fourteen doors, two feeders and a tie.
     *
     * <pre>
     *  feeder A ──[52-A]── cable A ──/89-A/── bus A ──[52-T]── bus B ──/89-B/── cable B ──[52-B]── feeder B
     *                                  │ 24-1 … 24-6        24-7 … 24-12 │
     *                                57-A                              57-B
     * </pre>
     */
    @Test
    void twelveStagesWithFourteenDoorsTwoSourcesAndATieAreDecided() {
        Verification verification = verify(Schemes.twoSections().scheme());
        assertEquals(1_044_595_470L, verification.states());
        assertEquals(21_405_643_666L, verification.moves());
        assertTrue(verification.visited() < 1_000_000, verification.visited() + " visited");
        assertTrue(verification.complete());
        assertTrue(verification.isEnforced(Property.EXPOSED_LIVE));
        assertTrue(verification.isEnforced(Property.EXPOSED_CHARGED));
        assertTrue(verification.isEnforced(Property.CLOSED_TO_GROUND));
        assertTrue(verification.isEnforced(Property.KEY_STRANDED));
    }
}
