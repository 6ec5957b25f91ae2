package org.varwright.energize;

/** Where the capacitance comes from that a unit counts with. */
public enum Origin {
    /** Its own reading. */
    READING("reading"),
    BANK_FILE("bank file"),
    NAMEPLATE("nameplate");

    private final String words;

    Origin(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
