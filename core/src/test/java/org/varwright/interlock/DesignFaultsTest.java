package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;

class DesignFaultsTest {
    private static final long MEMORY = 1_000_000_000L;
    private static final Bank EXAMPLE = InterlockingTest.read(Path.of("..", "examples", "tamarack-flats-2.bank.yaml"));

    private static List<DesignFault> faults(Schemes schemes) {
        Scheme scheme = schemes.scheme();
        Verification verification = Verifier.verify(scheme, MEMORY, Verifier.Progress.SILENT);
        return DesignFaults.of(EXAMPLE, scheme, verification, MEMORY, Verifier.Progress.SILENT);
    }

    private static DesignFault require(List<DesignFault> faults, DesignFault.Kind kind) {
        Optional<DesignFault> found =
                faults.stream().filter(f -> f.kind() == kind).findFirst();
        return found.orElseThrow(() -> new AssertionError(kind + " not among " + faults));
    }

    private static void proposes(DesignFault fault, Property closes, String text) {
        assertTrue(
                fault.remedies().stream()
                        .anyMatch(r -> r.text().contains(text) && r.closes().contains(closes)),
                fault.remedies().toString());
    }

    @Test
    void aSoundSchemeHasNoFaultOfLocks() {
        List<DesignFault> faults = faults(TeachingScheme.of("correct"));
        assertEquals(
                List.of(DesignFault.Kind.MISSING_DELAY, DesignFault.Kind.FLOATING_NEUTRAL),
                faults.stream().map(DesignFault::kind).toList());
        assertEquals(
                Property.RECHARGE,
                faults.getFirst().remedies().getFirst().closes().iterator().next());
    }

    @Test
    void aSecondCopyAndTheKeyThatIsFreeWithItsDoorOpen() {
        List<DesignFault> faults = faults(TeachingScheme.of("spare key"));
        DesignFault copy = require(faults, DesignFault.Kind.SECOND_COPY);
        assertEquals(2, copy.harm().size());
        proposes(copy, Property.EXPOSED_LIVE, "leave one copy of key B");
        DesignFault free = require(faults, DesignFault.Kind.KEY_FREE_DOOR_OPEN);
        assertEquals(8, free.harm().size(), "one copy in the door, the other out of ES held closed");
        assertEquals(1, free.remedies().size());
    }

    @Test
    void aMissingDelay() {
        DesignFault fault = faults(TeachingScheme.of("no delay")).stream()
                .filter(f ->
                        f.kind() == DesignFault.Kind.MISSING_DELAY && f.text().contains("grounded-charged"))
                .findFirst()
                .orElseThrow();
        proposes(fault, Property.GROUNDED_CHARGED, "hold back key A of the lock of Q0");
    }

    /** {@code ES open ─B─ door 1} instead of {@code ES closed ─B─ door 1}: the key is free in service. */
    @Test
    void aLockThatHoldsTheWrongPosition() {
        Schemes schemes = new Schemes()
                .source("feeder", "feeder")
                .device("Q0", Device.Kind.BREAKER, "feeder", "bank")
                .device("ES", Device.Kind.GROUNDING_SWITCH, "bank", "ground")
                .stage("bank", "")
                .compartment("door 1", "bank")
                .lock("Q0", "open", "A")
                .lock("ES", "open", "A")
                .lock("ES", "open", "B")
                .doorLock("door 1", "B")
                .delayKey("Q0", "A", "Q0");
        DesignFault fault = require(faults(schemes), DesignFault.Kind.WRONG_POSITION);
        proposes(fault, Property.EXPOSED_LIVE, "let the lock of ES with key B hold closed instead of open");
    }

    /** The correct scheme with a second feeder through T, from which no key comes. */
    @Test
    void aSourceLeftOut() {
        Schemes schemes = TeachingScheme.of("correct")
                .source("second feeder", "other")
                .device("T", Device.Kind.BREAKER, "other", "bank");
        DesignFault fault = require(faults(schemes), DesignFault.Kind.SOURCE_LEFT_OUT);
        assertTrue(fault.remedies().stream().allMatch(r -> r.text().contains("second feeder")), fault.toString());
        proposes(fault, Property.CLOSED_TO_GROUND, "a lock that holds T open");
    }

