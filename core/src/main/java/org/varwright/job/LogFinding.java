package org.varwright.job;

/** Something about a log that its own chain of hashes shows. None of it takes a line away. */
public sealed interface LogFinding {
    /** In words, with what to do. */
    String text();

    /** The last line ends in the middle: power was lost while it was written. It was never acknowledged. */
    record TornLine(int line) implements LogFinding {
        @Override
        public String text() {
            return "line " + line
                    + " ends in the middle: it was being written when the device lost power, and was never"
                    + " confirmed on its screen; look whether what it would have said was done";
        }
    }

    /** A line that can't be read. */
    record UnreadableLine(int line, String why) implements LogFinding {
        @Override
        public String text() {
            return "line " + line + " can't be read (" + why + "); it is kept as it is and not counted";
        }
    }

    /** A device's lines are not all here. */
    record Missing(String device, int from, int to) implements LogFinding {
        @Override
        public String text() {
            return (from == to
                            ? "event " + device + ":" + from + " is"
                            : "events " + device + ":" + from + " to " + to + " are")
                    + " not in this log; merge it with the log on " + device;
        }
    }

    /** A line does not follow from the line before it: one of the two was changed. */
    record BrokenChain(String event) implements LogFinding {
        @Override
        public String text() {
            return "event " + event
                    + " does not follow from the line before it: one of the two was changed after it was"
                    + " written; do not rely on this log";
        }
    }

    /** Two different lines claim to be the same event: a device was copied, or put back from a backup. */
    record Forked(String event) implements LogFinding {
        @Override
        public String text() {
            return "there are two different events " + event
                    + ": a device was copied or put back from a backup; both are"
                    + " kept, and a person has to say which holds";
        }
    }

    /** A device's order of events ran backwards. */
    record ClockBackwards(String event) implements LogFinding {
        @Override
        public String text() {
            return "event " + event
                    + " is dated before the one before it on the same device; the log was changed, or the"
                    + " device lost its memory";
        }
    }
}
