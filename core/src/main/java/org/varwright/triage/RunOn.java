package org.varwright.triage;

import java.util.List;

/**
 * Whether the bank may stay or go back in service before anybody has opened it. No answer means that it is harmless to come near.
 *
 * @param answer in a word
 * @param text in a sentence
 * @param conditions under which it may; empty unless it may
 * @param basis what the answer rests on
 */
public record RunOn(Answer answer, String text, List<String> conditions, List<Statement> basis) {
    public RunOn {
        conditions = List.copyOf(conditions);
        basis = List.copyOf(basis);
    }

    /** In a word. */
    public enum Answer {
        YES_WITH("yes-with"),
        NO("no"),
        UNDECIDED("undecided");

        private final String code;

        Answer(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }
}
