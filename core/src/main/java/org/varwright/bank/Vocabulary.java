package org.varwright.bank;

/**
 * The words that are printed, by standard: IEEE words or IEC words for the same thing. Code uses the IEEE words.
 */
public enum Vocabulary {
    IEEE("ground", "grounded", "grounding", "ungrounded", "wye", "stage", "disconnector", "grounding switch"),
    IEC("earth", "earthed", "earthing", "unearthed", "star", "step", "disconnector", "earthing switch");

    private final String ground;
    private final String grounded;
    private final String grounding;
    private final String ungrounded;
    private final String wye;
    private final String stage;
    private final String disconnector;
    private final String groundingSwitch;

    Vocabulary(
            String ground,
            String grounded,
            String grounding,
            String ungrounded,
            String wye,
            String stage,
            String disconnector,
            String groundingSwitch) {
        this.ground = ground;
        this.grounded = grounded;
        this.grounding = grounding;
        this.ungrounded = ungrounded;
        this.wye = wye;
        this.stage = stage;
        this.disconnector = disconnector;
        this.groundingSwitch = groundingSwitch;
    }

    public static Vocabulary of(Standard standard) {
        return standard == Standard.IEC ? IEC : IEEE;
    }

    public String ground() {
        return ground;
    }

    public String grounded() {
        return grounded;
    }

    public String grounding() {
        return grounding;
    }

    public String ungrounded() {
        return ungrounded;
    }

    public String wye() {
        return wye;
    }

    public String stage() {
        return stage;
    }

    public String disconnector() {
        return disconnector;
    }

    public String groundingSwitch() {
        return groundingSwitch;
    }

    /** A connection in these words, such as {@code ungrounded wye} or {@code unearthed double star}. */
    public String connection(Connection connection) {
        return switch (connection) {
            case WYE_GROUNDED -> grounded + " " + wye;
            case WYE_UNGROUNDED -> ungrounded + " " + wye;
            case DELTA -> "delta";
            case DOUBLE_WYE_GROUNDED -> grounded + " double " + wye;
            case DOUBLE_WYE_UNGROUNDED -> ungrounded + " double " + wye;
            case BRIDGE_GROUNDED -> grounded + " bridge";
            case BRIDGE_UNGROUNDED -> ungrounded + " bridge";
        };
    }
}
