package org.varwright.resonance;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.TreeSet;
import org.varwright.bank.Harmonic;
import org.varwright.bank.Reactor;
import org.varwright.basis.Check;
import org.varwright.basis.CheckText;
import org.varwright.basis.Unanswered;
import org.varwright.basis.Verdict;
import org.varwright.limit.Stress;
import org.varwright.page.Page;
import org.varwright.quantity.Dimension;

/** {@link Resonance} as text for people: 100 columns, to be printed and taken to site. */
public final class ResonanceText {
    /** More rows than this are counted, not printed. */
    private static final int MOST_ROWS = 32;

    private ResonanceText() {}

    public static String of(Resonance resonance) {
        Page page = new Page().heading("Resonance  " + resonance.bank().name());
        page.text("Bus " + Dimension.VOLTAGE.format(resonance.busVolts()) + " at "
                + Dimension.FREQUENCY.format(resonance.bank().system().frequencyHertz()) + ". " + source(resonance)
                + " Harmonics: " + spectrum(resonance.spectrum()) + ".");
        whatToDo(page, resonance);
        if (!resonance.combinations().isEmpty()) {
            combinations(page, resonance);
        }
        duties(page, resonance);
        if (!resonance.tunings().isEmpty()) {
            tunings(page, resonance);
        }
        List<Check> open = resonance.tunings().stream()
                .flatMap(t -> t.checks().stream())
                .filter(c -> c.verdict() != Verdict.PASS)
                .toList();
        if (!open.isEmpty()) {
            page.heading("Tuning that doesn't pass");
            CheckText.add(page, open);
        }
        if (!resonance.unanswered().isEmpty()) {
            page.heading("Not answered");
            for (Unanswered gap : resonance.unanswered()) {
                page.item("  - ", gap.print());
            }
        }
        page.heading("How it is counted");
        page.item(
                "  - ",
                "Source resistance as at the fundamental at every order: the highest peaks. The second figure of a peak"
                        + " has it rise with the order, and the load that damps most; \"most damped\" is the same.");
        page.item(
                "  - ",
                "Every load case of the file is looked at, and no load; the worst counts. Harmonics of one order add as"
                        + " if in phase.");
        page.item(
                "  - ",
                "Other capacitors, cables and filters in the network are not in the file and not counted: they move"
                        + " resonances. A measurement with the "
                        + resonance.bank().words().stage()
                        + " on settles it.");
        return page.print();
    }

    private static String source(Resonance resonance) {
        return resonance
                .source()
                .map(s -> "Source "
                        + Dimension.APPARENT_POWER.format(resonance
                                .bank()
                                .system()
                                .shortCircuitVoltAmperes()
                                .orElse(0.0))
                        + (s.isDamped()
                                ? ", X/R "
                                        + Dimension.digits(
                                                resonance
                                                        .bank()
                                                        .system()
                                                        .xOverR()
                                                        .orElse(0.0),
                                                3)
                                : ", X/R not given")
                        + ".")
                .orElse("Source not given.");
    }

    static String spectrum(List<Harmonic> spectrum) {
        if (spectrum.isEmpty()) {
            return "none given";
        }
        List<String> parts = new ArrayList<>();
        for (Harmonic h : spectrum) {
            List<String> values = new ArrayList<>();
            h.voltageFraction().ifPresent(v -> values.add(Dimension.FRACTION.format(v)));
            h.currentAmperes().ifPresent(a -> values.add(Dimension.CURRENT.format(a)));
            parts.add(h.order() + ": " + String.join(" and ", values));
        }
        return String.join(", ", parts);
    }

    private static void whatToDo(Page page, Resonance resonance) {
        page.heading("What to do");
        if (resonance.source().isEmpty()) {
            page.item("  - ", "Nothing can be said of resonance until the short-circuit level at the bus is known.");
            return;
        }
        List<CombinationResult> avoid = resonance.avoid();
        for (CombinationResult c : avoid.subList(0, Math.min(8, avoid.size()))) {
            page.item("  avoid  ", c.combination().name() + ": " + String.join("; ", c.reasons()));
        }
        if (avoid.size() > 8) {
            page.item("  avoid  ", "and " + (avoid.size() - 8) + " more, see the table");
        }
        List<String> clear = new ArrayList<>(resonance.clear().stream()
                .map(c -> c.combination().name() + " (" + Dimension.REACTIVE_POWER.format(c.vars()) + ")")
                .toList());
        Collections.reverse(clear);
        if (clear.size() > 8) {
            int more = clear.size() - 8;
            clear = new ArrayList<>(clear.subList(0, 8));
            clear.add("and " + more + " more");
        }
        page.item("  clear  ", clear.isEmpty() ? none(resonance) : String.join("; ", clear));
    }

    private static String none(Resonance resonance) {
        return resonance
                .leastBad()
                .map(c -> "none; the least bad is " + c.combination().name() + ". Change the "
                        + resonance.bank().words().stage() + "s, detune them, or measure before you rely on it")
                .orElse("none was looked at");
    }

