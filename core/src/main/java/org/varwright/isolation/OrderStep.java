package org.varwright.isolation;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.basis.Basis;
import org.varwright.interlock.ConductorState;
import org.varwright.interlock.Move;

/**
 * One step of an order of work.
 *
 * @param n number, counted on through the way in and the way back
 * @param kind what sort of step it is
 * @param task the same for programs
 * @param text what to do
 * @param where place at which it is done
 * @param seconds how long it takes at least [s]; empty where there is no least time
 * @param conductors what each conductor is after it, portable grounds counted in
 * @param enforcedBy whether a lock asks for it or only a rule
 * @param why it is there
 * @param keys which key goes where
 * @param expected what should be seen, heard or read; empty where nothing is
 * @param ifNot what to do where that is not so; empty where nothing is expected
 * @param secondPerson whether a second person confirms it
 * @param holdPoint whether work stops here until it is confirmed
 * @param challenge what is said and answered; empty where nothing is
 * @param items to be ticked one by one
 * @param basis of its number, such as a waiting time or a current
 */
public record OrderStep(
        int n,
        Kind kind,
        Task task,
        String text,
        String where,
        OptionalDouble seconds,
        Map<String, ConductorState> conductors,
        EnforcedBy enforcedBy,
        String why,
        List<KeyMove> keys,
        String expected,
        String ifNot,
        boolean secondPerson,
        boolean holdPoint,
        Optional<Challenge> challenge,
        List<String> items,
        Optional<Basis> basis) {
    public OrderStep {
        conductors = Collections.unmodifiableMap(new LinkedHashMap<>(conductors));
        keys = List.copyOf(keys);
        items = List.copyOf(items);
    }

    /** Sorts of step. */
    public enum Kind {
        MOVE("move"),
        LOOK("look"),
        HOLD("hold"),
        TEST("test"),
        DISCHARGE("discharge"),
        SHORT("short"),
        GROUND("ground"),
        UNGROUND("unground"),
        LOCK_ON("lock-on"),
        LOCK_OFF("lock-off"),
        COUNT("count"),
        ENERGIZE("energize"),
        CONFIRM("confirm");

        private final String code;

        Kind(String code) {
            this.code = code;
        }

        /** The word in JSON. */
        public String code() {
            return code;
        }
    }

    /** What makes sure that a step is done. */
    public enum EnforcedBy {
        /** The locks refuse a later step without it. */
        LOCK("lock"),
        /** People alone. */
        RULE("rule");

        private final String code;

        EnforcedBy(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }

    /** What must be written down with the confirmation of a step; nothing else proves that it was read there and then. */
    public enum Asks {
        /** The label of the bank or compartment, from the thing itself. */
        LABEL("label"),
        /** What the tester or meter showed. */
        READING("reading"),
        /** How many were counted. */
        COUNT("count");

        private final String code;

        Asks(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }

    /** A key that goes somewhere. */
    public record KeyMove(String key, String from, String to) {}

    /**
     * Words between two people.
     *
     * @param say what the first says
     * @param answer what the second answers after having looked
     */
    public record Challenge(String say, String answer) {}

    /** The moves of the scheme that it makes, in order. */
    public List<Move> moves() {
        return switch (task) {
            case Task.Moved moved -> List.of(moved.move());
            case Task.Energized energized -> List.of(energized.move());
            case Task.Held held -> held.waits();
            case Task.Looked ignored -> List.of();
            case Task.TesterProved ignored -> List.of();
            case Task.TestedDead ignored -> List.of();
            case Task.TestedNoCurrent ignored -> List.of();
            case Task.TestedBeforeGrounding ignored -> List.of();
            case Task.TestedFreeOfGround ignored -> List.of();
            case Task.TestedNoCapacitance ignored -> List.of();
            case Task.StickUsed ignored -> List.of();
            case Task.ShortsOn ignored -> List.of();
            case Task.ShortsOff ignored -> List.of();
            case Task.GroundsOn ignored -> List.of();
            case Task.GroundsOff ignored -> List.of();
            case Task.LocksOn ignored -> List.of();
            case Task.LocksOff ignored -> List.of();
            case Task.Counted ignored -> List.of();
            case Task.Confirmed ignored -> List.of();
        };
    }

    /** What must be written down with its confirmation, besides ticks and names. */
    public Optional<Asks> asks() {
        if (kind == Kind.TEST) {
            return Optional.of(Asks.READING);
        }
        if (task instanceof Task.Counted counted) {
            return counted.of() == Task.Counted.Things.PEOPLE_AND_TOOLS ? Optional.empty() : Optional.of(Asks.COUNT);
        }
        if (task instanceof Task.Confirmed confirmed) {
            return switch (confirmed.of()) {
                case BANK, COMPARTMENT -> Optional.of(Asks.LABEL);
                case SOURCE, BACK_FEED, WORK_MAY_BEGIN, READY_TO_ENERGIZE, SELECTOR, IN_SERVICE -> Optional.empty();
            };
        }
        return Optional.empty();
    }
}
