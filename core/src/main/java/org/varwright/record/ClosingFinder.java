package org.varwright.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Connection;
import org.varwright.bank.Stage;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Unanswered;
import org.varwright.page.Enumeration;
import org.varwright.waveform.Conduction;
import org.varwright.waveform.Ringing;

/** When the poles of a stage closed, what the inrush was, and what was wrong with the closing. */
final class ClosingFinder {
    /** Poles that close further apart than this many cycles close in two operations. */
    private static final double TOGETHER_CYCLES = 3.0;

    /** Poles of a sound switch close within a quarter of a cycle: common practice, no source. */
    private static final double APART_CYCLES = 0.25;

    private final Scene scene;
    private final Stage stage;
    private final List<PoleStory> poles;
    private final List<Finding> findings = new ArrayList<>();
    private final List<Unanswered> unanswered = new ArrayList<>();
    private Optional<Double> closedAt = Optional.empty();

    private ClosingFinder(Scene scene, Stage stage, List<PoleStory> poles) {
        this.scene = scene;
        this.stage = stage;
        this.poles = poles;
    }

    /** What was found, and what could not be. */
    record Found(List<Finding> findings, List<Unanswered> unanswered, Optional<Double> closedAt) {
        Found {
            findings = List.copyOf(findings);
            unanswered = List.copyOf(unanswered);
        }
    }

    static Found of(Scene scene, Stage stage, List<PoleStory> poles) {
        ClosingFinder finder = new ClosingFinder(scene, stage, poles);
        finder.find();
        return new Found(finder.findings, finder.unanswered, finder.closedAt);
    }

    private void find() {
        List<PoleStory> closing =
                poles.stream().filter(p -> p.closed().isPresent()).toList();
        if (closing.isEmpty()) {
            return;
        }
        double first = closing.stream().mapToDouble(ClosingFinder::start).min().orElseThrow();
        List<PoleStory> together = closing.stream()
                .filter(p -> start(p) - first < TOGETHER_CYCLES * scene.cycleSeconds())
                .sorted(Comparator.comparingDouble(ClosingFinder::start))
                .toList();
        closedAt = Optional.of(first);
        times(together, first);
        missing(together, first);
        together.stream().filter(p -> !p.bursts().isEmpty()).forEach(this::preStrike);
        inrush(together, first);
    }

    private static double start(PoleStory pole) {
        return pole.closed().map(Conduction.Run::startSeconds).orElse(Double.NaN);
    }

    private boolean isTied() {
        return stage.connection().isGrounded();
    }

    private void times(List<PoleStory> together, double first) {
        List<String> words = new ArrayList<>();
        List<Evidence> evidence = new ArrayList<>();
        for (PoleStory pole : together) {
            String angle = ownDegrees(pole)
                    .map(d -> " (" + Say.degrees(d) + " of its voltage)")
                    .orElse("");
            words.add(pole.phase() + " at " + Say.at(start(pole)) + angle);
            evidence.add(pole.evidence(start(pole), 0.0, "current begins"));
        }
        double apart = start(together.getLast()) - first;
        boolean late = apart > APART_CYCLES * scene.cycleSeconds() * 1.05;
        String floating = isTied()
                ? ""
                : " In " + bank() + " that nothing ties to "
                        + scene.bank().words().ground()
                        + " the first pole carries nothing until the second has closed.";
        findings.add(new Finding(
                "closed",
                late ? Finding.Weight.LOOK : Finding.Weight.NOTE,
                first,
                stage.name(),
                stage.name() + " closed: " + Enumeration.of(words)
                        + (together.size() > 1 ? "; " + apart(together, apart) : "")
                        + "."
                        + (late ? " That is more than a quarter of a cycle: look at the switch's poles." : "")
                        + floating,
                evidence,
                Say.basis(
                        "REC-5",
                        "a pole carries from the zero of the line through its first samples on",
                        Say.THRESHOLDS,
                        new Term("Δt", "first to last pole", apart, "s"),
                        new Term("T", "one cycle", scene.cycleSeconds(), "s"))));
    }

    private String apart(List<PoleStory> together, double apart) {
        double step = scene.base()
                .pieceAt(together.getFirst().signal().indexAt(start(together.getFirst())))
                .stepSeconds();
        return apart > step ? Say.time(apart) + " from first to last" : "together, to one sample of " + Say.time(step);
    }

