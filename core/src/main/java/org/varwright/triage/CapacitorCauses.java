package org.varwright.triage;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Causes in the units, their fuses and connections. */
final class CapacitorCauses {
    private final Scene scene;

    CapacitorCauses(Scene scene) {
        this.scene = scene;
    }

    /** Sections shorted, or element fuses operated, inside a unit. */
    Cause failedUnit() {
        boolean fused = scene.hasElementFuses();
        return Causes.likely(
                        "unit-failed",
                        fused
                                ? "Element fuses have operated inside a unit of " + scene.which()
                                : "Sections have shorted inside a unit of " + scene.which())
                .speaksFor(
                        Statement.physics(
                                fused
                                        ? "each element lost takes capacitance away: the change is small, comes in steps and stays"
                                        : "each shorted section puts its voltage on those left: capacitance and current of the unit rise in a step and stay"))
                .against("a value that comes and goes with the load, the voltage or the weather is not a unit")
                .check(scene.relay(), scene.lookIn(), scene.measureUnits());
    }

    Cause unitFuse() {
        return Causes.likely("unit-fuse", "The fuse of a unit of " + scene.which() + " has operated")
                .speaksFor("a fuse that operated shows: its flag or spring is out, its barrel hangs")
                .against(
                        "an operated fuse is a finding, not the cause: the unit behind it counts as failed and charged until it is measured")
                .check(scene.relay(), scene.lookIn(), scene.measureUnits());
    }

    /** The fuse alone: wrong rating, corroded, stretched, hit by inrush. */
    Cause fuseItself() {
        return Causes.possible(
                        "fuse-itself",
                        "The fuse failed by itself: wrong link, corrosion, a loose cap, too many inrush currents")
                .speaksFor("the unit behind it measures well and the link differs from the bank file, or is corroded")
                .check(
                        scene.desk(
                                "Compare the links on the order of the last visit with the bank file; the command fuses judges them.",
                                fuses()),
                        scene.inside(
                                "Measure the unit behind it, the fuse and its holder; read what is stamped on the link.",
                                fuses(),
                                scene.compartments()));
    }

    Cause indicatorOnly() {
        return Causes.rare("indicator-only", "The indicator moved and the fuse did not operate")
                .speaksFor("no current or unbalance changed when the flag was seen")
                .against("it can't be told from outside: it counts as an operated fuse")
                .check(
                        scene.relay(),
                        scene.inside("Measure the fuse and the unit behind it.", fuses(), scene.compartments()));
    }

    Cause connection() {
        return Causes.possible(
                        "connection", "A clamp, link or reactor terminal of " + scene.which() + " is loose or open")
                .speaksFor("it is warmer than the same place in the other phases, or discoloured")
                .check(
                        scene.lookIn(),
                        scene.inside(
                                "Go over every clamp, link and terminal; measure its resistance against the same place in the other phases.",
                                scene.stageThings(),
                                scene.compartments()));
    }

    Cause flashover() {
        return Causes.likely(
                        "flashover",
                        "A flashover on bus, bushings or insulators: an animal, dirt, moisture, a tool left behind")
                .speaksFor("soot, a carcass, a trip in wet weather or just after work")
                .check(
                        scene.desk(
                                "Fetch the currents of all three phases from the relay: a fault between phases, or to "
                                        + scene.words().ground() + "?",
                                scene.sensorThings()),
                        scene.lookIn(),
                        scene.inside(
                                "Look for traces on every insulator and bushing; insulation to case of every unit.",
                                scene.stageThings(),
                                scene.compartments()));
    }

    Cause shortedUnit() {
        return Causes.likely(
                        "unit-failed", "A unit of " + scene.which() + " is shorted through and its neighbours fed it")
                .speaksFor("fuses of that phase operated, a can is torn or bulged")
                .check(scene.relay(), scene.lookIn(), scene.measureUnits());
    }

    /** Something inside the can makes gas. */
    Cause gas() {
        return Causes.likely("gas", "Elements inside have failed and made gas")
                .speaksFor(Statement.physics("an arc inside decomposes the liquid; gas bulges the can"))
                .speaksFor("sides that stand out more than those of its neighbours at the same temperature")
                .against("all units of the bank look alike: heat of the day, or overvoltage")
                .check(scene.relay(), scene.lookIn(), scene.measureUnits());
    }

    Cause leak() {
        return Causes.likely("leak", "A seam or bushing leaks")
                .speaksFor("a wet trace that starts at a seam, a bushing or a stud")
                .against("a unit that also reads off its earlier value has failed inside as well")
                .check(
                        scene.lookIn(),
                        scene.desk(
                                "Find out what the liquid is before anybody touches it: maker, year, what the owner's list says of PCB.",
                                scene.stageThings()),
                        scene.measureUnits());
    }

    Cause overload() {
        return Causes.possible("overload", "Harmonic currents or overvoltage heat the units or a reactor")
                .speaksFor(
                        Statement.physics(
                                "current at harmonic h grows with h times the voltage at h: a resonance shows as heat in every phase alike"))
                .against("one unit alone is hot")
                .check(
                        scene.desk(
                                "Measure or fetch bus voltage and its harmonics; the commands duty and resonance judge them.",
                                scene.sourceThings(false)),
                        scene.outside(
                                "With an infrared camera compare the same place in all three phases.",
                                scene.stageThings()));
    }

    Cause resistorOrAir() {
        return Causes.rare("cooling", "Heat that can't leave: blocked louvres, a fan that stands, sun on one side")
                .speaksFor("units nearest the roof or the sun are warmest, all of a side alike")
                .check(scene.lookIn());
    }

    /** Magnetic or mechanical noise, or discharges. */
    List<Cause> noises() {
        List<Cause> all = new ArrayList<>();
        all.add(Causes.likely("harmonics", "Harmonic currents make reactors and cans hum")
                .speaksFor("the sound changes with the load of others, or with which stages are on")
                .check(scene.desk(
                        "Fetch harmonics of voltage and current; the command resonance shows which combination of stages amplifies them.",
                        scene.sourceThings(false))));
        all.add(Causes.possible("partial-discharge", "Discharges on a dirty or cracked insulator or a loose lead")
                .speaksFor("a hiss or crackle that grows in damp weather and stops when the bank is off")
                .check(
                        scene.lookIn(),
                        scene.inside(
                                "Look for white or black tracks on bushings, insulators and barriers.",
                                scene.stageThings(),
                                scene.compartments())));
        all.add(Causes.possible("internal-arc", "An arc inside a unit")
                .speaksFor("ticking or cracking from one can; the unbalance value moves with it")
                .against("no change of the unbalance value since the last visit")
                .check(scene.relay(), scene.measureUnits()));
        all.add(connection());
        return all;
    }

    private List<Thing> fuses() {
        Set<Thing> things = new LinkedHashSet<>();
        scene.stages().forEach(s -> s.fuse().ifPresent(f -> things.add(new Thing(Thing.Kind.FUSE_TYPE, f.name()))));
        scene.stages().forEach(s -> s.lineFuse().ifPresent(f -> things.add(new Thing(Thing.Kind.FUSE_TYPE, f.name()))));
        return List.copyOf(things);
    }
}
