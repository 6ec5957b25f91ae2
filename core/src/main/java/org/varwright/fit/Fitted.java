package org.varwright.fit;

import java.util.Optional;
import org.varwright.bank.UnitPosition;

/**
 * A position with the unit that is in it now.
 *
 * @param at its position
 * @param serial number, where known
 * @param capacitanceFarads as it is now [F], 0 where nothing conducts; of a three-phase unit one leg's, all three taken as alike
 * @param from where that value comes from
 * @param role what may be done with it
 * @param why the role, in one sentence; empty where nothing needs saying
 */
public record Fitted(
        UnitPosition at, Optional<String> serial, double capacitanceFarads, From from, Role role, String why) {
    /** What may be done with the unit in a position. */
    public enum Role {
        /** Good; stays, or moves where that helps. */
        KEPT,
        /** Must come out. */
        CONDEMNED,
        /** Good, and not to be touched. */
        IMMOVABLE,
        /** No unit in this position. */
        EMPTY
    }

    /** Where a capacitance comes from. */
    public enum From {
        /** Measured in this visit. */
        MEASURED("measured"),
        /** Factory or earlier measurement. */
        KNOWN("earlier measurement"),
        /** The median of units alike. */
        MATES("median of its mates"),
        /** From the nameplate. */
        NAMEPLATE("nameplate");

        private final String words;

        From(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Whether somebody measured it in this visit. Only then it counts as measured: what its mates read is no reading of it. */
    public boolean isMeasured() {
        return from == From.MEASURED;
    }

    /** Whether its value was measured on itself, now or before. */
    public boolean isKnown() {
        return isMeasured() || from == From.KNOWN;
    }

    /** Serial number, or the position where the number isn't known. */
    public String name() {
        return serial.orElse("unit of " + at.name());
    }
}
