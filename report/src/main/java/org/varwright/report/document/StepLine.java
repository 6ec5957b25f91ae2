package org.varwright.report.document;

import java.util.List;

/**
 * One step of an order of work as it is printed.
 *
 * @param number of the step
 * @param kind one word for what it is: move, look, hold and the like
 * @param text what to do, said to the person who does it
 * @param details name and value, such as where, key, what should be seen, why
 * @param hold how long to wait, as text; empty where there is no wait
 * @param state what is live, charged, grounded and floating after it, one line each
 */
public record StepLine(
        int number, String kind, String text, List<Block.Facts.Fact> details, String hold, List<String> state) {
    public StepLine {
        details = List.copyOf(details);
        state = List.copyOf(state);
    }
}
