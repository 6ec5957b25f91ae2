package org.varwright.interlock;

import java.util.List;
import org.varwright.bank.Lock;
import org.varwright.page.Enumeration;

/** Phrases that several texts share. */
final class Words {
    private Words() {}

    /** {@code key TF-1} or {@code keys TF-8 and TF-9}. */
    static String keys(List<String> keys) {
        return (keys.size() == 1 ? "key " : "keys ") + list(keys);
    }

    /** {@code 43-2 (holds off)} or {@code the door of bay 1}. */
    static String lock(Lock lock) {
        return switch (lock.on()) {
            case Lock.On.OfDevice device -> device.name() + " (holds " + lock.holds() + ")";
            case Lock.On.OfDoor door -> "the door of " + door.name();
        };
    }

    /** {@code a}, {@code a and b}, {@code a, b and c}. */
    static String list(List<String> items) {
        return Enumeration.of(items);
    }

    static String list(List<String> items, String last) {
        return Enumeration.of(items, last);
    }
}
