package org.varwright.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Stage;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Unanswered;
import org.varwright.page.Enumeration;
import org.varwright.quantity.Complex;
import org.varwright.waveform.Conduction;
import org.varwright.waveform.Ringing;
import org.varwright.waveform.Window;

/** When the poles of a stage stopped carrying, whether one conducted again, and whether one did not open. */
final class OpeningFinder {
    /** Cycles by which a pole that goes on after the others counts as not opened. */
    private static final double STUCK_CYCLES = 2.0;

    /** A neutral or a terminal at this part of phase voltage after the opening is held by a pole. */
    private static final double HELD = 0.6;

    private static final double WITHIN_DEGREES = 25.0;

    /** A quarter of a cycle, less what a sample may be off. */
    private static final double RESTRIKE_CYCLES = 0.245;

    /** A pole of which the record can't say that it opened. */
    static final String NOT_SEEN_TO_OPEN = "pole-not-seen-to-open";

    /** Part of the expected current that goes on and is no longer called noise: common practice, no source. */
    private static final double REMAINDER = 0.05;

    private final Scene scene;
    private final Stage stage;
    private final List<PoleStory> poles;
    private final List<Finding> findings = new ArrayList<>();
    private final List<Unanswered> unanswered = new ArrayList<>();
    private Optional<Double> firstAt = Optional.empty();
    private Optional<Double> openedAt = Optional.empty();

    private OpeningFinder(Scene scene, Stage stage, List<PoleStory> poles) {
        this.scene = scene;
        this.stage = stage;
        this.poles = poles;
    }

    /** What was found; {@code firstAt} and {@code openedAt} are when the first and the last pole stopped that did. */
    record Found(
            List<Finding> findings, List<Unanswered> unanswered, Optional<Double> firstAt, Optional<Double> openedAt) {
        Found {
            findings = List.copyOf(findings);
            unanswered = List.copyOf(unanswered);
        }
    }

    static Found of(Scene scene, Stage stage, List<PoleStory> poles) {
        OpeningFinder finder = new OpeningFinder(scene, stage, poles);
        finder.find();
        return new Found(finder.findings, finder.unanswered, finder.firstAt, finder.openedAt);
    }

    private static double stop(PoleStory pole) {
        return pole.stopped().map(Conduction.Run::stopSeconds).orElse(Double.NaN);
    }

    private void find() {
        List<PoleStory> opened = poles.stream()
                .filter(p -> p.stopped().isPresent())
                .sorted(Comparator.comparingDouble(OpeningFinder::stop))
                .toList();
        if (opened.isEmpty()) {
            return;
        }
        double first = stop(opened.getFirst());
        double last = stop(opened.getLast());
        firstAt = Optional.of(first);
        openedAt = Optional.of(last);
        List<String> words =
                opened.stream().map(p -> p.phase() + " at " + Say.at(stop(p))).toList();
        findings.add(new Finding(
                "opened",
                Finding.Weight.NOTE,
                first,
                stage.name(),
                stage.name() + " opened: current stops in " + Enumeration.of(words) + ".",
                opened.stream()
                        .map(p -> p.evidence(stop(p), 0.0, "current stops"))
                        .toList(),
                Say.basis(
                        "REC-5",
                        "a pole carries to the zero of the line through its last samples",
                        Say.THRESHOLDS,
                        new Term("Δt", "first to last pole", last - first, "s"))));
        opened.stream().filter(p -> !p.again().isEmpty()).forEach(this::again);
        opened.stream().filter(p -> p.again().isEmpty()).forEach(this::remainder);
        stuck(opened, last);
        poles.stream().filter(p -> isCutOff(p, last)).forEach(p -> cutOff(p, last));
        if (ClosingFinder.hidesOnePole(stage) && poles.stream().noneMatch(p -> p.isOn(last + scene.cycleSeconds()))) {
            hidden(last);
        }
    }

