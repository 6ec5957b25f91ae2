package org.varwright.triage;

import java.util.List;

/**
 * Something to bring.
 *
 * @param text what, with its rating
 * @param things of the bank file that it is for
 */
public record Bring(String text, List<Thing> things) {
    public Bring {
        things = List.copyOf(things);
    }
}
