package org.varwright.job;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.varwright.json.Json;
import org.varwright.quantity.CalendarDate;

/** What an event says has happened. A name that ends an event's {@code type} stands beside each. */
public sealed interface Fact {
    /**
     * {@code opened}: the job begins.
     *
     * @param bankText the bank file, whole: a job carries the bank that it was worked on
     */
    record Opened(
            String title, String bankText, Optional<String> number, Optional<String> reason, Optional<String> alarm)
            implements Fact {}

    /** {@code bank-replaced}: the description of the bank was wrong and is another one now; an order of work made from the old one ends. */
    record BankReplaced(String bankText, String reason) implements Fact {}

    /**
     * {@code order-made}: an order of work is wanted.
     *
     * @param replaces event that made the order which this one takes the place of; empty for the first
     * @param bankHash SHA-256 of the bank file that it was made from, so that nobody reads it on another one; empty in logs before it was kept
     */
    record OrderMade(
            List<String> access, Origin origin, Optional<String> replaces, String reason, Optional<String> bankHash)
            implements Fact {
        public OrderMade {
            access = List.copyOf(access);
        }

        /** A wish that does not yet say what it is made from; {@link Job#propose} does. */
        public OrderMade(List<String> access, Origin origin, Optional<String> replaces, String reason) {
            this(access, origin, replaces, reason, Optional.empty());
        }
    }

    /**
     * {@code step-confirmed}: a step was done as the order says and what was expected was seen.
     *
     * @param order event that made the order
     * @param second who confirmed it beside the one who wrote it
     * @param reading what a tester, meter or count showed, as typed
     * @param label what was read, scanned or typed from the thing itself
     * @param ticked items of the step that were ticked
     * @param photo hash of an attachment
     */
    record StepConfirmed(
            String order,
            int step,
            Optional<String> second,
            Optional<String> reading,
            Optional<String> label,
            List<String> ticked,
            Optional<String> photo)
            implements Fact {
        public StepConfirmed {
            ticked = List.copyOf(ticked);
        }
    }

    /** {@code hold-started}: the clock of a waiting time starts on this device. */
    record HoldStarted(String order, int step) implements Fact {}

    /** {@code deviated}: a step was not, or could not be, done as the order says. The order ends. */
    record Deviated(String order, int step, String reason) implements Fact {}

    /** {@code stopped}: work stops. */
    record Stopped(String reason) implements Fact {}

    /**
     * {@code resumed}: everything was looked at and stands as the last confirmed step left it.
     *
     * @param stops events that it lifts: those that its device knew; empty in logs before it was kept, then all
     */
    record Resumed(String reason, List<String> stops) implements Fact {
        public Resumed {
            stops = List.copyOf(stops);
        }

        /** A wish that does not yet say which stops it lifts; {@link Job#propose} does. */
        public Resumed(String reason) {
            this(reason, List.of());
        }
    }

    /** {@code signed-on}: a person works on the bank, under an own lock. */
    record SignedOn(String person, Optional<String> lock) implements Fact {}

    /** {@code signed-off}: that person, tools and lock are off. */
    record SignedOff(String person) implements Fact {}

    /**
     * {@code reading-taken}: one unit was measured.
     *
     * @param values column of a readings table to what was typed, such as {@code capacitance} to {@code 12.7 uF}
     */
    record ReadingTaken(String position, Map<String, String> values) implements Fact {
        public ReadingTaken {
            values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
        }
    }

    /** {@code readings-imported}: a table of readings, whole, as text. */
    record ReadingsImported(String fileName, String text) implements Fact {}

    /** {@code spares-imported}: a table of spares, whole, as text. */
    record SparesImported(String fileName, String text) implements Fact {}

    /**
     * {@code unit-moved}: a unit was lifted.
     *
     * @param from position it left; empty where it came from the store
     * @param to position it stands at now; empty where it was taken away
     */
    record UnitMoved(String serial, Optional<String> from, Optional<String> to) implements Fact {}

    /** {@code measured}: a value at the energized bank, such as {@code stage 3/A} and {@code 28.1 A}, or {@code bus} and {@code 12.4 kV}. */
    record Measured(String place, String value) implements Fact {}

