package org.varwright.bank;

import java.util.List;
import java.util.Optional;

/**
 * A trapped-key lock. Its keys are free only while its bolt holds the thing in one position.
 *
 * @param on what it is on
 * @param keys the keys that it traps when the bolt is withdrawn, at least one
 * @param holds the position that the extended bolt holds; {@code closed} on a door
 * @param note free text
 */
public record Lock(On on, List<String> keys, String holds, Optional<String> note) {
    public Lock {
        keys = List.copyOf(keys);
    }

    /** What a lock is on. */
    public sealed interface On {
        /** Name of the device or compartment. */
        String name();

        record OfDevice(String name) implements On {}

        record OfDoor(String name) implements On {}
    }
}
