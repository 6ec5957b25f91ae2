package org.varwright.isolation;

import java.util.OptionalInt;

/**
 * One single thing wrong, and the step that shows it (ISO-6).
 *
 * @param kind of fault
 * @param what device, stage, key or conductor it is in
 * @param text in words
 * @param caughtAtStep number of the step that shows it; empty where none does
 * @param how how it is shown, or why nothing needs to show it, or what it would do
 * @param harms whether it would reach a hand, or make an arc, if nothing showed it
 */
public record Fault(Kind kind, String what, String text, OptionalInt caughtAtStep, String how, boolean harms) {
    /** Whether this is a hole in the plan. */
    public boolean isHole() {
        return harms && caughtAtStep.isEmpty();
    }

    /** Kinds of single fault. */
    public enum Kind {
        POLE_STAYED_CLOSED("pole-stayed-closed"),
        WELDED("welded"),
        LAMP_LIES("lamp-lies"),
        BLADE_DID_NOT_CLOSE("blade-did-not-close"),
        BLADE_DID_NOT_OPEN("blade-did-not-open"),
        RESISTOR_OPEN("resistor-open"),
        SECOND_KEY("second-key"),
        SOURCE_FROM_ELSEWHERE("source-from-elsewhere"),
        GROUND_LEFT_ON("ground-left-on");

        private final String code;

        Kind(String code) {
            this.code = code;
        }

        /** The word in JSON. */
        public String code() {
            return code;
        }
    }
}
