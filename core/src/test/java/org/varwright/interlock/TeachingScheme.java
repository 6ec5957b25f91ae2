package org.varwright.interlock;

import java.util.List;
import org.varwright.bank.Device;

/**
 * The scheme that every course on trapped keys starts with: breaker, grounding switch, two doors.
 *
 * <pre>
 *  feeder ──[Q0]── bus ── bank        Q0 open ─A (after a delay)─ ES may close ─ES closed─ B ─ door 1
 *                   └─/ES/─ ground                                              B ─(door 1 key box)─ C ─ door 2
 * </pre>
 *
 * Doors here release no key when open, so the key of door 2 comes from a box that takes B; the questions asked are about door 1.
 */
final class TeachingScheme {
    private TeachingScheme() {}

    static Schemes of(String variant) {
        Schemes s = new Schemes()
                .source("feeder", "feeder")
                .device("Q0", Device.Kind.BREAKER, "feeder", "bank")
                .device("ES", Device.Kind.GROUNDING_SWITCH, "bank", "ground")
                .stage("bank", "")
                .compartment("door 1", "bank")
                .compartment("door 2", "bank")
                .lock("Q0", "open", "A")
                .lock("ES", "open", "A")
                .lock("ES", "closed", "B")
                .doorLock("door 1", "B")
                .exchange("door 1 key box", List.of("B"), List.of("C"))
                .doorLock("door 2", "C");
        if (variant.equals("spare key")) {
            s.copies("B", 2);
        }
        return variant.equals("no delay") ? s : s.delayKey("Q0", "A", "Q0");
    }
}
