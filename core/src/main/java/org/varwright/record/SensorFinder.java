package org.varwright.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.TransformerRatio;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Unanswered;
import org.varwright.network.Supply;
import org.varwright.quantity.Complex;
import org.varwright.unbalance.Assumptions;
import org.varwright.unbalance.Locate;
import org.varwright.unbalance.Locator;
import org.varwright.unbalance.Sighting;
import org.varwright.waveform.Signal;
import org.varwright.waveform.Window;

/** What an unbalance sensor showed, when it passed its settings, and which failure explains it. */
final class SensorFinder {
    /** Limits of error of transformer, relay and record together: common practice, no source. */
    private static final double UNCERTAINTY = 0.03;

    private static final int MOST_STATES = 4;

    /** Part of the later value by which a phasor must move to be another state. */
    private static final double MOVED = 0.2;

    /** Part of the alarm setting, or of all that a stage carries, below which a sensor tells nothing: common practice, no source. */
    private static final double OF_ALARM = 0.2;

    private static final double OF_WHOLE = 0.002;

    /** Part by which a pole's current may be off before anything failed, and still be put right by it. */
    private static final double CALIBRATED = 0.1;

    private final Scene scene;
    private final Stage stage;
    private final Role.Sensor sensor;
    private final Scene.Place place;
    private final List<PoleStory> poles;
    private final Optional<Double> firstAt;
    private final List<Finding> findings = new ArrayList<>();
    private final List<Unanswered> unanswered = new ArrayList<>();
    private final List<Located> located = new ArrayList<>();

    private SensorFinder(
            Scene scene,
            Stage stage,
            Role.Sensor sensor,
            Scene.Place place,
            List<PoleStory> poles,
            Optional<Double> firstAt) {
        this.scene = scene;
        this.stage = stage;
        this.sensor = sensor;
        this.place = place;
        this.poles = poles;
        this.firstAt = firstAt;
    }

    /** What was found, what could not be, and which failure explains it. */
    record Found(List<Finding> findings, List<Unanswered> unanswered, List<Located> located) {
        Found {
            findings = List.copyOf(findings);
            unanswered = List.copyOf(unanswered);
            located = List.copyOf(located);
        }
    }

    static Found of(
            Scene scene,
            Stage stage,
            Role.Sensor sensor,
            Scene.Place place,
            List<PoleStory> poles,
            Optional<Double> firstAt) {
        SensorFinder finder = new SensorFinder(scene, stage, sensor, place, poles, firstAt);
        finder.find();
        return new Found(finder.findings, finder.unanswered, finder.located);
    }

    private Protection protection() {
        return scene.bank().protection().stream()
                .filter(p ->
                        sensor.name().startsWith(p.stage() + " " + p.senses().code()))
                .findFirst()
                .orElseThrow();
    }

    /** The stage is on and alive: all of its recorded poles carry. */
    private boolean isInService(Steady steady) {
        boolean on = poles.isEmpty()
                ? firstAt.filter(o -> steady.middleSeconds() > o).isEmpty()
                : poles.stream().anyMatch(p -> p.isOn(steady.middleSeconds()));
        return on && scene.isBusAlive(steady);
    }

    private void find() {
        List<Steady> states = scene.steadies().stream()
                .filter(this::isInService)
                .filter(s -> Double.isFinite(s.magnitude(place.signal())))
                .toList();
        if (states.isEmpty()) {
            unanswered.add(new Unanswered(
                    "a steady cycle of " + place.name() + " with " + stage.name() + " in service",
                    "what " + sensor.name() + " says of a failure"));
            return;
        }
        List<Steady> distinct = distinct(states);
        Optional<Steady> healthy = distinct.size() > 1 && distinct.getFirst().magnitude(place.signal()) < healthyBelow()
                ? Optional.of(distinct.getFirst())
                : Optional.empty();
        if (distinct.size() == 1 && distinct.getFirst().magnitude(place.signal()) < floor()) {
            quiet(distinct.getFirst());
            return;
        }
        settings();
        for (int i = 0; i < distinct.size(); i++) {
            Steady state = distinct.get(i);
            if (healthy.filter(h -> h.equals(state)).isEmpty() && state.magnitude(place.signal()) >= floor()) {
                shown(state, i > 0 ? Optional.of(distinct.get(i - 1)) : Optional.empty());
                locate(state, healthy);
            }
        }
    }

    /** States one after the other that differ; of those that follow each other alike the longest. */
    private List<Steady> distinct(List<Steady> states) {
        List<Steady> distinct = new ArrayList<>();
        for (Steady state : states) {
            if (distinct.isEmpty() || isMoved(distinct.getLast(), state)) {
                distinct.add(state);
            } else if (state.windows().size() > distinct.getLast().windows().size()) {
                distinct.set(distinct.size() - 1, state);
            }
        }
        return distinct.size() > MOST_STATES
                ? distinct.subList(distinct.size() - MOST_STATES, distinct.size())
                : distinct;
    }

