package org.varwright.interlock;

import java.util.List;
import java.util.Set;

/**
 * Something that is wrong with a scheme by design.
 *
 * @param kind which fault
 * @param text what is wrong, in plain words
 * @param harm the shortest way to the harm; empty where it stands there from the start
 * @param remedies changes of lock or rule that close it, each tried and proven; empty where none of those tried does
 * @param rule what a person must do as long as it is so
 */
public record DesignFault(Kind kind, String text, List<Step> harm, List<Remedy> remedies, String rule) {
    public DesignFault {
        harm = List.copyOf(harm);
        remedies = List.copyOf(remedies);
    }

    /** Faults by name, worst first. */
    public enum Kind {
        SHARED_KEY("shared-key", "two banks with the same key"),
        SECOND_COPY("second-copy", "second copy of a key"),
        KEY_FREE_DOOR_OPEN("key-free-door-open", "key free with its door open"),
        DOOR_WITHOUT_LOCK("door-without-lock", "door without a lock"),
        WRONG_POSITION("wrong-position", "lock that holds the wrong position"),
        SOURCE_LEFT_OUT("source-left-out", "source left out of the scheme"),
        MISSING_DELAY("missing-delay", "missing delay"),
        MISSING_INTERLOCK("missing-interlock", "devices that nothing keeps apart"),
        KEY_LOOP("key-loop", "key loop that can never start"),
        KEY_STRANDED("key-stranded", "key that gets stranded"),
        STAGE_NOT_GROUNDED("stage-not-grounded", "stage behind an open switch believed grounded"),
        FLOATING_NEUTRAL("floating-neutral", "floating neutral that a three-pole switch does not ground");

        private final String id;
        private final String title;

        Kind(String id, String title) {
            this.id = id;
            this.title = title;
        }

        /** The name in JSON. */
        public String id() {
            return id;
        }

        /** The name in words. */
        public String title() {
            return title;
        }
    }

    /**
     * A change that was made to a copy of the scheme, which was then verified anew.
     *
     * @param text what to change
     * @param closes properties that were broken and are proven with the change
     * @param states how many states that proof covers
     */
    public record Remedy(String text, Set<Property> closes, long states) {
        public Remedy {
            closes = Set.copyOf(closes);
        }
    }
}
