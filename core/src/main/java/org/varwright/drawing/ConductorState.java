package org.varwright.drawing;

import java.util.Locale;
import org.varwright.bank.Vocabulary;

/** What a conductor is in a drawn state. */
public enum ConductorState {
    /** Joined to a source of 1 kV or more. */
    LIVE,
    /** Joined only to sources below 1 kV. */
    LIVE_LOW_VOLTAGE,
    /** A charged stage is joined to it. */
    CHARGED,
    /** Joined to ground and not live. */
    GROUNDED,
    /** None of these, and so not proven dead. */
    FLOATING,
    /** Nobody knows; counts as live. */
    UNKNOWN;

    /** The words on the drawing. */
    String label(Vocabulary words) {
        return switch (this) {
            case LIVE -> "LIVE";
            case LIVE_LOW_VOLTAGE -> "LIVE, LOW VOLTAGE";
            case CHARGED -> "CHARGED";
            case GROUNDED -> words.grounded().toUpperCase(Locale.ROOT);
            case FLOATING -> "NOT PROVEN";
            case UNKNOWN -> "UNKNOWN: AS LIVE";
        };
    }
}
