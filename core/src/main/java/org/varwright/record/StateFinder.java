package org.varwright.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Connection;
import org.varwright.bank.Stage;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.page.Enumeration;
import org.varwright.quantity.Complex;
import org.varwright.waveform.Window;

/**
 * What a stage draws against what it should, before and after every change: the bank itself, or only what feeds it.
 *
 * <p>Current over voltage of a capacitor is its admittance. A disturbance elsewhere moves both alike; a failure inside moves the ratio (REC-16).
 */
final class StateFinder {
    /** Part by which a ratio must move to count. */
    private static final double MOVED = 0.03;

    /** Current over expected from which a fault is named. */
    private static final double FAULT = 1.6;

    /** Part by which a bus voltage must move to be named. */
    private static final double DIP = 0.05;

    private static final double PATTERN = 0.18;

    private final Scene scene;
    private final Stage stage;
    private final List<PoleStory> poles;
    private final List<Finding> findings = new ArrayList<>();

    private StateFinder(Scene scene, Stage stage, List<PoleStory> poles) {
        this.scene = scene;
        this.stage = stage;
        this.poles = poles;
    }

    static List<Finding> of(Scene scene, Stage stage, List<PoleStory> poles) {
        if (poles.isEmpty()) {
            return List.of();
        }
        StateFinder finder = new StateFinder(scene, stage, poles);
        finder.faults();
        finder.changes();
        return List.copyOf(finder.findings);
    }

    /** Currents in a steady stretch over those of a bank in good order at the voltages there; NaN where not known. */
    private double ratio(PoleStory pole, Steady steady) {
        return scene.expected()
                .amperes(stage.name(), pole.phase(), scene.busVolts(steady, pole.phase()))
                .map(e -> steady.magnitude(pole.signal()) / e)
                .orElse(Double.NaN);
    }

    private boolean isOn(Steady steady) {
        return poles.stream().anyMatch(p -> p.isOn(steady.middleSeconds())) && scene.isBusAlive(steady);
    }

    private void changes() {
        List<Steady> on = scene.steadies().stream().filter(this::isOn).toList();
        for (int i = 0; i + 1 < on.size(); i++) {
            change(on.get(i), on.get(i + 1));
        }
        on.stream().findFirst().ifPresent(this::first);
    }

    /** What the first steady stretch shows against the bank file. */
    private void first(Steady steady) {
        List<String> words = new ArrayList<>();
        List<Evidence> evidence = new ArrayList<>();
        boolean off = false;
        for (PoleStory pole : poles) {
            double ratio = ratio(pole, steady);
            if (Double.isFinite(ratio)) {
                words.add(pole.phase() + " " + Say.times(ratio));
                evidence.add(pole.evidence(steady.middleSeconds(), steady.magnitude(pole.signal()), "rms"));
                off |= Math.abs(ratio - 1.0) > 0.1;
            }
        }
        if (words.isEmpty()) {
            return;
        }
        findings.add(new Finding(
                "current",
                off ? Finding.Weight.LOOK : Finding.Weight.NOTE,
                steady.fromSeconds(),
                stage.name(),
                stage.name() + " draws, against what it should in good order at "
                        + (scene.bus("A").isPresent() ? "the recorded voltage" : "nominal voltage (none is recorded)")
                        + ": " + Enumeration.of(words) + "."
                        + (off
                                ? " More than a tenth off: units out, other units than the file says, or a wrong ratio."
                                : ""),
                evidence,
                Say.basis(
                        "REC-16",
                        "I/I_expected, I_expected of the network with the capacitances of the bank file",
                        Source.FIRST_PRINCIPLES,
                        new Term("V_A", "phase voltage counted with", scene.busVolts(steady, "A"), "V"))));
    }