    private boolean isMoved(Steady before, Steady after) {
        double moved = phasor(after).minus(phasor(before)).magnitude();
        return moved
                > Math.max(
                        floor(), MOVED * Math.max(after.magnitude(place.signal()), before.magnitude(place.signal())));
    }

    /** Below this a first state counts as the bank in good order, primary: its alarm setting, else five times what tells nothing. */
    private double healthyBelow() {
        return floor() / OF_ALARM;
    }

    private Optional<Signal> reference() {
        return scene.bus("A").map(Scene.Place::signal);
    }

    /** Against the voltage of phase A where that is recorded; the magnitude alone otherwise. */
    private Complex phasor(Steady steady) {
        return reference()
                .flatMap(r -> steady.phasor(place.signal(), r))
                .orElseGet(() -> new Complex(steady.magnitude(place.signal()), 0.0));
    }

    /** What a sensor may show without telling anything, primary: a part of its alarm setting, else of what its stage carries. */
    private double floor() {
        Protection protection = protection();
        Optional<Double> factor = protection.settingsArePrimary()
                ? Optional.of(1.0)
                : protection.ratio().map(TransformerRatio::factor);
        if (protection.alarm().isPresent() && factor.isPresent()) {
            return OF_ALARM * protection.alarm().getAsDouble() / factor.get();
        }
        double whole = sensor.isVolts()
                ? scene.bank().system().phaseVolts()
                : scene.expected().of(new Role.StageAmperes(stage.name(), "A")).orElse(0.0);
        return OF_WHOLE * whole;
    }

    private void quiet(Steady last) {
        findings.add(new Finding(
                "sensor-quiet",
                Finding.Weight.NOTE,
                last.fromSeconds(),
                sensor.name(),
                sensor.name() + " shows less than " + value(floor()) + relay(floor()) + " with " + stage.name()
                        + " in service: nothing that tells of a failure.",
                List.of(new Evidence(
                        place.name(), last.middleSeconds(), last.magnitude(place.signal()), unit(), "rms")),
                Say.basis(
                        "REC-6",
                        "a fifth of the alarm setting, else 0.2 % of what the stage carries",
                        Source.commonPractice("threshold"),
                        new Term("", "least that tells, primary", floor(), unit()))));
    }

    private String value(double magnitude) {
        return sensor.isVolts() ? Say.volts(magnitude) : Say.amperes(magnitude);
    }

    private String unit() {
        return sensor.isVolts() ? "V" : "A";
    }

    private String relay(double primary) {
        return protection()
                .ratio()
                .map(r -> " (" + value(primary * r.factor()) + " at the relay)")
                .orElse("");
    }

    private void shown(Steady last, Optional<Steady> earlier) {
        Complex now = phasor(last);
        List<Evidence> evidence = new ArrayList<>();
        earlier.ifPresent(h -> evidence.add(
                new Evidence(place.name(), h.middleSeconds(), phasor(h).magnitude(), unit(), "rms before")));
        evidence.add(new Evidence(place.name(), last.middleSeconds(), now.magnitude(), unit(), "rms"));
        String before = earlier.map(h -> phasor(h).magnitude() < floor()
                        ? " Before that it showed next to nothing."
                        : " Before that it showed " + value(phasor(h).magnitude())
                                + (reference().isPresent()
                                        ? " at " + Say.degrees(phasor(h).degrees())
                                        : "") + ".")
                .orElse(" It shows that from the first cycle with the "
                        + scene.bank().words().stage()
                        + " in service: what it showed when nothing was wrong is not in this record.");
        findings.add(new Finding(
                "sensor",
                earlier.isPresent() ? Finding.Weight.FAILED : Finding.Weight.LOOK,
                last.fromSeconds(),
                sensor.name(),
                sensor.name() + " shows " + value(now.magnitude()) + relay(now.magnitude())
                        + (reference().isPresent()
                                ? " at " + Say.degrees(now.degrees()) + " against phase A"
                                : ", angle not known, as no bus voltage is recorded")
                        + " from " + Say.at(last.fromSeconds()) + " to " + Say.at(last.toSeconds()) + "." + before,
                evidence,
                Say.basis(
                        "REC-6",
                        "mean of the phasors of whole cycles between changes",
                        Source.FIRST_PRINCIPLES,
                        new Term("n", "cycles", last.windows().size(), ""),
                        new Term("f", "frequency", last.hertz(), "Hz"))));
    }

    /** When it passed its settings, and how long it then took. */
    private void settings() {
        Protection protection = protection();
        Optional<Double> factor = protection.settingsArePrimary()
                ? Optional.of(1.0)
                : protection.ratio().map(TransformerRatio::factor);
        if (factor.isEmpty()) {
            if (protection.trip().isPresent()) {
                unanswered.add(new Unanswered(
                        "ratio of " + sensor.name() + " in the bank file", "whether it passed its settings"));
            }
            return;
        }
        passed("trip", protection.trip(), factor.get(), protection.delaySeconds());
        passed("alarm", protection.alarm(), factor.get(), OptionalDouble.empty());
    }

