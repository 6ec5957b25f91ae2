package org.varwright.interlock;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import org.varwright.problem.VarwrightException;

/** Tries changes on copies of a scheme; only what is then proven counts. */
final class Trials {
    private static final int PROPOSED_AT_MOST = 3;
    private static final int ALL = -1;
    /** What a scheme in which nothing moves keeps for no good reason need not stay, but nobody may come to harm by keys alone. */
    private static final int HARM = Property.EXPOSED_LIVE.bit()
            | Property.EXPOSED_CHARGED.bit()
            | Property.CLOSED_TO_GROUND.bit()
            | Property.LOAD_BREAK.bit()
            | Property.GROUNDED_CHARGED.bit()
            | Property.KEY_STRANDED.bit();

    private final Scheme scheme;
    private final Verification before;
    private final long memoryBytes;
    private final Verifier.Progress progress;
    private long statesLeft;

    /**
     * Trials of one scheme.
     *
     * @param statesLeft how many states all trials together may visit; a large scheme gets few trials rather than a long wait
     */
    Trials(Scheme scheme, Verification before, long memoryBytes, Verifier.Progress progress, long statesLeft) {
        this.scheme = scheme;
        this.before = before;
        this.memoryBytes = memoryBytes;
        this.progress = progress;
        this.statesLeft = statesLeft;
    }

    /** A change with its proof. */
    record Proven(Change change, DesignFault.Remedy remedy) {}

    /** The first changes (of delays on closing, which only grow, the first) that make the property hold, break nothing that held, and keep every move to open a door. */
    List<Proven> closing(Property property, List<Change> changes) {
        return proven(
                changes,
                property == Property.RECHARGE ? 1 : PROPOSED_AT_MOST,
                property.bit(),
                ALL,
                (changed, after) -> after.isEnforced(property));
    }

    /** The first changes after which this move happens somewhere, and nothing that held and keeps people from harm is broken. */
    List<Proven> allowing(Move move, List<Change> changes) {
        return proven(
                changes,
                PROPOSED_AT_MOST,
                0,
                HARM,
                (changed, after) -> after.possible().contains(move));
    }

    /** The first changes with which something more holds as well, and nothing that held is broken. */
    List<Proven> making(BiPredicate<Scheme, Verification> wanted, List<Change> changes) {
        return proven(changes, PROPOSED_AT_MOST, 0, ALL, wanted);
    }

    private List<Proven> proven(
            List<Change> changes,
            int proposedAtMost,
            int mustHold,
            int keep,
            BiPredicate<Scheme, Verification> wanted) {
        return changes.stream()
                .map(change -> tried(change, mustHold, keep, wanted))
                .flatMap(Optional::stream)
                .limit(proposedAtMost)
                .toList();
    }

    private Optional<Proven> tried(Change change, int mustHold, int keep, BiPredicate<Scheme, Verification> wanted) {
        if (statesLeft <= 0) {
            return Optional.empty();
        }
        Scheme changed;
        try {
            changed = Scheme.of(change.isolation(), scheme.stages());
        } catch (VarwrightException contradiction) {
            // such as a key that would be trapped twice at the start: not a scheme at all
            return Optional.empty();
        }
        int held = 0;
        for (Property property : Property.values()) {
            held |= before.isEnforced(property) ? property.bit() & keep : 0;
        }
        long limit = statesLeft;
        Verification after = Verifier.verify(
                changed,
                memoryBytes,
                (states, moves, depth) -> states <= limit && progress.goOn(states, moves, depth),
                held | mustHold);
        statesLeft -= after.visited();
        boolean doorsStillOpen = before.possible().stream()
                .filter(m -> m instanceof Move.OpenDoor)
                .allMatch(after.possible()::contains);
        if (!after.complete() || !doorsStillOpen || !wanted.test(changed, after)) {
            return Optional.empty();
        }
        Set<Property> closes = EnumSet.noneOf(Property.class);
        for (Property property : Property.values()) {
            if (!before.isEnforced(property) && after.isEnforced(property)) {
                closes.add(property);
            }
        }
        List<String> lost = EnumSet.allOf(Property.class).stream()
                .filter(p -> before.isEnforced(p) && !after.isEnforced(p))
                .map(Property::id)
                .toList();
        String text = change.text() + (lost.isEmpty() ? "" : "; then to be kept by rule: " + Words.list(lost));
        return Optional.of(new Proven(change, new DesignFault.Remedy(text, closes, after.states())));
    }
}