    /** {@code as-left}: the position in which a selector was left. */
    record AsLeft(String selector, String position) implements Fact {}

    /** {@code noted}: free words. */
    record Noted(String text) implements Fact {}

    /** {@code attached}: a photo or file, kept by its content. */
    record Attached(String name, String mediaType, String sha256, int bytes) implements Fact {}

    /**
     * {@code record-read}: a disturbance record was read.
     *
     * @param name of its file
     * @param sha256 hash of its content; of several files, of the first that was named
     * @param findings what it says, a sentence each
     */
    record RecordRead(String name, String sha256, List<String> findings) implements Fact {
        public RecordRead {
            findings = List.copyOf(findings);
        }
    }

    /** {@code clock-moved}: the device saw its own clock jump; waiting times that run on it start anew. */
    record ClockMoved(long fromMillis, long toMillis) implements Fact {}

    /** {@code corrected}: an earlier event is wrong and counts no longer. */
    record Corrected(String event, String reason) implements Fact {}

    /** {@code settled}: of events that disagree, this one holds. */
    record Settled(String event, String reason) implements Fact {}

    /**
     * {@code visit-agreed}: when somebody comes to this bank again, and what for. It takes the place of what the same device said before.
     *
     * @param purpose what for, in words
     * @param replaces events of other devices, known to the one who writes, that it takes the place of too
     */
    record VisitAgreed(CalendarDate date, String purpose, List<String> replaces) implements Fact {
        public VisitAgreed {
            purpose = purpose.strip();
            replaces = List.copyOf(replaces);
        }

        /** Whether both say the same. */
        boolean saysAs(VisitAgreed other) {
            return date.equals(other.date) && purpose.equals(other.purpose);
        }
    }

    /**
     * {@code meter-stated}: how far a capacitance meter may be off. Every reading of the job is judged by it, whenever it was taken. It takes the
     * place of what the same device said of that meter before.
     *
     * @param instrument the meter's name in the readings; empty for every meter that is not stated by its name
     * @param limit limits of error, part of the reading, as typed, such as {@code 0.5 %}
     * @param replaces events of other devices, known to the one who writes, that it takes the place of too
     */
    record MeterStated(Optional<String> instrument, String limit, List<String> replaces) implements Fact {
        public MeterStated {
            replaces = List.copyOf(replaces);
        }
    }

    /** {@code signed}: somebody vouches for the log as it stood. */
    record Signed(String role, String logHash) implements Fact {}

    /** {@code closed}: the job is over. */
    record Closed(String outcome) implements Fact {}

    /** Written by a later version of the product: kept, shown, not counted. */
    record NotUnderstood(String type, Json body) implements Fact {}

    /** Where things stand when an order of work begins. */
    sealed interface Origin {
        /**
         * {@code as-found}: devices in these positions and these doors open, everything else in service.
         *
         * @param grounds conductor to the number of portable grounds found on it
         * @param shorts stage to the number of its units found shorted
         */
        record AsFound(
                Map<String, String> positions,
                List<String> openDoors,
                Map<String, Integer> grounds,
                Map<String, Integer> shorts)
                implements Origin {
            public AsFound {
                positions = Collections.unmodifiableMap(new LinkedHashMap<>(positions));
                openDoors = List.copyOf(openDoors);
                grounds = Collections.unmodifiableMap(new LinkedHashMap<>(grounds));
                shorts = Collections.unmodifiableMap(new LinkedHashMap<>(shorts));
            }

            /** Everything in service, nothing grounded. */
            public static AsFound inService() {
                return new AsFound(Map.of(), List.of(), Map.of(), Map.of());
            }

            boolean isInService() {
                return positions.isEmpty() && openDoors.isEmpty() && grounds.isEmpty() && shorts.isEmpty();
            }
        }

        /**
         * {@code after-last-step}: as the last confirmed step of the order that it replaces left them.
         *
         * @param steps how many steps of that order its device knew to be done; empty in logs before it was kept
         */
        record AfterLastStep(OptionalInt steps) implements Origin {
            /** After the last step, whichever it is; {@link Job#propose} says which. */
            public AfterLastStep() {
                this(OptionalInt.empty());
            }
        }
    }
}
