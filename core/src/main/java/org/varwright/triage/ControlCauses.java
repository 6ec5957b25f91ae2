package org.varwright.triage;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Protection;

/** Causes in sensor, relay, controller and their supply. */
final class ControlCauses {
    private final Scene scene;
    private final List<Thing> selectors;
    private final List<Thing> supplies;

    ControlCauses(Scene scene) {
        this.scene = scene;
        selectors = scene.things(scene.selectors());
        supplies = scene.sourceThings(true);
    }

    private String supply() {
        return Scene.named(supplies, "the control supply");
    }

    private String selector() {
        return Scene.named(selectors, "the control's switch");
    }

    Cause sensor() {
        List<Thing> things = scene.sensorThings();
        return Causes.possible("sensor", "The sensor, its transformer, wiring or settings are wrong")
                .speaksFor("it alone says so: line currents and units are as before; or somebody worked on it lately")
                .against("an operated fuse or a bulged can is in sight")
                .check(
                        scene.desk(
                                "Compare the settings in the relay with those of the bank file: " + settings() + ".",
                                things),
                        scene.outside(
                                "Read a second instrument of the same sensor where one is fitted. A current transformer's secondary is never opened under load.",
                                things));
    }

    private String settings() {
        List<String> all = scene.sensors().stream()
                .map(p -> Scene.sensor(p) + " alarm " + value(p.alarm(), p) + ", trip " + value(p.trip(), p))
                .toList();
        return all.isEmpty() ? "it has no protection" : String.join("; ", all);
    }

    private static String value(java.util.OptionalDouble value, Protection p) {
        return value.isPresent()
                ? org.varwright.quantity.Dimension.digits(value.getAsDouble(), 3) + " "
                        + p.senses().unit()
                : "not given";
    }

    Cause inherent() {
        return Causes.possible(
                        "inherent",
                        "Nothing failed: unequal bus voltages, drift with temperature, or a setting too near the bank's own unbalance")
                .speaksFor("the value was near the alarm before, and moves with the bus voltages")
                .against("a step that stays")
                .check(scene.desk(
                        "Fetch the three bus voltages and the sensor's value of the hours before; the command unbalance judges the settings.",
                        scene.sensorThings()));
    }

    Cause selectorLeft() {
        return Causes.likely(
                        "selector", "A selector was left where it does not belong: " + selector() + " in manual or off")
                .speaksFor("somebody worked or tested here lately; the controller runs and commands nothing")
                .check(scene.outside(
                        "Read the position of " + selector()
                                + " and who left it so; don't turn it before it is known why.",
                        selectors));
    }

    Cause supplyLost() {
        return Causes.likely(
                        "control-supply", "The control supply is gone: " + supply() + ", its transformer or its fuse")
                .speaksFor("lamps and displays are dark together")
                .check(
                        scene.outside(
                                "See which lamps and displays are dark, and whether the station's own supply is there. Without it alarms and trips may be dead.",
                                supplies),
                        scene.inside(
                                "Measure the control voltage from its source on; one fuse of the same type and rating once, after the short was looked for.",
                                supplies,
                                scene.controlCompartments()));
    }

    Cause shortInControl() {
        return Causes.likely("control-short", "A short or a stuck coil in the control circuit of " + scene.which())
                .speaksFor("the new fuse operates again, or it operates with one command")
                .check(
                        scene.desk("Find out which command or which weather came just before.", supplies),
                        scene.inside(
                                "With the fuse out measure each branch: coils, heaters, lamps, wiring to "
                                        + Scene.named(scene.things(scene.switches()), "the switches") + ".",
                                scene.things(scene.switches()),
                                scene.controlCompartments()));
    }

    Cause controller() {
        return Causes.possible("controller", "The controller itself has failed")
                .speaksFor("its supply is there and it stays dark, or it commands what its inputs don't ask for")
                .check(scene.desk(
                        "Fetch the controller's own log and settings; the maker says how it is replaced.", selectors));
    }

    Cause voltageTransformer() {
        return Causes.possible("voltage-transformer", "A voltage transformer or its fuse has failed")
                .speaksFor("one voltage is missing or low, at the relay only; the bus has all three")
                .against("other meters on the same bus miss it too: then the bus has lost it")
                .check(
                        scene.desk(
                                "Compare the three voltages at the relay with another meter of the same bus.",
                                scene.sensorThings()),
                        scene.inside(
                                "Before a primary fuse is touched the transformer is isolated on both sides, tested dead and "
                                        + scene.words().grounded()
                                        + "; a fuse that operated is replaced together with the reason.",
                                scene.sensorThings(),
                                scene.compartments()));
    }

    List<Cause> hunting() {
        List<Cause> all = new ArrayList<>();
        all.add(Causes.likely("dead-band", "One stage moves what the control senses by more than its dead band")
                .speaksFor(
                        Statement.physics(
                                "switching on a stage changes voltage and var by a step; a dead band narrower than the step asks for the next switching at once"))
                .check(scene.desk(
                        "Compare thresholds with the step of one stage: the command duty does.", scene.stageThings())));
        all.add(Causes.possible("load", "The load itself swings")
                .speaksFor("switching follows a process: pumps, furnaces, welders")
                .check(scene.desk(
                        "Lay the control's log beside the load of the same hours.", scene.sourceThings(false))));
        all.add(Causes.possible("control-input", "An input of the control is wrong: phase, polarity, ratio")
                .speaksFor("it began with work on instrument transformers or settings")
                .check(scene.desk(
                        "Compare voltage, current and angle at the control with a meter of the same bus.", selectors)));
        all.add(controller());
        return all;
    }
}
