package org.varwright.isolation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.varwright.bank.Device;
import org.varwright.interlock.ConductorState;
import org.varwright.interlock.Move;
import org.varwright.interlock.Property;
import org.varwright.interlock.Scheme;
import org.varwright.interlock.State;
import org.varwright.interlock.Step;

/** Why each move of a way is there, and whether the locks or only people make sure of it: found by leaving it out and trying the rest (ISO-7). */
final class Reasons {
    private final Scheme scheme;
    private final Phrases phrases;
    private final State start;
    private final List<Step> path;

    Reasons(Scheme scheme, Phrases phrases, State start, List<Step> path) {
        this.scheme = scheme;
        this.phrases = phrases;
        this.start = start;
        this.path = path;
    }

    /** Why a move is there. */
    record Reason(boolean byLock, String why) {}

    Reason of(int index) {
        State before = index == 0 ? start : path.get(index - 1).after();
        String purpose = purpose(before, path.get(index));
        State state = before;
        for (int i = index + 1; i < path.size(); i++) {
            Move move = path.get(i).move();
            if (!scheme.allows(state, move) && move instanceof Move.Wait) {
                // what can't be waited for stays charged, and whatever needs it discharged says so
                continue;
            }
            if (!scheme.allows(state, move)) {
                List<String> refusals = scheme.refusals(state, move);
                return new Reason(
                        true,
                        purpose + "the locks refuse \"" + move.text() + "\" without it"
                                + (refusals.isEmpty() ? "" : ": " + refusals.getFirst()));
            }
            State after = scheme.apply(state, move);
            List<Property> broken = new ArrayList<>();
            scheme.broken(after).stream().filter(Exposure.NEVER::contains).forEach(broken::add);
            if (move instanceof Move.Operate) {
                Set<Property> by = scheme.brokenBy(state, move);
                by.stream().filter(p -> !broken.contains(p)).forEach(broken::add);
            }
            if (!broken.isEmpty()) {
                return new Reason(
                        false,
                        purpose + "no lock asks for it, but without it \"" + move.text() + "\" would break "
                                + broken.getFirst().id() + ": "
                                + broken.getFirst().claim());
            }
            state = after;
        }
        return new Reason(
                false,
                purpose.isEmpty() ? "it belongs to what was asked for" : purpose.substring(0, purpose.length() - 2));
    }

    /** What the move changes, ended by a semicolon, or nothing. */
    private String purpose(State before, Step step) {
        Map<String, ConductorState> was = scheme.conductors(before);
        Map<String, ConductorState> is = scheme.conductors(step.after());
        List<String> parts = new ArrayList<>();
        for (ConductorState to : ConductorState.values()) {
            List<String> names = is.entrySet().stream()
                    .filter(e -> e.getValue() == to && was.get(e.getKey()) != to)
                    .map(Map.Entry::getKey)
                    .toList();
            if (!names.isEmpty()) {
                parts.add(Phrases.list(names) + (names.size() == 1 ? " becomes " : " become ") + phrases.word(to));
            }
        }
        if (parts.isEmpty()
                && step.move() instanceof Move.Operate operate
                && scheme.isolation()
                        .device(operate.device())
                        .filter(d -> d.kind() == Device.Kind.SELECTOR)
                        .isPresent()) {
            parts.add("the controller follows the selector");
        }
        return parts.isEmpty() ? "" : String.join(", ", parts) + "; ";
    }
}