    private void change(Steady before, Steady after) {
        double at = before.toSeconds();
        List<String> moved = new ArrayList<>();
        List<Evidence> evidence = new ArrayList<>();
        double most = 0.0;
        for (PoleStory pole : poles) {
            double was = ratio(pole, before);
            double is = ratio(pole, after);
            if (!Double.isFinite(was) || !Double.isFinite(is) || was < 0.05) {
                continue;
            }
            double part = is / was - 1.0;
            most = Math.max(most, Math.abs(part));
            moved.add(pole.phase() + " " + (part > -5e-4 ? "+" : "−")
                    + String.format(java.util.Locale.ROOT, "%.1f", 100.0 * Math.abs(part)) + " %");
            evidence.add(pole.evidence(before.middleSeconds(), before.magnitude(pole.signal()), "rms before"));
            evidence.add(pole.evidence(after.middleSeconds(), after.magnitude(pole.signal()), "rms after"));
        }
        if (moved.isEmpty()) {
            return;
        }
        if (most > MOVED) {
            findings.add(new Finding(
                    "admittance",
                    Finding.Weight.FAILED,
                    at,
                    stage.name(),
                    when(before, after) + " the current of " + stage.name() + " for its voltage changes for good: "
                            + Enumeration.of(moved) + ". That is inside the "
                            + scene.bank().words().stage()
                            + ": units out or sections shorted.",
                    evidence,
                    Say.basis(
                            "REC-16",
                            "(I/V after)/(I/V before) − 1, a failure inside where above 3 %",
                            Say.THRESHOLDS,
                            new Term("", "largest change", most, ""))));
            return;
        }
        disturbance(before, after, at, evidence, most);
    }

    private String when(Steady before, Steady after) {
        return after.fromSeconds() - before.toSeconds() < 2.0 * scene.cycleSeconds()
                ? "Around " + Say.at(before.toSeconds())
                : "Between " + Say.at(before.toSeconds()) + " and " + Say.at(after.fromSeconds());
    }

    private void disturbance(Steady before, Steady after, double at, List<Evidence> evidence, double most) {
        double lowest = 1.0;
        String phase = "";
        double until = after.fromSeconds();
        for (Window w : scene.cycles().windows()) {
            if (w.middleSeconds() < before.toSeconds() || w.middleSeconds() > until) {
                continue;
            }
            for (String p : Role.PHASES) {
                double part = scene.bus(p)
                        .flatMap(b -> w.phasor(b.signal()))
                        .map(v -> v.magnitude() / scene.busVolts(before, p))
                        .orElse(1.0);
                if (part < lowest) {
                    lowest = part;
                    phase = p;
                }
            }
        }
        String same = "; current over voltage of " + stage.name() + " is the same after it: not in this "
                + scene.bank().words().stage() + ".";
        Optional<String> stepped = stepped(before, after);
        boolean dip = lowest < 1.0 - DIP;
        String words = stepped.map(s -> "Around " + Say.at(at) + " the bus voltage " + s + same)
                .orElse(
                        dip
                                ? "Around " + Say.at(at) + " the bus voltage of phase " + phase + " falls to "
                                        + Say.percent(lowest) + " and comes back" + same
                                : "Around " + Say.at(at) + " something switches" + same);
        findings.add(new Finding(
                dip || stepped.isPresent() ? "voltage-elsewhere" : "switching-elsewhere",
                Finding.Weight.NOTE,
                at,
                stage.name(),
                words,
                evidence,
                Say.basis(
                        "REC-16",
                        "(I/V after)/(I/V before) − 1, nothing inside where below 3 %",
                        Say.THRESHOLDS,
                        new Term("", "largest change", most, ""))));
    }

    /** By how much the bus voltage is another after a change; empty where it is the same. */
    private Optional<String> stepped(Steady before, Steady after) {
        double furthest = 1.0;
        String which = "";
        for (String p : Role.PHASES) {
            double part = scene.busVolts(after, p) / scene.busVolts(before, p);
            if (Math.abs(part - 1.0) > Math.abs(furthest - 1.0)) {
                furthest = part;
                which = p;
            }
        }
        return Math.abs(furthest - 1.0) > DIP
                ? Optional.of("of phase " + which + (furthest < 1.0 ? " falls to " : " rises to ")
                        + Say.percent(furthest) + " of what it was")
                : Optional.empty();
    }

