package org.varwright.record;

import java.util.List;
import org.varwright.basis.Basis;

/**
 * Something that the record says.
 *
 * @param kind code of the sort, such as {@code restrike}
 * @param weight how much it matters
 * @param seconds when, from the first sample [s]
 * @param where stage, sensor or bus
 * @param words one or two sentences for a person
 * @param evidence what it rests on
 * @param basis how its number came about
 */
public record Finding(
        String kind, Weight weight, double seconds, String where, String words, List<Evidence> evidence, Basis basis) {
    public Finding {
        evidence = List.copyOf(evidence);
    }

    /** How much a finding matters. */
    public enum Weight {
        /** What happened. */
        NOTE("note"),
        /** To be looked into. */
        LOOK("look"),
        /** Something failed. */
        FAILED("failed");

        private final String code;

        Weight(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }
}
