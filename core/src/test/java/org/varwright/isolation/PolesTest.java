package org.varwright.isolation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;

/**
 * What is joined to what pole by pole, by hand.
 *
 * <pre>
 *  line ──[52-7]── cable ──/89-2/── bus ──┬──(24-1)── stage 1 (neutral floats)
 *                                         ├──(24-2)── stage 2 …
 *                                   57-2 ─┴─ ground
 * </pre>
 */
class PolesTest {
    private final Bank bank = Banks.tamarack();
    private Poles poles = inService();

    @BeforeEach
    void start() {
        poles = inService();
    }

    private Poles inService() {
        Map<String, String> positions = new HashMap<>();
        bank.isolation().orElseThrow().devices().forEach(d -> positions.put(d.name(), d.inServicePosition()));
        Map<String, Boolean> charges = new HashMap<>();
        bank.stages().forEach(s -> charges.put(s.name(), !s.name().equals("stage 4")));
        return new Poles(
                bank,
                new SavedState(
                        bank.name(), positions, Map.of(), Map.of(), Map.of(), charges, Map.of(), Map.of("stage 4", 6)));
    }

    private void open(String... devices) {
        List.of(devices).forEach(d -> poles.move(d, "open"));
    }

    @Test
    void inServiceEveryPhaseIsLiveToTheStagesAndTheStationServiceIsLeftOut() {
        for (int phase = 0; phase < 3; phase++) {
            assertTrue(poles.live(phase).containsAll(Set.of("line", "cable", "bus", "stage 1", "stage 4")));
            assertFalse(poles.live(phase).contains("control supply"), "low voltage is people's business");
            assertEquals(Set.of("ground"), poles.grounded(phase));
        }
        assertFalse(poles.isShorted());
        assertTrue(poles.showsVoltage("bus"));
    }

    /** With a floating neutral one live phase drives no current; two do. */
    @Test
    void aStageIsHeldUpByTwoPhasesAndNotByOne() {
        poles.keepClosed("24-1", Set.of(1));
        open("24-1");
        assertFalse(poles.energized().contains("stage 1"));
        assertTrue(poles.live(1).contains("stage 1") && !poles.live(0).contains("stage 1"));
        assertTrue(poles.showsVoltage("stage 1"), "but a tester on that phase shows it");
        poles.keepClosed("24-1", Set.of(0, 1));
        assertTrue(poles.energized().contains("stage 1"));
        assertEquals(Set.of("stage 1"), poles.energizedThrough("24-1"));
    }

    @Test
    void theWaitTakesTheChargeOfWhatNoSourceHoldsUpAndOfNothingElse() {
        open("24-1", "24-2");
        poles.openResistor("stage 2", false);
        for (String stage : List.of("stage 1", "stage 2", "stage 3")) {
            poles.waitFor(stage);
        }
        assertFalse(poles.isCharged("stage 1"));
        assertTrue(poles.isCharged("stage 2"), "its resistor is open");
        assertTrue(poles.isCharged("stage 3"), "it is still on");
        assertTrue(poles.showsVoltage("stage 2"));
        assertFalse(poles.showsVoltage("stage 1"));
        assertTrue(poles.discharge("stage 2"), "the stick draws a spark");
        assertFalse(poles.discharge("stage 2"), "and no second one");
        poles.waitFor("stage 2");
        poles.move("24-1", "closed");
        assertTrue(poles.isCharged("stage 1"), "switched on it is charged anew");
    }

    /** A unit behind an operated fuse shows nothing at the stage's conductor. */
    @Test
    void aHiddenChargeIsFoundByTheStickAlone() {
        open("24-1");
        poles.openResistor("stage 1", true);
        poles.waitFor("stage 1");
        assertFalse(poles.showsVoltage("stage 1"));
        assertTrue(poles.hasHiddenCharge("stage 1"));
        assertTrue(poles.discharge("stage 1"));
        assertFalse(poles.hasHiddenCharge("stage 1"));
    }

    @Test
    void aShortedUnitHoldsNothing() {
        poles.openResistor("stage 4", false);
        poles.openResistor("stage 4", true);
        open("24-4");
        poles.waitFor("stage 4");
        assertFalse(poles.isCharged("stage 4") || poles.hasHiddenCharge("stage 4"));
        poles.move("24-4", "closed");
        assertFalse(poles.isCharged("stage 4"), "and takes nothing up");
        poles.unshortUnits("stage 4");
        poles.move("24-4", "open");
        poles.move("24-4", "closed");
        assertTrue(poles.isCharged("stage 4"));
    }

