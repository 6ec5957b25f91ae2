package org.varwright.bank;

import java.util.List;
import java.util.Optional;

/**
 * A switch, breaker, disconnector or selector.
 *
 * @param name unique among devices
 * @param kind what it is
 * @param positions in the order of the file; for all but a selector they follow from the kind
 * @param between the two conductors it joins when closed, {@code ground} being one of them for a grounding switch; empty for a selector
 * @param type what its nameplate says; empty where the file doesn't say
 * @param withdrawable whether a breaker can be withdrawn
 * @param remote whether it is operated from elsewhere (another person)
 * @param indicates what shows its position, such as {@code lamp}
 * @param seenThrough what its blades are seen through, such as {@code window}: a visible break
 * @param label what is written or coded on it
 * @param note free text
 */
public record Device(
        String name,
        Kind kind,
        List<String> positions,
        Optional<Between> between,
        Optional<SwitchType> type,
        boolean withdrawable,
        boolean remote,
        Optional<String> indicates,
        Optional<String> seenThrough,
        Optional<String> label,
        Optional<String> note) {
    public static final String CLOSED = "closed";
    public static final String OPEN = "open";
    public static final String WITHDRAWN = "withdrawn";

    public Device {
        positions = List.copyOf(positions);
    }

    /** A device of which nothing is known by nameplate. */
    public Device(
            String name,
            Kind kind,
            List<String> positions,
            Optional<Between> between,
            boolean withdrawable,
            boolean remote,
            Optional<String> indicates,
            Optional<String> seenThrough,
            Optional<String> label,
            Optional<String> note) {
        this(
                name,
                kind,
                positions,
                between,
                Optional.empty(),
                withdrawable,
                remote,
                indicates,
                seenThrough,
                label,
                note);
    }

    /** Two conductors. */
    public record Between(String first, String second) {}

    /** Kinds of device. */
    public enum Kind {
        BREAKER("breaker"),
        DISCONNECTOR("disconnector"),
        LOAD_BREAK_SWITCH("load-break-switch"),
        GROUNDING_SWITCH("grounding-switch"),
        STAGE_SWITCH("stage-switch"),
        SELECTOR("selector");

        private final String code;

        Kind(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }

    /** Positions that a device of this kind has; for a selector those listed. */
    public static List<String> positionsOf(Kind kind, boolean withdrawable) {
        return switch (kind) {
            case BREAKER -> withdrawable ? List.of(CLOSED, OPEN, WITHDRAWN) : List.of(CLOSED, OPEN);
            case DISCONNECTOR, LOAD_BREAK_SWITCH, GROUNDING_SWITCH, STAGE_SWITCH -> List.of(CLOSED, OPEN);
            case SELECTOR -> List.of();
        };
    }

    /** The position in service: grounding switches open, selectors last, all others closed. */
    public String inServicePosition() {
        return switch (kind) {
            case GROUNDING_SWITCH -> OPEN;
            case SELECTOR -> positions.getLast();
            case BREAKER, DISCONNECTOR, LOAD_BREAK_SWITCH, STAGE_SWITCH -> CLOSED;
        };
    }
}