    /** Cycles in which a pole carries far more than it should, the first after its closing left out. */
    private void faults() {
        Optional<Window> begin = Optional.empty();
        double[] most = new double[3];
        double last = 0.0;
        for (Window w : scene.cycles().windows()) {
            double[] now = new double[3];
            boolean high = false;
            for (PoleStory pole : poles) {
                int p = Role.PHASES.indexOf(pole.phase());
                boolean closing = pole.runs().stream()
                        .anyMatch(r -> !r.fromBegin()
                                && w.middleSeconds() > r.startSeconds() - scene.cycleSeconds()
                                && w.middleSeconds() < r.startSeconds() + 1.5 * scene.cycleSeconds());
                double expected = scene.expected()
                        .of(new Role.StageAmperes(stage.name(), pole.phase()))
                        .orElse(Double.NaN);
                double amperes = w.phasor(pole.signal()).map(Complex::magnitude).orElse(0.0);
                now[p] = closing || !(expected > 0.0) ? 0.0 : amperes / expected;
                high |= now[p] > FAULT;
            }
            if (high) {
                begin = begin.isPresent() ? begin : Optional.of(w);
                last = w.middleSeconds() + 0.5 / w.hertz();
                for (PoleStory pole : poles) {
                    int p = Role.PHASES.indexOf(pole.phase());
                    if (now[p] > most[p]) {
                        most[p] = now[p];
                    }
                }
            } else if (begin.isPresent()) {
                fault(begin.get(), last, most);
                begin = Optional.empty();
                most = new double[3];
            }
        }
        if (begin.isPresent()) {
            fault(begin.get(), last, most);
        }
    }

    private void fault(Window begin, double end, double[] most) {
        double at = begin.middleSeconds() - 0.5 / begin.hertz();
        List<String> words = new ArrayList<>();
        List<Evidence> evidence = new ArrayList<>();
        for (PoleStory pole : poles) {
            int p = Role.PHASES.indexOf(pole.phase());
            words.add(pole.phase() + " " + Say.times(most[p]) + " times");
            evidence.add(pole.evidence(
                    begin.middleSeconds(),
                    most[p]
                            * scene.expected()
                                    .of(new Role.StageAmperes(stage.name(), pole.phase()))
                                    .orElse(0.0),
                    "largest rms of the fundamental"));
        }
        findings.add(new Finding(
                "fault",
                Finding.Weight.FAILED,
                at,
                stage.name(),
                "From the cycle at " + Say.at(at) + " on " + stage.name() + " carries more than it can by itself: "
                        + Enumeration.of(words) + " what it should, "
                        + (end > scene.base().last() - 1.5 * scene.cycleSeconds()
                                ? "to the end of the record"
                                : "until about " + Say.at(end))
                        + "." + pattern(most),
                evidence,
                Say.basis(
                        "REC-17",
                        "fundamental of one cycle above 1.6 times the expected; a leg shorted at a floating neutral: 3, √3, √3",
                        Source.commonPractice("first principles (Millman); threshold"),
                        new Term("I_A/I", "phase A", most[0], ""),
                        new Term("I_B/I", "phase B", most[1], ""),
                        new Term("I_C/I", "phase C", most[2], ""))));
    }

    private String pattern(double[] most) {
        if (poles.size() == 3 && stage.connection() == Connection.WYE_UNGROUNDED) {
            for (int p = 0; p < 3; p++) {
                double two = Math.sqrt(3.0);
                if (Math.abs(most[p] / 3.0 - 1.0) < PATTERN
                        && Math.abs(most[(p + 1) % 3] / two - 1.0) < PATTERN
                        && Math.abs(most[(p + 2) % 3] / two - 1.0) < PATTERN) {
                    return " Three times in one phase and 1.73 times in the others is a leg of an "
                            + scene.bank().words().connection(stage.connection()) + " shorted end to end: phase "
                            + Role.PHASES.get(p) + ".";
                }
            }
        }
        List<String> high = new ArrayList<>();
        for (int p = 0; p < 3; p++) {
            if (most[p] > FAULT) {
                high.add(Role.PHASES.get(p));
            }
        }
        return " Units shorted, or a fault behind the switch, in " + (high.size() == 1 ? "phase " : "phases ")
                + Enumeration.of(high) + ".";
    }
}
