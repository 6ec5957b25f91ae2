package org.varwright.interlock;

/** What a conductor is, in order of rank: the first that fits. */
public enum ConductorState {
    /** Joined to a source of 1 kV or more. */
    LIVE("live"),
    /** Joined to a low-voltage source and no other. */
    LIVE_LOW_VOLTAGE("live-low-voltage"),
    /** Joined to ground and to no source. */
    GROUNDED("grounded"),
    /** Joined to a charged stage. */
    CHARGED("charged"),
    /** None of these. */
    FLOATING("floating");

    private final String code;

    ConductorState(String code) {
        this.code = code;
    }

    /** The word in JSON. */
    public String code() {
        return code;
    }
}