    private void again(PoleStory pole) {
        double from = stop(pole);
        for (Conduction.Run run : pole.again()) {
            double after = (run.startSeconds() - from) / scene.cycleSeconds();
            boolean restrike = after >= RESTRIKE_CYCLES;
            double peak = pole.signal().largest(run.from(), run.to());
            Ringing ringing = Ringing.of(
                    pole.signal(),
                    run.startSeconds(),
                    Math.max(run.stopSeconds(), run.startSeconds() + 0.25 * scene.cycleSeconds()),
                    scene.cycles().hertz());
            String rings = ringing instanceof Ringing.Rang rang ? ", ringing at " + Say.hertz(rang.hertz()) : "";
            findings.add(new Finding(
                    restrike ? "restrike" : "re-ignition",
                    Finding.Weight.FAILED,
                    run.startSeconds(),
                    stage.name() + "/" + pole.phase(),
                    stage.name() + " phase " + pole.phase() + ": the pole conducts again at "
                            + Say.at(run.startSeconds())
                            + ", " + Dimensions.cycles(after) + " after its current had stopped: a "
                            + (restrike ? "restrike" : "re-ignition") + ". Peak " + Say.amperes(peak) + rings + "; it "
                            + (run.toEnd()
                                    ? "still carries when the record ends."
                                    : "stops after " + Say.time(run.seconds()) + ".")
                            + (restrike
                                    ? " The capacitors may now hold up to three times the peak. Keep the switch out of service until it"
                                            + " has been looked at."
                                    : " Look at the switch."),
                    List.of(
                            pole.evidence(from, 0.0, "current had stopped"),
                            pole.evidence(run.startSeconds(), peak, "peak of the current that came again")),
                    Say.basis(
                            "REC-14",
                            "a quarter of a cycle or more without current, then current: restrike; less: re-ignition",
                            Source.unchecked("terms of IEEE C37.100 and IEC 62271-100"),
                            new Term("Δt", "without current", run.startSeconds() - from, "s"),
                            new Term("T", "one cycle", scene.cycleSeconds(), "s"))));
            from = run.stopSeconds();
        }
    }

    /** What goes on flowing after a pole's current has stopped: a remainder that the limits of REC-5 take for noise. */
    private void remainder(PoleStory pole) {
        double from = stop(pole);
        Optional<Window> after = scene.cycles()
                .around(from + STUCK_CYCLES * scene.cycleSeconds())
                .filter(w -> w.middleSeconds() > from + scene.cycleSeconds());
        double whole = scene.expected()
                .of(new Role.StageAmperes(stage.name(), pole.phase()))
                .orElse(Double.NaN);
        double left = after.flatMap(w -> w.phasor(pole.signal()))
                .map(Complex::magnitude)
                .orElse(0.0);
        if (left > REMAINDER * whole) {
            findings.add(new Finding(
                    NOT_SEEN_TO_OPEN,
                    Finding.Weight.LOOK,
                    from,
                    stage.name() + "/" + pole.phase(),
                    stage.name() + " phase " + pole.phase() + ": after its current has stopped " + Say.amperes(left)
                            + " go on, " + Say.percent(left / whole)
                            + " of what it carries in good order: noise of the channel, or a way beside the pole. It does not"
                            + " count as open.",
                    List.of(pole.evidence(
                            after.map(Window::middleSeconds).orElse(from), left, "rms of the fundamental")),
                    Say.basis(
                            "REC-5",
                            "fundamental of one cycle, two cycles after the current has stopped, above 5 % of the expected",
                            Say.THRESHOLDS,
                            new Term("I", "what goes on", left, "A"))));
        }
    }

    /** Whether a pole carries to the end of a record that ends too soon after the others to call it stuck. */
    private boolean isCutOff(PoleStory pole, double last) {
        return pole.stopped().isEmpty()
                && scene.base().last() < last + STUCK_CYCLES * scene.cycleSeconds()
                && pole.runs().stream().anyMatch(r -> r.toEnd() && r.startSeconds() < last);
    }

    private void cutOff(PoleStory pole, double last) {
        findings.add(new Finding(
                NOT_SEEN_TO_OPEN,
                Finding.Weight.LOOK,
                last,
                stage.name() + "/" + pole.phase(),
                stage.name() + " phase " + pole.phase() + " still carries when the record ends, "
                        + Dimensions.cycles((scene.base().last() - last) / scene.cycleSeconds())
                        + " after the others have stopped: whether its pole opened is not in this record. It does not count as"
                        + " open.",
                List.of(pole.evidence(
                        scene.base().last(),
                        pole.signal()
                                .largest(
                                        pole.signal().indexAt(last),
                                        pole.signal().size()),
                        "peak of what it still carries")),
                Say.basis("REC-5", "two cycles after the other poles tell whether a pole opened", Say.THRESHOLDS)));
    }

