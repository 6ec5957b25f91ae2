package org.varwright.bank;

import java.util.ArrayList;
import java.util.List;

/** How the legs of a stage are joined. */
public enum Connection {
    WYE_GROUNDED("wye-grounded"),
    WYE_UNGROUNDED("wye-ungrounded"),
    DELTA("delta"),
    DOUBLE_WYE_GROUNDED("double-wye-grounded"),
    DOUBLE_WYE_UNGROUNDED("double-wye-ungrounded"),
    BRIDGE_GROUNDED("bridge-grounded"),
    BRIDGE_UNGROUNDED("bridge-ungrounded");

    private final String code;

    Connection(String code) {
        this.code = code;
    }

    /** The word in the bank file (IEEE words). */
    public String code() {
        return code;
    }

    public boolean isDoubleWye() {
        return this == DOUBLE_WYE_GROUNDED || this == DOUBLE_WYE_UNGROUNDED;
    }

    public boolean isBridge() {
        return this == BRIDGE_GROUNDED || this == BRIDGE_UNGROUNDED;
    }

    /** Whether the far side of the legs is joined to ground. */
    public boolean isGrounded() {
        return this == WYE_GROUNDED || this == DOUBLE_WYE_GROUNDED || this == BRIDGE_GROUNDED;
    }

    /** Whether there is a neutral that floats: a fourth conductor that a three-pole grounding switch does not reach. */
    public boolean hasFloatingNeutral() {
        return this == WYE_UNGROUNDED || this == DOUBLE_WYE_UNGROUNDED || this == BRIDGE_UNGROUNDED;
    }

    /** Names of the legs in order: {@code A B C}, {@code AB BC CA}, {@code A1 B1 C1 A2 B2 C2} or {@code A-ul A-ll A-ur A-lr B-ul …}. */
    public List<String> legs() {
        return switch (this) {
            case WYE_GROUNDED, WYE_UNGROUNDED -> List.of("A", "B", "C");
            case DELTA -> List.of("AB", "BC", "CA");
            case DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED -> List.of("A1", "B1", "C1", "A2", "B2", "C2");
            case BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> {
                List<String> legs = new ArrayList<>();
                for (String phase : List.of("A", "B", "C")) {
                    for (String quarter : List.of("ul", "ll", "ur", "lr")) {
                        legs.add(phase + "-" + quarter);
                    }
                }
                yield List.copyOf(legs);
            }
        };
    }
}
