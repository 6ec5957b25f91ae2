package org.varwright.triage;

import java.util.List;

/** Causes outside the bank. */
final class SupplyCauses {
    private final Scene scene;
    private final List<Thing> sources;

    SupplyCauses(Scene scene) {
        this.scene = scene;
        sources = scene.sourceThings(false);
    }

    private String feed() {
        return Scene.named(sources, "the supply");
    }

    Cause high() {
        return Causes.likely(
                        "system-high",
                        "The bus voltage was high: light load, tap changer, bank on though nobody needs it")
                .speaksFor(Statement.physics("at light load every var that the bank gives raises the bus voltage"))
                .check(scene.desk(
                        "Fetch the bus voltages of the day and which stages were on; the command duty says what the units bear and for how long.",
                        sources));
    }

    Cause gone() {
        return Causes.likely("supply", "The supply went: " + feed() + " was switched off or has a fault")
                .speaksFor("others on the same bus lost it too")
                .against("the bus has its voltage: then it is a transformer or a fuse at the relay")
                .check(scene.desk(
                        "Ask those who operate " + feed()
                                + " what happened, and whether and when it comes back. It may come back at any time: everything counts as live.",
                        sources));
    }

    Cause ferroresonance() {
        return Causes.rare("resonance", "Resonance or ferroresonance with a transformer")
                .speaksFor("high voltage with a distorted shape, noise from transformers, just after a switching")
                .check(scene.desk(
                        "Look at the record's shape and orders; the command resonance shows where the bank tunes.",
                        sources));
    }

    Cause loadGrew() {
        return Causes.possible("load", "The load has grown beyond what the bank can make good")
                .speaksFor("all stages are on and the power factor is still low")
                .against("a stage is off that should be on")
                .check(scene.desk(
                        "Compare load and stages on over a week; the command duty says what var are wanted.",
                        scene.stageThings()));
    }

    Cause stagesMissing() {
        return Causes.likely(
                        "stage-out", "A stage is off, or gives less than it should: tripped, fuses operated, in manual")
                .speaksFor("the current of a stage is below what the command energize expects, or nothing")
                .check(
                        scene.outside(
                                "Read the current of each phase of " + scene.which()
                                        + " and compare it with what is expected (command energize).",
                                scene.stageThings()),
                        scene.lookIn());
    }

    Cause inrush() {
        return Causes.possible("inrush", "Inrush when a stage was switched on, or outrush into a fault close by")
                .speaksFor("it tripped within a cycle of a switching, or together with a fault on a neighbour")
                .check(scene.desk(
                        "Lay the time of the trip beside the last switching; the command inrush says what peak and frequency to expect.",
                        scene.stageThings()));
    }
}
