package org.varwright.interlock;

import java.util.Optional;
import org.varwright.bank.Vocabulary;

/** What is verified over every reachable state. */
public enum Property {
    EXPOSED_LIVE("exposed-live", 1, "no door open while its compartment exposes a live conductor"),
    EXPOSED_LOW_VOLTAGE(
            "exposed-low-voltage",
            1 << 1,
            "no door open while its compartment exposes a conductor that is live at low voltage"),
    EXPOSED_CHARGED("exposed-charged", 1 << 2, "no door open while its compartment exposes a charged conductor"),
    CLOSED_TO_GROUND("closed-to-ground", 1 << 3, "no source joined to ground"),
    LOAD_BREAK(
            "load-break",
            1 << 4,
            "no disconnector moved while a stage is joined through it to a source, no breaker withdrawn while closed"),
    RECHARGE("recharge", 1 << 5, "no charged stage joined to a live conductor again by a move"),
    GROUNDED_CHARGED("grounded-charged", 1 << 6, "no charged stage joined to ground by a move"),
    UNGROUNDED_ENTRY(
            "ungrounded-entry",
            1 << 7,
            "no door open while its compartment exposes a conductor that is neither grounded nor a stage behind an open switch"),
    KEY_STRANDED("key-stranded", 1 << 8, "from every reachable state the in-service state can be reached again");

    private final String id;
    private final int bit;
    private final String claim;

    Property(String id, int bit, String claim) {
        this.id = id;
        this.bit = bit;
        this.claim = claim;
    }

    /** The name in JSON. */
    public String id() {
        return id;
    }

    /** What holds where the property is enforced. */
    public String claim() {
        return claim;
    }

    /** The claim in the words of the bank's standard. */
    public String claim(Vocabulary words) {
        return claim.replace("ungrounded", words.ungrounded())
                .replace("grounded", words.grounded())
                .replace("ground", words.ground())
                .replace("stage", words.stage());
    }

    public static Optional<Property> of(String id) {
        for (Property property : values()) {
            if (property.id.equals(id)) {
                return Optional.of(property);
            }
        }
        return Optional.empty();
    }

    int bit() {
        return bit;
    }
}
