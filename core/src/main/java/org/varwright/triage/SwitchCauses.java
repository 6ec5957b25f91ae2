package org.varwright.triage;

import java.util.List;
import java.util.Locale;
import org.varwright.bank.Control;
import org.varwright.bank.Isolation;

/** Causes in switches and what drives and blocks them. */
final class SwitchCauses {
    private final Scene scene;
    private final List<Thing> switches;

    SwitchCauses(Scene scene) {
        this.scene = scene;
        switches = scene.things(scene.switches());
    }

    private String which() {
        return Scene.named(switches, "the switch of " + scene.which());
    }

    Cause poleOpen() {
        return Causes.possible(
                        "phase-open", "One pole of " + which() + ", a line fuse or a lead is open: a phase is missing")
                .speaksFor(
                        Statement.physics("a phase without current makes the largest unbalance that there is, at once"))
                .against("all three line currents are there")
                .check(scene.outside(
                        "Read the current of each phase of " + scene.which()
                                + " at the relay or with instruments that are already fitted.",
                        scene.stageThings()));
    }

    Cause poleStuck() {
        return Causes.likely("pole-stuck", "A pole of " + which() + " is welded, or its drive is stuck")
                .speaksFor("one or two phases still draw current though the indicator says open")
                .against(
                        "no phase draws current: then it did open, and its indicator is wrong; that proves nothing dead")
                .check(
                        scene.outside(
                                "Read the current of each phase of " + scene.which()
                                        + ". The indicator and the lamp of " + which() + " prove nothing.",
                                switches),
                        scene.inside(
                                "Measure contact resistance and stroke of every pole, after what feeds it was opened ahead of it.",
                                switches,
                                scene.compartments()));
    }

    Cause drive() {
        return Causes.likely("drive", "Coil, latch or mechanism of " + which() + " does not act")
                .speaksFor("the command arrives (a relay clicks, a lamp changes) and nothing moves")
                .check(
                        scene.outside(
                                "Ask what was heard and seen when " + which()
                                        + " got its command. It is not given again.",
                                switches),
                        scene.inside(
                                "Measure coil resistance and voltage at the coil; move the mechanism by hand.",
                                switches,
                                scene.compartments()));
    }

    /** What a file says must be so before the switch may close. */
    Cause blocked() {
        List<String> blocks = scene.isolation().map(Isolation::interlocks).orElse(List.of()).stream()
                .filter(i -> switches.stream().anyMatch(s -> s.name().equals(i.device())) && i.to().equals("closed"))
                .map(i -> i.device() + " closes only with "
                        + String.join(
                                ", ",
                                i.requires().entrySet().stream()
                                        .map(e -> e.getKey() + " in " + String.join(" or ", e.getValue()))
                                        .toList()))
                .toList();
        List<Thing> devices = scene.isolation().map(Isolation::devices).orElse(List.of()).stream()
                .map(d -> new Thing(Thing.Kind.DEVICE, d.name()))
                .toList();
        return Causes.likely(
                        "blocked", "An interlock, a key that is not home, a lockout or the reclosing delay blocks it")
                .speaksFor(
                        blocks.isEmpty()
                                ? "closing is blocked after a trip until the lockout is reset"
                                : String.join("; ", blocks))
                .speaksFor(delay())
                .check(scene.outside(
                        "Compare position of every device and place of every key with the drawing of the bank in service; look for a lockout target. Reset nothing yet.",
                        devices));
    }

    private String delay() {
        return scene.bank()
                        .control()
                        .map(Control::recloseDelaySeconds)
                        .filter(d -> d.isPresent())
                        .isPresent()
                ? String.format(
                        Locale.ROOT,
                        "the control holds a stage back for %.0f s after it opened",
                        scene.bank()
                                .control()
                                .orElseThrow()
                                .recloseDelaySeconds()
                                .getAsDouble())
                : "most controls hold a stage back for some minutes after it opened";
    }

    Cause worn() {
        return Causes.likely("worn", "Contacts of " + which() + " are worn, or a vacuum bottle has lost its vacuum")
                .speaksFor("many operations since the last overhaul; poles that open or close late in a record")
                .check(
                        scene.desk(
                                "Read the operation counter of " + which()
                                        + " and compare it with what the maker allows.",
                                switches),
                        scene.inside(
                                "Contact resistance and wear marks of every pole; vacuum bottles by a high-voltage test of those who may.",
                                switches,
                                scene.compartments()));
    }

    Cause restriking() {
        return Causes.likely("restrike", "A pole of " + which() + " struck again after it had opened")
                .speaksFor(
                        Statement.physics(
                                "each restrike adds to the voltage that the units must bear: up to about three times the peak at the first"))
                .against("a record that shows only a late pole, or the next closing by the control, is no restrike")
                .check(
                        scene.desk(
                                "Look at the record again: voltage across the pole at the current's zero, then current without a command. The command inrush with --restrike says what a restrike here would draw.",
                                switches),
                        scene.inside(
                                "Measure every unit; insulation and contacts of every pole.",
                                switches,
                                scene.compartments()));
    }
}
