package org.varwright.triage;

import java.util.List;
import org.varwright.basis.Source;

/**
 * Something to look at or measure.
 *
 * @param text what, and what it tells
 * @param from where one stands
 * @param things of the bank that it is about
 * @param compartments that must be opened under an order of work for it; empty unless {@code from} is inside
 * @param source of what is said
 */
public record Inspection(String text, From from, List<Thing> things, List<String> compartments, Source source) {
    public Inspection {
        things = List.copyOf(things);
        compartments = List.copyOf(compartments);
    }

    /** Where one stands, the harmless first. */
    public enum From {
        /** At a desk: records, settings, a telephone call. */
        DESK("desk"),
        /** At the bank, every door shut. */
        OUTSIDE("outside"),
        /** With the door open: only by an order of work, after the dead has been proven. */
        INSIDE("inside");

        private final String code;

        From(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }
}
