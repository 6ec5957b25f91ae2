package org.varwright.interlock;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * What came of verifying a scheme.
 *
 * @param states how many states were reached
 * @param moves how many moves were followed, from every state every move that it allows
 * @param visited how many states were held: of states that differ only by swapping stages that are alike one stands for all
 * @param complete whether that is all of them
 * @param depth the most moves that it takes to reach a state seen
 * @param peakBytes memory that the search held at most, while its table grew included
 * @param heldBytes memory that it held in the end
 * @param possible every move that was possible somewhere
 * @param outcomes for every property, in order
 */
public record Verification(
        long states,
        long moves,
        long visited,
        boolean complete,
        int depth,
        long peakBytes,
        long heldBytes,
        Set<Move> possible,
        Map<Property, Outcome> outcomes) {

    /** What came of one property. */
    public sealed interface Outcome {
        /** No reachable state breaks it; {@code states} were looked at and there are no more. */
        record Enforced(long states) implements Outcome {}

        /** Broken by the last move of {@code path} or the state after it; no shorter way breaks it. Empty where the start itself breaks it. */
        record NotEnforced(List<Step> path) implements Outcome {
            public NotEnforced {
                path = List.copyOf(path);
            }
        }

        /** Not known: given up within this limit. Never to be read as enforced. */
        record Undecided(String limit) implements Outcome {}
    }

    public Outcome outcome(Property property) {
        return Objects.requireNonNull(outcomes.get(property));
    }

    public boolean isEnforced(Property property) {
        return outcome(property) instanceof Outcome.Enforced;
    }
}