    private static void combinations(Page page, Resonance resonance) {
        page.heading("Combinations");
        TreeSet<Integer> orders = new TreeSet<>();
        resonance.combinations().forEach(c -> c.amplifications().forEach(a -> orders.add(a.order())));
        List<String> header = new ArrayList<>(List.of("", "gives", "√(S/Q)", "resonance at"));
        orders.forEach(o -> header.add("×" + o));
        header.add("on");
        List<CombinationResult> shown = resonance.combinations();
        if (shown.size() > MOST_ROWS) {
            List<CombinationResult> worst = resonance.avoid();
            List<CombinationResult> some = new ArrayList<>(worst.subList(0, Math.min(MOST_ROWS - 1, worst.size())));
            some.add(shown.getLast());
            shown = some;
        }
        List<List<String>> rows = new ArrayList<>();
        for (CombinationResult c : shown) {
            List<String> row = new ArrayList<>(List.of(
                    c.verdict() == Verdict.FAIL ? "FAIL" : c.isToAvoid() ? "WARN" : "ok",
                    Dimension.REACTIVE_POWER.format(c.vars()),
                    Dimension.digits(c.simpleOrder(), 3),
                    peaks(c)));
            for (int order : orders) {
                row.add(c.amplifications().stream()
                        .filter(a -> a.order() == order)
                        .map(a -> factor(a.factor()))
                        .findFirst()
                        .orElse("-"));
            }
            row.add(c.combination().name());
            rows.add(row);
        }
        Integer[] right = new Integer[orders.size() + 2];
        right[0] = 1;
        right[1] = 2;
        for (int i = 0; i < orders.size(); i++) {
            right[i + 2] = 4 + i;
        }
        page.table(header, rows, right);
        page.text("  ×5: how many times higher the 5th stands at the bus than without the bank, in the worst load case."
                + " In brackets the same right at the resonance, least damped to most damped.");
        if (shown.size() < resonance.combinations().size()) {
            page.text("  " + (resonance.combinations().size() - shown.size())
                    + " more combinations are not printed; --json lists them all.");
        }
    }

    private static String peaks(CombinationResult c) {
        List<String> parts = new ArrayList<>();
        for (Peak peak : c.peaks().subList(0, Math.min(3, c.peaks().size()))) {
            parts.add(Dimension.digits(peak.order(), 4) + " (" + factor(peak.amplification()) + " to "
                    + factor(peak.dampedAmplification()) + ")");
        }
        return parts.isEmpty() ? "none below 50" : String.join(", ", parts);
    }

    private static String factor(double value) {
        return !Double.isFinite(value) || value > 999.0 ? ">999" : Dimension.digits(value, 2);
    }

    /** Every combination that has one stage at its worst, or that breaks a limit: the whole bank and the failing ones. */
    private static void duties(Page page, Resonance resonance) {
        List<CombinationResult> shown = new ArrayList<>(resonance.combinations().stream()
                .filter(c -> c.duty().isPresent() && c.verdict() == Verdict.FAIL)
                .limit(6)
                .toList());
        if (!resonance.combinations().isEmpty()) {
            CombinationResult whole = resonance.combinations().getLast();
            if (whole.duty().isPresent() && !shown.contains(whole)) {
                shown.add(whole);
            }
        }
        for (CombinationResult c : shown) {
            c.duty().ifPresent(duty -> duty(page, c.combination().name(), duty));
        }
    }

    private static void duty(Page page, String name, HarmonicDuty duty) {
        page.heading("Harmonic duty with " + name + " on, " + duty.load());
        List<List<String>> rows = new ArrayList<>();
        for (HarmonicDuty.StageStress s : duty.stages()) {
            Stress stress = s.stress();
            rows.add(List.of(
                    s.stage(),
                    Dimension.digits(stress.voltage(), 4),
                    Dimension.digits(stress.crest(), 4),
                    Dimension.digits(stress.current(), 4),
                    Dimension.digits(stress.reactivePower(), 4),
                    Dimension.CURRENT.format(s.lineAmperes())));
        }
        page.table(List.of("over rated", "rms V", "crest", "rms I", "kvar", "line current"), rows, 1, 2, 3, 4, 5);
        List<List<String>> orders = new ArrayList<>();
        for (HarmonicFlow.Order o : duty.flow().orders()) {
            List<String> parts = new ArrayList<>();
            o.stages().forEach(s -> parts.add(s.stage() + " " + Dimension.CURRENT.format(s.amperes())));
            orders.add(List.of(
                    String.valueOf(o.order()),
                    Dimension.VOLTAGE.format(o.busVolts()),
                    Dimension.VOLTAGE.format(o.busVoltsWithout()),
                    Dimension.CURRENT.format(o.sourceAmperes()),
                    String.join(", ", parts)));
        }
        page.table(List.of("order", "bus, to neutral", "without bank", "source", "carried by"), orders, 0, 1, 2, 3);
        page.text("  total distortion of the bus voltage " + Dimension.FRACTION.format(duty.distortion(), 3) + ", "
                + Dimension.FRACTION.format(duty.distortionWithout(), 3) + " without the bank");
    }

    private static void tunings(Page page, Resonance resonance) {
        page.heading("Reactors");
        for (StageTuning t : resonance.tunings()) {
            page.item("  " + t.stage().name() + ": ", purpose(t.purpose()) + ", " + TuningStudy.sentence(t));
            if (!t.drifts().isEmpty()) {
                List<List<String>> rows = new ArrayList<>();
                for (Drift d : t.drifts()) {
                    rows.add(List.of(
                            d.cause(),
                            Dimension.digits(d.capacitanceFactor(), 4),
                            Dimension.digits(d.tunedOrder(), 4),
                            Double.isNaN(d.amplification()) ? "-" : factor(d.amplification())));
                }
                page.table(List.of("what changes", "C ×", "tuned to", "×" + t.aim() + " alone"), rows, 1, 2, 3);
            }
        }
    }

    private static String purpose(Reactor.Purpose purpose) {
        return switch (purpose) {
            case INRUSH -> "inrush reactor";
            case DETUNING -> "detuning reactor";
            case FILTER -> "filter reactor";
        };
    }
}
