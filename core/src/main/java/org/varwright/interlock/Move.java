package org.varwright.interlock;

import java.util.List;
import java.util.Optional;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Lock;

/** One thing that somebody does, or a wait. */
public sealed interface Move {
    /** The verb in JSON: {@code withdraw}, {@code extend}, {@code operate}, {@code open-door}, {@code close-door}, {@code give}, {@code return}, {@code wait}. */
    String action();

    /** Name of what is moved: device, compartment, exchange or stage. */
    String what();

    /** The position that it comes to, for a device. */
    default Optional<String> to() {
        return Optional.empty();
    }

    /** The keys that are trapped or freed. */
    default List<String> keys() {
        return List.of();
    }

    /** What to do, in words. */
    String text();

    /** A bolt is withdrawn: its keys are put in, turned and trapped. */
    record Withdraw(Lock lock) implements Move {
        @Override
        public String action() {
            return "withdraw";
        }

        @Override
        public String what() {
            return lock.on().name();
        }

        @Override
        public List<String> keys() {
            return lock.keys();
        }

        @Override
        public String text() {
            return "put " + Words.keys(lock.keys()) + " into the lock of " + Words.lock(lock)
                    + " and withdraw the bolt; " + (lock.keys().size() == 1 ? "the key is" : "the keys are")
                    + " trapped";
        }
    }

    /** A bolt is extended: what it is on is held and its keys come free. */
    record Extend(Lock lock) implements Move {
        @Override
        public String action() {
            return "extend";
        }

        @Override
        public String what() {
            return lock.on().name();
        }

        @Override
        public List<String> keys() {
            return lock.keys();
        }

        @Override
        public String text() {
            return "extend the bolt of the lock of " + Words.lock(lock) + " and take " + Words.keys(lock.keys());
        }
    }

    /** A device comes to a position. */
    record Operate(String device, String position) implements Move {
        @Override
        public String action() {
            return "operate";
        }

        @Override
        public String what() {
            return device;
        }

        @Override
        public Optional<String> to() {
            return Optional.of(position);
        }

        @Override
        public String text() {
            return switch (position) {
                case "open" -> "open " + device;
                case "closed" -> "close " + device;
                case "withdrawn" -> "withdraw " + device;
                default -> "turn " + device + " to " + position;
            };
        }
    }

    /** A door is opened. */
    record OpenDoor(String compartment) implements Move {
        @Override
        public String action() {
            return "open-door";
        }

        @Override
        public String what() {
            return compartment;
        }

        @Override
        public String text() {
            return "open the door of " + compartment;
        }
    }

    /** A door is closed. */
    record CloseDoor(String compartment) implements Move {
        @Override
        public String action() {
            return "close-door";
        }

        @Override
        public String what() {
            return compartment;
        }

        @Override
        public String text() {
            return "close the door of " + compartment;
        }
    }

    /** The keys of one side go into an exchange, those of the other come out. */
    record Give(KeyExchange exchange) implements Move {
        @Override
        public String action() {
            return "give";
        }

        @Override
        public String what() {
            return exchange.name();
        }

        @Override
        public List<String> keys() {
            return exchange.in();
        }

        @Override
        public String text() {
            return "put " + Words.keys(exchange.in()) + " into " + exchange.name() + " and take "
                    + Words.keys(exchange.out());
        }
    }

    /** The keys that came out of an exchange go back, those that went in come out. */
    record Return(KeyExchange exchange) implements Move {
        @Override
        public String action() {
            return "return";
        }

        @Override
        public String what() {
            return exchange.name();
        }

        @Override
        public List<String> keys() {
            return exchange.out();
        }

        @Override
        public String text() {
            return "put " + Words.keys(exchange.out()) + " back into " + exchange.name() + " and take "
                    + Words.keys(exchange.in());
        }
    }

    /** The waiting time of a stage passes. */
    record Wait(String stage) implements Move {
        @Override
        public String action() {
            return "wait";
        }

        @Override
        public String what() {
            return stage;
        }

        @Override
        public String text() {
            return "wait until the discharge time of " + stage + " has passed";
        }
    }
}
