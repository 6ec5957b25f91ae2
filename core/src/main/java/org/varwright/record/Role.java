package org.varwright.record;

import java.util.List;

/** What a channel measures at a bank. */
public sealed interface Role {
    List<String> PHASES = List.of("A", "B", "C");
    List<String> PAIRS = List.of("AB", "BC", "CA");

    /** As it is typed in a channel map, such as {@code bus A}, {@code stage 1/A}, {@code stage 1/A volts}, {@code rack neutral-current}. */
    String text();

    /** Bus voltage of a phase to ground. */
    record BusVolts(String phase) implements Role {
        @Override
        public String text() {
            return "bus " + phase;
        }
    }

    /** Bus voltage from one phase to another. */
    record BusLineVolts(String pair) implements Role {
        @Override
        public String text() {
            return "bus " + pair;
        }
    }

    /** Current from the bus into a phase of a stage: that of a switch pole. */
    record StageAmperes(String stage, String phase) implements Role {
        @Override
        public String text() {
            return stage + "/" + phase;
        }
    }

    /** Current from the system into a phase of the whole bank. */
    record BankAmperes(String phase) implements Role {
        @Override
        public String text() {
            return "bank/" + phase;
        }
    }

    /** Voltage to ground at the stage's side of a switch pole. */
    record StageVolts(String stage, String phase) implements Role {
        @Override
        public String text() {
            return stage + "/" + phase + " volts";
        }
    }

    /**
     * A sensor of the bank file.
     *
     * @param name such as {@code rack neutral-current} or {@code F bridge-current A}
     * @param stage that it watches
     * @param isVolts whether it measures a voltage
     */
    record Sensor(String name, String stage, boolean isVolts) implements Role {
        @Override
        public String text() {
            return name;
        }
    }

    /** Nothing of the bank, or nothing that is of use here. */
    record None() implements Role {
        @Override
        public String text() {
            return "none";
        }
    }

    /** What a channel in this role measures. */
    default Channel.Quantity quantity() {
        return switch (this) {
            case BusVolts r -> Channel.Quantity.VOLTS;
            case BusLineVolts r -> Channel.Quantity.VOLTS;
            case StageAmperes r -> Channel.Quantity.AMPERES;
            case BankAmperes r -> Channel.Quantity.AMPERES;
            case StageVolts r -> Channel.Quantity.VOLTS;
            case Sensor r -> r.isVolts() ? Channel.Quantity.VOLTS : Channel.Quantity.AMPERES;
            case None r -> Channel.Quantity.OTHER;
        };
    }
}