    private String bank() {
        return "a " + scene.bank().words().stage();
    }

    /** Angle of a pole's own voltage to ground at its closing: 0 at the rising zero, 90 at the peak. */
    private Optional<Double> ownDegrees(PoleStory pole) {
        return scene.clockDegrees(start(pole)).map(d -> {
            double own = (d - 120.0 * Role.PHASES.indexOf(pole.phase())) % 360.0;
            return own < 0.0 ? own + 360.0 : own;
        });
    }

    private void missing(List<PoleStory> together, double first) {
        double later = first + TOGETHER_CYCLES * scene.cycleSeconds();
        for (PoleStory pole : poles) {
            if (together.contains(pole) || pole.isOn(first - scene.cycleSeconds())) {
                continue;
            }
            if (scene.base().last() < later) {
                unanswered.add(new Unanswered(
                        "three cycles after the closing",
                        "whether the pole of phase " + pole.phase() + " of " + stage.name()
                                + " closed: the record ends too soon. Its terminals may be live all the same"));
                continue;
            }
            findings.add(new Finding(
                    "pole-not-closed",
                    Finding.Weight.FAILED,
                    first,
                    stage.name() + "/" + pole.phase(),
                    stage.name() + ": phase " + pole.phase() + " carries no current while "
                            + Enumeration.of(
                                    together.stream().map(PoleStory::phase).toList())
                            + (together.size() > 1 ? " do." : " does.")
                            + " Its pole did not close, its line fuse has operated, or the way to it is broken. Its terminals may"
                            + " be live all the same.",
                    List.of(pole.evidence(
                            later,
                            pole.signal()
                                    .largest(
                                            pole.signal().indexAt(first),
                                            pole.signal().indexAt(later)),
                            "largest in three cycles after the others closed")),
                    Say.basis("REC-5", "no current above 3 % of the expected", Say.THRESHOLDS)));
        }
    }

    private void preStrike(PoleStory pole) {
        Conduction.Run burst = pole.bursts().getFirst();
        double gap = start(pole) - pole.bursts().getLast().stopSeconds();
        findings.add(new Finding(
                "pre-strike",
                Finding.Weight.LOOK,
                burst.startSeconds(),
                stage.name() + "/" + pole.phase(),
                stage.name() + " phase " + pole.phase() + ": current began at " + Say.at(burst.startSeconds())
                        + ", broke off, and came for good at " + Say.at(start(pole)) + ", " + Say.time(gap)
                        + " later: the gap broke down before the contacts touched (pre-strike), or they bounced. Look at the"
                        + " switch's contacts and closing speed.",
                List.of(
                        pole.evidence(
                                burst.startSeconds(),
                                pole.signal().largest(burst.from(), burst.to()),
                                "peak of the first burst"),
                        pole.evidence(start(pole), 0.0, "current for good")),
                Say.basis(
                        "REC-12",
                        "a burst that ends within 1.5 cycles before the current comes for good",
                        Say.THRESHOLDS,
                        new Term("n", "bursts", pole.bursts().size(), ""),
                        new Term("Δt", "pause", gap, "s"))));
    }

    private void inrush(List<PoleStory> together, double first) {
        PoleStory worst = together.getFirst();
        int at = worst.signal().indexAt(first);
        double peak = -1.0;
        double end = start(together.getLast()) + scene.cycleSeconds();
        for (PoleStory pole : together) {
            int index = pole.signal()
                    .largestAt(pole.signal().indexAt(first), pole.signal().indexAt(end));
            double found = Math.abs(pole.signal().value(index));
            if (found > peak) {
                peak = found;
                worst = pole;
                at = index;
            }
        }
        // The oscillation belongs to the last switching before the peak.
        double peakAt = worst.signal().seconds(at);
        double from = together.stream()
                .mapToDouble(ClosingFinder::start)
                .filter(s -> s <= peakAt)
                .max()
                .orElse(first);
        double until = together.stream()
                .mapToDouble(ClosingFinder::start)
                .filter(s -> s > peakAt + 0.05 * scene.cycleSeconds())
                .min()
                .orElse(end);
        Ringing ringing = Ringing.of(worst.signal(), from, until, scene.cycles().hertz());
        List<Evidence> evidence = List.of(worst.evidence(peakAt, worst.signal().value(at), "peak sample"));
        switch (ringing) {
            case Ringing.Rang rang -> rang(worst, peak, peakAt, rang, evidence, together);
            case Ringing.TooSlow slow -> {
                findings.add(note(worst, peak, peakAt, evidence, ""));
                tooSlow(slow.rate(), slow.highestHertz());
            }
            case Ringing.Quiet quiet ->
                findings.add(note(
                        worst,
                        peak,
                        peakAt,
                        evidence,
                        " Nothing rings: closed near a zero of its voltage, or through a resistor or reactor, or too fast for"
                                + " this record."));
        }
    }

