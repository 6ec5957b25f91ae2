package org.varwright.bank;

import java.util.List;
import java.util.Optional;

/**
 * A key or a move held back for a time after devices opened.
 *
 * @param of what is held back
 * @param afterSeconds for how long [s]
 * @param open the devices that must be open
 * @param note free text
 */
public record Delay(Of of, double afterSeconds, List<String> open, Optional<String> note) {
    public Delay {
        open = List.copyOf(open);
    }

    /** What a delay holds back. */
    public sealed interface Of {
        /** Extending the bolt of the lock on {@code on} that has the key {@code key}. */
        record Bolt(Lock.On on, String key) implements Of {}

        /** Moving {@code device} to {@code to}. */
        record Move(String device, String to) implements Of {}
    }
}