    private void passed(String what, OptionalDouble setting, double factor, OptionalDouble delay) {
        if (setting.isEmpty()) {
            return;
        }
        double limit = setting.getAsDouble() / factor;
        Optional<Window> first = Optional.empty();
        for (Window w : scene.cycles().windows()) {
            if (firstAt.filter(o -> w.middleSeconds() + 0.5 / w.hertz() > o).isPresent()) {
                break;
            }
            boolean above =
                    w.phasor(place.signal()).filter(p -> p.magnitude() > limit).isPresent();
            first = above ? first.isPresent() ? first : Optional.of(w) : Optional.empty();
        }
        if (first.isEmpty()) {
            return;
        }
        double at = Math.max(
                scene.base().first(),
                first.get().middleSeconds() - 0.5 / first.get().hertz());
        boolean fromBegin = at - scene.base().first() < scene.cycleSeconds();
        String then = firstAt.filter(o -> what.equals("trip"))
                .map(o -> "; the poles opened " + (fromBegin ? "at least " : "") + Say.time(o - at) + " later"
                        + (delay.isPresent() ? ", the delay set is " + Say.time(delay.getAsDouble()) : ""))
                .orElse("");
        findings.add(new Finding(
                what + "-passed",
                Finding.Weight.LOOK,
                at,
                sensor.name(),
                sensor.name() + " is above its " + what + " setting of " + value(setting.getAsDouble())
                        + (protection().settingsArePrimary() ? " primary" : " at the relay")
                        + (fromBegin ? " from the begin of the record" : " from the cycle at " + Say.at(at) + " on")
                        + then
                        + ".",
                List.of(new Evidence(
                        place.name(),
                        first.get().middleSeconds(),
                        first.get()
                                .phasor(place.signal())
                                .map(Complex::magnitude)
                                .orElse(0.0),
                        unit(),
                        "rms of that cycle")),
                Say.basis(
                        "REC-6",
                        "fundamental of one cycle against the setting of the bank file",
                        Source.FIRST_PRINCIPLES,
                        new Term("", "setting, primary", limit, unit()))));
    }

    private void locate(Steady last, Optional<Steady> healthy) {
        Complex now = phasor(last);
        boolean angle = reference().isPresent();
        if (scene.matching().open().stream().anyMatch(q -> q.choices().stream().anyMatch(c -> c.startsWith("bus ")))
                && scene.supply(last).isEmpty()) {
            unanswered.add(new Unanswered(
                    "which channels are the bus voltages",
                    "the angle of " + sensor.name() + ", and so the phase, is left open below"));
        }
        Supply supply = scene.supply(last).orElse(Supply.nominal(scene.bank().system()));
        Sighting sighting = new Sighting(
                sensor.name(),
                now.magnitude(),
                true,
                angle ? OptionalDouble.of(now.degrees()) : OptionalDouble.empty(),
                UNCERTAINTY,
                angle ? healthy.map(this::phasor) : Optional.empty(),
                lines(last, healthy));
        Locate locate = Locator.locate(scene.bank(), Map.of(), supply, Assumptions.USUAL, sighting);
        located.add(new Located(
                sensor.name(),
                place.name(),
                last.fromSeconds(),
                last.toSeconds(),
                angle && healthy.isPresent(),
                angle,
                withoutKnown(locate)));
        if (scene.supply(last).isEmpty()) {
            unanswered.add(new Unanswered(
                    "the three bus voltages in this record",
                    "the failure behind " + sensor.name() + " is sought at nominal voltage"
                            + (angle ? "" : " and without an angle")));
        }
    }

    /** Without measurements that the record holds already, or that need the bank in service. */
    private Locate withoutKnown(Locate locate) {
        boolean known = poles.size() == 3 || firstAt.isPresent();
        return new Locate(
                locate.bank(),
                locate.sighting(),
                locate.senses(),
                locate.ratio(),
                locate.candidates(),
                locate.isExplained(),
                locate.nextMeasurements().stream()
                        .filter(m -> !known || !m.startsWith(Locate.WITH_THE_BANK_ON))
                        .toList(),
                locate.notes(),
                locate.basis());
    }

    /** Currents of the poles, put right by what they showed before anything failed; left out where they can't be. */
    private Map<String, Double> lines(Steady last, Optional<Steady> healthy) {
        Map<String, Double> amperes = new LinkedHashMap<>();
        if (healthy.isEmpty()) {
            return amperes;
        }
        Optional<List<Complex>> expected = Expected.lines(
                scene.bank(),
                stage,
                scene.supply(healthy.get()).orElse(Supply.nominal(scene.bank().system())));
        for (PoleStory pole : poles) {
            double was = healthy.get().magnitude(pole.signal());
            double is = last.magnitude(pole.signal());
            double should = expected.map(
                            e -> e.get(Role.PHASES.indexOf(pole.phase())).magnitude())
                    .orElse(Double.NaN);
            if (was > 0.0 && Double.isFinite(is) && Math.abs(should / was - 1.0) < CALIBRATED) {
                amperes.put(pole.phase(), is * should / was);
            }
        }
        return amperes.size() == 3 ? amperes : Map.of();
    }
}