    @Test
    void aBladeThatStayedOpenLeavesItsPhaseUngrounded() {
        open("24-1", "24-2", "24-3", "24-4", "89-2");
        poles.keepOpen("57-2", Set.of(2));
        poles.move("57-2", "closed");
        assertTrue(poles.grounded(0).contains("bus") && poles.grounded(1).contains("bus"));
        assertFalse(poles.grounded(2).contains("bus"));
        poles.ground("bus");
        assertTrue(poles.grounded(2).contains("bus"), "a portable ground makes it good");
        poles.unground("bus");
        assertFalse(poles.grounded(2).contains("bus"));
    }

    /** One pole of 89-2 behind with 57-2 closed is an arc on that phase; so is a portable ground on it. */
    @Test
    void aSourceJoinedToGroundInOnePhaseIsAShort() {
        poles.keepClosed("89-2", Set.of(2));
        open("24-1", "24-2", "24-3", "24-4", "89-2");
        assertFalse(poles.isShorted());
        poles.ground("bus");
        assertTrue(poles.isShorted());
        poles.unground("bus");
        poles.move("57-2", "closed");
        assertTrue(poles.isShorted());
    }

    /** A charged stage that is still joined to the bus is joined to ground with it; behind its open switch it is not. */
    @Test
    void aChargedStageIsOnGroundWithTheBusItIsJoinedTo() {
        open("24-1", "89-2");
        assertEquals(List.of(), poles.chargedOnGround());
        poles.move("57-2", "closed");
        assertEquals(Set.of("stage 2", "stage 3"), Set.copyOf(poles.chargedOnGround()), "stage 4 is shorted");
        assertTrue(poles.isCharged("stage 1"));
        assertFalse(poles.showsVoltage("bus"), "what is joined to ground shows none");
        assertTrue(poles.showsVoltage("stage 2"), "its units hold theirs all the same");
    }

    /** One clamp of three found on: no protection, and an arc all the same when that conductor becomes live. */
    @Test
    void fewerGroundsThanPhasesProtectNobodyAndAreAnArcAllTheSame() {
        Map<String, String> positions = new HashMap<>();
        bank.isolation().orElseThrow().devices().forEach(d -> positions.put(d.name(), "open"));
        Poles dead = new Poles(
                bank,
                new SavedState(
                        bank.name(),
                        positions,
                        Map.of(),
                        Map.of(),
                        Map.of(),
                        Map.of(),
                        Map.of("bus", 2, "cable", 3),
                        Map.of()));
        for (int phase = 0; phase < 3; phase++) {
            assertTrue(dead.grounded(phase).contains("cable"));
            assertFalse(dead.grounded(phase).contains("bus"));
        }
        dead.unground("cable");
        dead.move("52-7", "closed");
        assertFalse(dead.isShorted());
        dead.move("89-2", "closed");
        assertTrue(dead.isShorted());
        dead.ground("bus");
        assertTrue(dead.grounded(2).contains("bus"), "those that were missing are on");
        dead.unground("bus");
        assertFalse(dead.isShorted());
    }

    @Test
    void capacitanceIsSeenOverTwoPolesAndWithdrawnIsOutWhateverStuck() {
        open("89-2", "24-2", "24-3", "24-4");
        assertEquals(List.of("stage 1"), poles.stagesAt("bus"));
        poles.keepClosed("24-1", Set.of(0));
        open("24-1");
        assertEquals(List.of(), poles.stagesAt("bus"));
        poles.keepClosed("52-7", Set.of(0, 1, 2));
        open("52-7");
        assertTrue(poles.live(0).contains("cable"));
        poles.move("52-7", "withdrawn");
        assertFalse(poles.live(0).contains("cable"));
    }

    @Test
    void aFeedFromElsewhereMakesLiveAndCharges() {
        open("24-1");
        poles.waitFor("stage 1");
        poles.feed("stage 1");
        assertTrue(poles.isCharged("stage 1") && poles.showsVoltage("stage 1"));
    }
}
