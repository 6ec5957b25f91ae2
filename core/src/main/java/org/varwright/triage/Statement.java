package org.varwright.triage;

import org.varwright.basis.Source;

/** A sentence and where it comes from. */
public record Statement(String text, Source source) {
    static Statement practice(String text) {
        return new Statement(text, Source.COMMON_PRACTICE);
    }

    static Statement physics(String text) {
        return new Statement(text, Source.FIRST_PRINCIPLES);
    }
}
