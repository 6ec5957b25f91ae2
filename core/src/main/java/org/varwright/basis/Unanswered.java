package org.varwright.basis;

/**
 * Something that can't be answered, because a datum is missing.
 *
 * @param missing path in the bank file, such as {@code system.short-circuit}
 * @param effect what can't be said without it
 */
public record Unanswered(String missing, String effect) {
    /** One line for people. */
    public String print() {
        return missing + " is not given: " + effect;
    }
}
