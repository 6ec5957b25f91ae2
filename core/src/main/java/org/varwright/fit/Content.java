package org.varwright.fit;

import org.varwright.bank.Spare;

/** What a position holds in a plan. */
sealed interface Content {
    /** A unit that is in the bank now, here or elsewhere. */
    record InPlace(Fitted unit) implements Content {}

    /** A spare. */
    record FromStock(Spare spare) implements Content {}

    /** No unit. */
    record Nothing() implements Content {}

    /** Capacitance in the circuit [F]. */
    default double farads() {
        return switch (this) {
            case InPlace u -> u.unit().capacitanceFarads();
            case FromStock s ->
                s.spare().capacitanceFarads().orElse(s.spare().unit().capacitanceFarads());
            case Nothing n -> 0.0;
        };
    }
}
