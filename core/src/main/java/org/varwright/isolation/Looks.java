package org.varwright.isolation;

import org.varwright.bank.Device;

/** The look that follows a move that isolates or grounds. */
final class Looks {
    private Looks() {}

    /** Whether the gap or the blades themselves can be seen: through something, or because the breaker is out. */
    static boolean blades(Device device, String position) {
        return device.seenThrough().isPresent() || position.equals(Device.WITHDRAWN);
    }

    static void add(Draft draft, Device device, String position) {
        boolean blades = blades(device, position);
        boolean grounding = device.kind() == Device.Kind.GROUNDING_SWITCH;
        String name = draft.phrases.device(device.name());
        String seen = switch (position) {
            case Device.CLOSED -> "all three blades fully in";
            case Device.WITHDRAWN -> "the breaker is out, the gap is there on all three phases, shutters shut";
            default -> "three open gaps, one a phase";
        };
        String text;
        if (position.equals(Device.WITHDRAWN)) {
            text = "Look at " + name + " itself: it is out at its withdrawn stop, and all three gaps are there.";
        } else if (blades) {
            text = "Look through the " + device.seenThrough().orElse("opening") + " of " + name
                    + ", with a light, at each of the three blades.";
        } else {
            text = "Look at " + name + ": its handle"
                    + device.indicates().map(i -> " and its " + i).orElse("")
                    + " must say " + position + ". The blades can't be seen, so this look proves nothing by itself"
                    + (grounding
                            ? ": the portable " + draft.phrases.words().ground() + "s carry the burden."
                            : ": the test carries the burden.");
        }
        draft.line(
                        OrderStep.Kind.LOOK,
                        new Task.Looked(device.name(), position, blades),
                        draft.phrases.at(device),
                        text)
                .why(
                        blades
                                ? "an indicator, a lamp or a handle does not count as a visible break: a pole can stay behind"
                                : "a handle or lamp that disagrees is a fault in itself; one that agrees is not a visible break")
                .expect(
                        blades ? seen : "it says " + position,
                        "stop; treat everything behind it as live; tell the person in charge")
                .secondPerson()
                .add();
    }
}