    private void tooSlow(double rate, double highest) {
        unanswered.add(new Unanswered(
                "samples close enough together (" + String.format(java.util.Locale.ROOT, "%.0f", rate)
                        + " a second tell oscillations up to " + Say.hertz(highest) + ")",
                "peak and frequency of the inrush of " + stage.name()
                        + " are not told: the true peak may be far above the highest sample"));
    }

    private Finding note(PoleStory worst, double peak, double at, List<Evidence> evidence, String more) {
        return new Finding(
                "inrush",
                Finding.Weight.NOTE,
                at,
                stage.name() + "/" + worst.phase(),
                stage.name() + ": highest sample of the inrush " + Say.amperes(peak) + " in phase " + worst.phase()
                        + " at " + Say.at(at) + "." + more,
                evidence,
                Say.basis("REC-7", "highest sample in the cycle after closing", Source.FIRST_PRINCIPLES));
    }

    private void rang(
            PoleStory worst,
            double peak,
            double at,
            Ringing.Rang rang,
            List<Evidence> evidence,
            List<PoleStory> together) {
        Basis basis = Say.basis(
                "REC-7",
                "e^(−αt)·(c·cos 2πft + d·sin 2πft) beside the fundamental, least squares",
                Source.FIRST_PRINCIPLES,
                new Term("f", "frequency", rang.hertz(), "Hz"),
                new Term("Î", "highest sample", peak, "A"),
                new Term("n", "samples in one oscillation", rang.samplesInOne(), ""),
                new Term(
                        "1 − cos(π/n)",
                        "largest part by which a peak between samples is higher",
                        rang.peakMayBeMissedBy(),
                        ""),
                new Term("", "part that the oscillation explains", rang.explained(), ""));
        Optional<InrushComparison> compared = InrushComparison.of(scene, stage, together, peak, rang);
        findings.add(new Finding(
                "inrush",
                compared.filter(InrushComparison::isHigher).isPresent() ? Finding.Weight.LOOK : Finding.Weight.NOTE,
                at,
                stage.name() + "/" + worst.phase(),
                stage.name() + ": inrush peak " + Say.amperes(peak) + " in phase " + worst.phase() + " at " + Say.at(at)
                        + ", ringing at " + Say.hertz(rang.hertz())
                        + (rang.peakMayBeMissedBy() > 0.02
                                ? " (with " + String.format(java.util.Locale.ROOT, "%.0f", rang.samplesInOne())
                                        + " samples in one oscillation the true peak may be up to "
                                        + Say.percent(1.0 / (1.0 - rang.peakMayBeMissedBy()) - 1.0) + " higher)"
                                : "")
                        + ". " + compared.map(InrushComparison::words).orElse(""),
                evidence,
                basis));
        if (compared.isEmpty()) {
            unanswered.add(new Unanswered(
                    scene.bus("A").isEmpty()
                            ? "voltage of the bus in this record"
                            : "what the closing is simulated from",
                    "the inrush of " + stage.name() + " is not held against a calculated one"));
        }
        compared.filter(c -> c.hertz()
                        > 0.4 / scene.base().pieceAt(worst.signal().indexAt(at)).stepSeconds())
                .ifPresent(c -> tooSlow(
                        1.0 / scene.base().pieceAt(worst.signal().indexAt(at)).stepSeconds(),
                        0.25 / scene.base().pieceAt(worst.signal().indexAt(at)).stepSeconds()));
    }

    /** Whether a stage's currents say how many poles conduct: not where a neutral floats and one pole alone is left. */
    static boolean hidesOnePole(Stage stage) {
        return stage.connection().hasFloatingNeutral() || stage.connection() == Connection.DELTA;
    }
}