    private void stuck(List<PoleStory> opened, double last) {
        List<PoleStory> on = poles.stream()
                .filter(p -> !p.neverCarries())
                .filter(p -> p.isOn(last + STUCK_CYCLES * scene.cycleSeconds())
                        && p.stopped().isEmpty())
                .toList();
        List<PoleStory> late = opened.stream()
                .filter(p -> stop(p) - stop(opened.getFirst()) > STUCK_CYCLES * scene.cycleSeconds())
                .toList();
        for (PoleStory pole : on) {
            findings.add(new Finding(
                    "pole-not-opened",
                    Finding.Weight.FAILED,
                    last,
                    stage.name() + "/" + pole.phase(),
                    stage.name() + " phase " + pole.phase() + " still carries "
                            + Dimensions.cycles((scene.base().last() - last) / scene.cycleSeconds())
                            + " after the others have stopped: its pole did not open. Its conductors are live; open the way"
                            + " behind it.",
                    List.of(pole.evidence(
                            Math.min(scene.base().last(), last + STUCK_CYCLES * scene.cycleSeconds()),
                            pole.signal()
                                    .largest(
                                            pole.signal().indexAt(last + scene.cycleSeconds()),
                                            pole.signal().size()),
                            "peak of what it still carries")),
                    Say.basis("REC-5", "current two cycles after the other poles have stopped", Say.THRESHOLDS)));
        }
        for (PoleStory pole : late) {
            findings.add(new Finding(
                    "pole-late",
                    Finding.Weight.FAILED,
                    stop(pole),
                    stage.name() + "/" + pole.phase(),
                    stage.name() + " phase " + pole.phase() + " stops "
                            + Dimensions.cycles((stop(pole) - stop(opened.getFirst())) / scene.cycleSeconds())
                            + " after the first pole: it opened late, or something behind it cleared it. Look at the switch.",
                    List.of(pole.evidence(stop(pole), 0.0, "current stops")),
                    Say.basis("REC-5", "more than two cycles after the first pole", Say.THRESHOLDS)));
        }
    }

    /**
     * One pole alone carries nothing where a neutral floats: what it holds at phase voltage gives it away, the neutral itself or the terminals.
     */
    private void hidden(double last) {
        Optional<Window> after = scene.cycles().around(last + STUCK_CYCLES * scene.cycleSeconds());
        if (after.isEmpty() || after.get().middleSeconds() < last + 0.75 * scene.cycleSeconds()) {
            unanswered.add(new Unanswered(
                    "two cycles after the opening",
                    "whether one pole of " + stage.name() + " alone stayed closed: the record ends too soon"));
            return;
        }
        List<Scene.Place> places = new ArrayList<>();
        scene.sensors().stream()
                .filter(s -> s.stage().equals(stage.name())
                        && s.isVolts()
                        && s.name().contains("neutral-voltage"))
                .forEach(s -> scene.at(s).ifPresent(places::add));
        Role.PHASES.forEach(p -> scene.at(new Role.StageVolts(stage.name(), p)).ifPresent(places::add));
        if (places.isEmpty()) {
            unanswered.add(
                    new Unanswered(
                            "a voltage of the neutral or behind the switch in this record",
                            "whether one pole of " + stage.name()
                                    + " alone stayed closed: it would carry no current, and hold every terminal at phase voltage"));
            return;
        }
        for (Scene.Place place : places) {
            Complex held = after.get().phasor(place.signal()).orElse(Complex.ZERO);
            if (held.magnitude() < HELD * scene.bank().system().phaseVolts()) {
                continue;
            }
            Optional<String> phase = Role.PHASES.stream()
                    .filter(p -> scene.bus(p)
                            .flatMap(b -> after.get().phasor(b.signal()))
                            .filter(b -> b.magnitude() > 0.0
                                    && Math.abs(held.dividedBy(b).degrees()) < WITHIN_DEGREES)
                            .isPresent())
                    .findFirst();
            findings.add(new Finding(
                    "pole-not-opened",
                    Finding.Weight.FAILED,
                    last,
                    stage.name() + phase.map(p -> "/" + p).orElse(""),
                    stage.name() + ": no pole carries current, but " + place.name() + " still stands at "
                            + Say.volts(held.magnitude())
                            + phase.map(p -> ", in phase with " + p + ": pole " + p + " did not open.")
                                    .orElse(": one pole did not open; which one needs the bus voltages.")
                            + " Every terminal and the neutral are live with almost no current. Open the way behind it and prove"
                            + " dead.",
                    List.of(new Evidence(
                            place.name(),
                            after.get().middleSeconds(),
                            held.magnitude(),
                            "V",
                            "rms of the fundamental")),
                    Say.basis(
                            "REC-15",
                            "with one pole closed the floating neutral and every terminal follow that phase",
                            Source.FIRST_PRINCIPLES,
                            new Term("V", "rms after the opening", held.magnitude(), "V"),
                            new Term(
                                    "V_LN",
                                    "phase voltage",
                                    scene.bank().system().phaseVolts(),
                                    "V"))));
            return;
        }
    }

    /** Lengths of time in cycles. */
    private static final class Dimensions {
        private Dimensions() {}

        static String cycles(double cycles) {
            return String.format(java.util.Locale.ROOT, "%.2f", cycles) + " cycles";
        }
    }
}
