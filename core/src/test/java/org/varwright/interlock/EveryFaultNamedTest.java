package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;

/** One fault does not hide another of its kind, and what was not looked through is not passed over. */
class EveryFaultNamedTest {
    private static final long MEMORY = 1_000_000_000L;
    private static final Bank EXAMPLE = InterlockingTest.read(Path.of("..", "examples", "tamarack-flats-2.bank.yaml"));

    private static List<DesignFault> faults(Schemes schemes, long memory, int searchStates) {
        Scheme scheme = schemes.scheme();
        Verification verification = Verifier.verify(scheme, MEMORY, Verifier.Progress.SILENT);
        return DesignFaults.of(EXAMPLE, scheme, verification, memory, Verifier.Progress.SILENT, searchStates);
    }

    private static List<DesignFault> of(List<DesignFault> faults, DesignFault.Kind kind) {
        return faults.stream().filter(f -> f.kind() == kind).toList();
    }

    private static boolean names(List<DesignFault> faults, String words) {
        return faults.stream()
                .anyMatch(f -> f.text().contains(words)
                        || f.remedies().stream().anyMatch(r -> r.text().contains(words)));
    }

    /**
     * No door is locked, so no single lock closes anything and each has to be named for itself.
     *
     * <pre>
     *  feeder ──[Q]── bus (bay 1, bay 2, bay 3)     control (box, 120 V)
     * </pre>
     */
    @Test
    void everyDoorWithoutALockIsNamed() {
        Schemes schemes = new Schemes()
                .source("feeder", "line")
                .lowVoltage("station service", "control")
                .device("Q", Device.Kind.BREAKER, "line", "bus")
                .stage("bus", "")
                .compartment("bay 1", "bus")
                .compartment("bay 2", "bus", "control")
                .compartment("bay 3", "line")
                .compartment("box", "control");
        List<DesignFault> doors = of(faults(schemes, MEMORY, 10_000), DesignFault.Kind.DOOR_WITHOUT_LOCK);
        for (String bay : List.of("bay 1", "bay 2", "bay 3")) {
            assertTrue(names(doors, "door of " + bay + " "), bay + " in " + doors);
        }
        assertTrue(!names(doors, "door of box "), "nothing but low voltage that nothing joins is behind it");
    }

    /** The key of the sound scheme's door 2 has a spare, and that of ES as well: two faults, whichever of them a property shows. */
    @Test
    void everySecondCopyIsNamed() {
        Schemes schemes = TeachingScheme.of("correct").copies("A", 2).copies("B", 2);
        List<DesignFault> faults = faults(schemes, MEMORY, 10_000);
        List<DesignFault> copies = of(faults, DesignFault.Kind.SECOND_COPY);
        assertTrue(names(copies, "key A"), copies.toString());
        assertTrue(names(copies, "key B"), copies.toString());
        List<DesignFault> spare = of(
                faults(TeachingScheme.of("correct").copies("X", 2).copies("Y", 3), MEMORY, 10_000),
                DesignFault.Kind.SECOND_COPY);
        assertEquals(2, spare.size(), "no property shows either of them");
        assertTrue(names(spare, "2 copies of key X.") && names(spare, "3 copies of key Y."), spare.toString());
    }

    @Test
    void aKeyThatMayBeFreeWithItsDoorOpenIsSaidToBeUndecided() {
        Schemes schemes = TeachingScheme.of("spare key");
        assertEquals(
                8,
                of(faults(schemes, MEMORY, 10_000), DesignFault.Kind.KEY_FREE_DOOR_OPEN)
                        .getFirst()
                        .harm()
                        .size());
        DesignFault open = of(faults(schemes, MEMORY, 5), DesignFault.Kind.KEY_FREE_DOOR_OPEN)
                .getFirst();
        assertTrue(open.text().contains("undecided: count it as so"), open.text());
        assertTrue(open.remedies().isEmpty());
    }

    @Test
    void aStageThatMayBeBelievedGroundedIsSaidToBeUndecided() {
        DesignFault open = of(faults(Schemes.enclosed(2), 0, 10_000), DesignFault.Kind.STAGE_NOT_GROUNDED)
                .getFirst();
        assertTrue(open.text().contains("undecided"), open.text());
        assertTrue(open.harm().isEmpty() && open.remedies().isEmpty());
    }
}
