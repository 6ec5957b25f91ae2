package org.varwright.triage;

import java.util.List;

/**
 * What may be behind a symptom.
 *
 * @param id for programs, such as {@code unit-failed}
 * @param text in words
 * @param rank how often it is that
 * @param speaksFor what speaks for it
 * @param speaksAgainst what speaks against it, or would
 * @param checks what tells, from outside first
 */
public record Cause(
        String id,
        String text,
        Rank rank,
        List<Statement> speaksFor,
        List<Statement> speaksAgainst,
        List<Inspection> checks) {
    public Cause {
        speaksFor = List.copyOf(speaksFor);
        speaksAgainst = List.copyOf(speaksAgainst);
        checks = List.copyOf(checks);
    }

    /** How often it is that: common practice, not counted anywhere. */
    public enum Rank {
        LIKELY("likely"),
        POSSIBLE("possible"),
        RARE("rare");

        private final String code;

        Rank(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }
}
