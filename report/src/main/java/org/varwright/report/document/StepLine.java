package org.varwright.report.document;

import java.util.List;

/**
 * One step of an order of work as it is printed.
 *
 * @param number of the step
 * @param kind one word for what it is: move, look, hold and the like
 * @param text what to do, said to the person who does it
 * @param frames what must not be missed, each in a frame, such as a wait or a stop
 * @param items to be ticked one by one, in groups
 * @param details name and value, such as where, key, what should be seen, why
 * @param state what is live, charged, grounded and floating after it, one line each
 * @param signers who signs for it, at least one
 */
public record StepLine(
        int number,
        String kind,
        String text,
        List<String> frames,
        List<Items> items,
        List<Block.Facts.Fact> details,
        List<String> state,
        List<String> signers) {
    public StepLine {
        frames = List.copyOf(frames);
        items = List.copyOf(items);
        details = List.copyOf(details);
        state = List.copyOf(state);
        signers = List.copyOf(signers);
    }

    /**
     * Things to be ticked one by one.
     *
     * @param each what is done to each of them; empty where the names say it
     * @param names one for each box
     */
    public record Items(String each, List<String> names) {
        public Items {
            names = List.copyOf(names);
        }
    }
}