    /** {@code Q0 closed ─Z─ ES closed} and {@code Q0 open ─A─ ES open}: Q0 waits for Z, Z for ES, ES for A, A for Q0. */
    @Test
    void aKeyLoopThatCanNeverStart() {
        Schemes schemes = TeachingScheme.of("correct").lock("Q0", "closed", "Z").lock("ES", "closed", "Z");
        DesignFault fault = require(faults(schemes), DesignFault.Kind.KEY_LOOP);
        assertTrue(fault.text().contains("It waits in a ring"), fault.text());
        assertTrue(
                fault.text().contains("key Z is trapped in the lock of ES (holds closed), isolation.locks["),
                fault.text());
        assertFalse(fault.remedies().isEmpty(), "taking off the lock with Z starts it");
    }

    /** ES opens only while the door stands open; then its key is trapped in the door, so ES stays bolted for ever. */
    @Test
    void aKeyThatGetsStranded() {
        Schemes schemes = TeachingScheme.of("correct").interlock("ES", "open", "door 1", "open");
        DesignFault fault = require(faults(schemes), DesignFault.Kind.KEY_STRANDED);
        assertFalse(fault.harm().isEmpty());
    }

    @Test
    void aDoorWithoutALock() {
        DesignFault fault = require(
                faults(TeachingScheme.of("correct").compartment("door 3", "bank")), DesignFault.Kind.DOOR_WITHOUT_LOCK);
        assertEquals(1, fault.harm().size());
        proposes(fault, Property.EXPOSED_LIVE, "put a lock on the door of door 3");
    }

    /** {@code feeder ──/D/── bus ── bank, G to ground}: nothing ties D and G. */
    @Test
    void devicesThatNothingKeepsApart() {
        Schemes schemes = new Schemes()
                .source("feeder", "feeder")
                .device("D", Device.Kind.LOAD_BREAK_SWITCH, "feeder", "bank")
                .device("G", Device.Kind.GROUNDING_SWITCH, "bank", "ground")
                .stage("bank", "");
        proposes(
                require(faults(schemes), DesignFault.Kind.MISSING_INTERLOCK),
                Property.CLOSED_TO_GROUND,
                "neither closes while the other is closed");
    }

    @Test
    void aStageBehindAnOpenSwitchAndTheFloatingNeutral() {
        List<DesignFault> faults = faults(Schemes.enclosed(2));
        DesignFault stage = require(faults, DesignFault.Kind.STAGE_NOT_GROUNDED);
        assertEquals(15, stage.harm().size());
        assertEquals(1, stage.remedies().size(), stage.remedies().toString());
        assertTrue(require(faults, DesignFault.Kind.FLOATING_NEUTRAL).harm().isEmpty());
    }

    @Test
    void twoBanksWithTheSameKey() {
        Bank one = twoStages("bank 2");
        Bank other = twoStages("bank 3");
        List<DesignFault> faults = SharedKeys.of(List.of(one, other), MEMORY, Verifier.Progress.SILENT);
        assertEquals(14, faults.size(), "seven keys, each a danger to either bank");
        DesignFault bay = faults.stream()
                .filter(f -> f.text().startsWith("Key TF-4 "))
                .findFirst()
                .orElseThrow();
        assertEquals(2, bay.harm().size());
        assertTrue(bay.text().contains("exposed-live"), bay.text());
        assertTrue(bay.remedies().getFirst().text().contains("another key code"));
    }

    private static Bank twoStages(String name) {
        return new Bank(
                name,
                EXAMPLE.site(),
                EXAMPLE.standard(),
                EXAMPLE.system(),
                EXAMPLE.unitTypes(),
                EXAMPLE.fuseTypes(),
                EXAMPLE.stages().subList(0, 2),
                EXAMPLE.protection(),
                EXAMPLE.control(),
                Optional.of(Schemes.enclosed(2).isolation()),
                EXAMPLE.units(),
                EXAMPLE.spares(),
                EXAMPLE.label(),
                EXAMPLE.note());
    }
}
