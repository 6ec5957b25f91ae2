package org.varwright.isolation;

import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.interlock.Move;

/** What a step does, for programs; its text says the same to people. */
public sealed interface Task {
    /** A device, bolt, exchange or door is moved. */
    record Moved(Move move) implements Task {}

    /** A device is moved that makes stages live. */
    record Energized(Move move, List<String> stages) implements Task {
        public Energized {
            stages = List.copyOf(stages);
        }
    }

    /** Time passes for these stages; {@code waits} are the moves of the scheme, if any. */
    record Held(List<Move> waits, List<String> stages) implements Task {
        public Held {
            waits = List.copyOf(waits);
            stages = List.copyOf(stages);
        }
    }

    /** A device is looked at; {@code blades}: its open or closed blades themselves are seen, not only an indicator. */
    record Looked(String device, String position, boolean blades) implements Task {}

    /** The tester is proved on a known live source. */
    record TesterProved(boolean again) implements Task {}

    /** A conductor is tested for absence of voltage in a compartment, every phase and neutral. */
    record TestedDead(String compartment, String conductor) implements Task {}

    /** The current of every phase is read and must be zero before a device that can't break it is opened. */
    record TestedNoCurrent(String before) implements Task {}

    /** A conductor is tested for absence of voltage before a grounding switch is closed on it. */
    record TestedBeforeGrounding(String device, String conductor) implements Task {}

    /** A conductor is proved free of capacitance, which a stage behind a switch that stayed closed would show, before a disconnector makes it live. */
    record TestedNoCapacitance(String device, String conductor) implements Task {}

    /** A conductor is proved free of ground before it is made live. */
    record TestedFreeOfGround(String device, String conductor) implements Task {}

    /** Every unit of a stage is discharged with the stick. */
    record StickUsed(String compartment, String stage) implements Task {}

    /** Every unit of a stage is shorted, terminals to each other and to case. */
    record ShortsOn(String compartment, String stage, int count) implements Task {}

    record ShortsOff(String stage, int count) implements Task {}

    /** Portable grounds are put on a conductor, one a phase, and one on the floating neutral. */
    record GroundsOn(String compartment, String conductor, int count) implements Task {}

    record GroundsOff(String conductor, int count) implements Task {}

    /** Every person puts an own lock on each of these devices. */
    record LocksOn(List<String> devices) implements Task {
        public LocksOn {
            devices = List.copyOf(devices);
        }
    }

    record LocksOff(List<String> devices) implements Task {
        public LocksOff {
            devices = List.copyOf(devices);
        }
    }

    /** Things are counted. */
    record Counted(Things of, int count) implements Task {
        /** What is counted. */
        public enum Things {
            KEYS_OUT,
            SHORTS_AND_GROUNDS,
            PEOPLE_AND_TOOLS,
            KEYS_HOME
        }
    }

    /** Something is confirmed aloud. */
    record Confirmed(Point of, String name) implements Task {
        /** What is confirmed. */
        public enum Point {
            BANK,
            COMPARTMENT,
            SOURCE,
            BACK_FEED,
            WORK_MAY_BEGIN,
            READY_TO_ENERGIZE,
            SELECTOR,
            IN_SERVICE
        }

        /** What stands on the bank or compartment that is confirmed, its name where the file has no label; empty where it is told by something else. */
        public Optional<String> label(Bank bank) {
            return switch (of) {
                case BANK -> Optional.of(bank.label().orElse(bank.name()));
                case COMPARTMENT ->
                    bank.isolation()
                            .flatMap(i -> i.compartment(name))
                            .flatMap(Compartment::label)
                            .or(() -> Optional.of(name));
                case SOURCE, BACK_FEED, WORK_MAY_BEGIN, READY_TO_ENERGIZE, SELECTOR, IN_SERVICE -> Optional.empty();
            };
        }
    }
}
