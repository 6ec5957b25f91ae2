package org.varwright.interlock;

import java.util.Map;
import java.util.function.Predicate;
import org.varwright.bank.Device;

/** States in which a door to a stage is open, its switch is open, the conductor before the switch is grounded and the stage is not. */
final class BelievedGrounded implements Predicate<State> {
    private final Scheme scheme;

    BelievedGrounded(Scheme scheme) {
        this.scheme = scheme;
    }

    @Override
    public boolean test(State state) {
        return scheme.openDoors(state) != 0 && scheme.stages().stream().anyMatch(s -> is(state, s));
    }

    boolean is(State state, StagePoint stage) {
        Map<String, Boolean> doors = scheme.doors(state);
        String switchName = stage.switchName().orElse("");
        boolean exposed = scheme.isolation().compartments().stream()
                .anyMatch(c -> c.exposes().contains(stage.name()) && doors.getOrDefault(c.name(), false));
        if (!exposed
                || switchName.isEmpty()
                || Device.CLOSED.equals(scheme.positions(state).get(switchName))) {
            return false;
        }
        Map<String, ConductorState> conductors = scheme.conductors(state);
        boolean otherSideGrounded = scheme.isolation().device(switchName).stream()
                .flatMap(d -> d.between().stream())
                .anyMatch(b -> conductors.get(b.first()) == ConductorState.GROUNDED
                        || conductors.get(b.second()) == ConductorState.GROUNDED);
        return otherSideGrounded && conductors.get(stage.name()) != ConductorState.GROUNDED;
    }
}
