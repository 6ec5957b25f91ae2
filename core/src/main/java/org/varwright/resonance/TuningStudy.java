package org.varwright.resonance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Construction;
import org.varwright.bank.Harmonic;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;
import org.varwright.quantity.Dimension;

/** Tuning of the stages with reactors, and how it drifts as capacitances change (RES-5, RES-10). */
final class TuningStudy {
    /** Capacitance of polypropylene film by temperature, as a part a kelvin: quoted in trade literature; a whole unit's figure is from memory. */
    static final double PER_KELVIN = -0.0003;

    private static final double KELVIN = 40.0;
    private static final String TWO_OUT = "two units out of a group, that phase";

    private final Bank bank;
    private final Optional<SourceImpedance> source;
    private final List<Harmonic> spectrum;
    private final double omega1;

    TuningStudy(Bank bank, Optional<SourceImpedance> source, List<Harmonic> spectrum) {
        this.bank = bank;
        this.source = source;
        this.spectrum = spectrum;
        omega1 = bank.system().angularFrequency();
    }

    List<StageTuning> all(List<StageModel> models) {
        List<StageTuning> all = new ArrayList<>();
        for (StageModel model : models) {
            model.stage().reactor().ifPresent(reactor -> all.add(tuning(model, reactor)));
        }
        return all;
    }

    private StageTuning tuning(StageModel model, Reactor reactor) {
        // Of two wyes with a reactor each the one that is tuned highest: it reaches the harmonic first.
        int at = highestTuned(model);
        SeriesBranch branch = model.branches().get(at);
        Detuning detuning = Detuning.of(branch.henries(), branch.farads(), omega1);
        double tuned = detuning.tunedOrder();
        int aim = reactor.purpose() == Reactor.Purpose.FILTER ? nearestAbove(tuned) : lowest(model.stage());
        List<Drift> drifts = reactor.purpose() == Reactor.Purpose.INRUSH ? List.of() : drifts(model, at, aim);
        return new StageTuning(
                model.stage(),
                reactor.purpose(),
                detuning,
                branch.farads(),
                branch.henries(),
                model.vars(bank.system().nominalVolts(), omega1),
                aim,
                drifts,
                checks(model.stage(), reactor, branch, aim, drifts));
    }

    /** The harmonic nearest above a tuned order, the one that it was tuned for: filters are tuned a little below. */
    private static int nearestAbove(double tuned) {
        for (int order : new int[] {3, 5, 7, 11, 13}) {
            if (tuned <= order * (1.0 + 0.02)) {
                return order;
            }
        }
        return (int) Math.ceil(tuned);
    }

    /** The lowest harmonic to stay below: of the spectrum, else 3 for a grounded wye, else 5. */
    private int lowest(Stage stage) {
        return spectrum.isEmpty()
                ? stage.connection().isGrounded() ? 3 : 5
                : spectrum.getFirst().order();
    }

    private int highestTuned(StageModel model) {
        int highest = 0;
        for (int b = 1; b < model.branches().size(); b++) {
            if (model.branches().get(b).tunedOrder(omega1)
                    > model.branches().get(highest).tunedOrder(omega1) * (1.0 + 1e-9)) {
                highest = b;
            }
        }
        return highest;
    }

    private List<Drift> drifts(StageModel model, int branch, int aim) {
        Stage stage = model.stage();
        List<Drift> drifts = new ArrayList<>();
        drifts.add(everywhere("as it is", 1.0, model, branch, aim));
        double nameplate = nameplateFactor(model);
        String tolerance = "every unit at the ";
        drifts.add(everywhere(
                tolerance + "lower end of its tolerance",
                nameplate * (1.0 + stage.unit().tolerance().low()),
                model,
                branch,
                aim));
        drifts.add(everywhere(
                tolerance + "upper end of its tolerance",
                nameplate * (1.0 + stage.unit().tolerance().high()),
                model,
                branch,
                aim));
        drifts.add(everywhere("40 K warmer than when measured", 1.0 + PER_KELVIN * KELVIN, model, branch, aim));
        drifts.add(everywhere("40 K colder than when measured", 1.0 - PER_KELVIN * KELVIN, model, branch, aim));
        unitsOut(model, branch, 1)
                .ifPresent(f -> drifts.add(drift("one unit out, that phase", model.scaled(branch, f), f, branch, aim)));
        unitsOut(model, branch, 2).ifPresent(f -> drifts.add(drift(TWO_OUT, model.scaled(branch, f), f, branch, aim)));
        stage.unit().construction().ifPresent(c -> {
            if (c.internallyFused() && c.elements() > 1) {
                double factor = inPhase(model, branch, elementsOut(c, 1));
                drifts.add(drift(
                        "one element fuse operated, that phase", model.scaled(branch, factor), factor, branch, aim));
            }
            if (!c.internallyFused() && c.sections() > 1) {
                double factor = inPhase(model, branch, c.sections() / (c.sections() - 1.0));
                drifts.add(drift("one section shorted, that phase", model.scaled(branch, factor), factor, branch, aim));
            }
        });
        return drifts;
    }

    /** Every unit of the stage changes alike. */
    private Drift everywhere(String cause, double factor, StageModel model, int branch, int aim) {
        return drift(cause, model.scaled(factor), factor, branch, aim);
    }

    private Drift drift(String cause, StageModel changed, double factor, int branch, int aim) {
        double amplification = source.map(s -> new BusModel(
                                s,
                                LoadCase.of(bank).getFirst(),
                                List.of(changed),
                                omega1,
                                SourceImpedance.ResistanceLaw.CONSTANT)
                        .amplification(aim))
                .orElse(Double.NaN);
        return new Drift(cause, factor, changed.branches().get(branch).tunedOrder(omega1), amplification);
    }

    /** Capacitance by the nameplates over what it is now. */
    private double nameplateFactor(StageModel model) {
        StageModel nameplate = StageModel.of(model.stage(), org.varwright.network.Capacitances.nameplate(bank));
        return nameplate.farads() / model.farads();
    }

    /** Capacitance behind a reactor with some units of one group out over healthy; empty where a string would be open. */
    private static Optional<Double> unitsOut(StageModel model, int branch, int out) {
        return layouts(model, branch).stream()
                .filter(l -> out < l.units())
                .map(l -> inPhase(model, branch, l, (l.units() - out) / (double) l.units()))
                .reduce(TuningStudy::farther);
    }

    /** The same when the capacitance of one unit changes. */
    private static double inPhase(StageModel model, int branch, double unitFactor) {
        return layouts(model, branch).stream()
                .map(l -> inPhase(model, branch, l, (l.units() - 1.0 + unitFactor) / l.units()))
                .reduce(TuningStudy::farther)
                .orElseThrow();
    }

    private static double farther(double a, double b) {
        return Math.abs(b - 1.0) > Math.abs(a - 1.0) * (1.0 + 1e-9) ? b : a;
    }

    /** Layouts of the wyes behind one reactor: both of a double wye with the reactor in the line. */
    private static List<LegLayout> layouts(StageModel model, int branch) {
        LegLayout first = model.stage().layout();
        LegLayout second = model.stage().second().orElse(first);
        if (model.branches().size() > 1) {
            return List.of(branch == 0 ? first : second);
        }
        return model.stage().connection().isDoubleWye() ? List.of(first, second) : List.of(first);
    }

    /** Capacitance behind a reactor over healthy when one group of a leg changes: leg by leg, units alike (NET-7). */
    private static double inPhase(StageModel model, int branch, LegLayout layout, double group) {
        double groups = layout.groups();
        double string = groups / (groups - 1.0 + 1.0 / group);
        double strings = layout.strings();
        double leg = (strings - 1.0 + string) / strings;
        return switch (model.stage().connection()) {
            case WYE_GROUNDED, WYE_UNGROUNDED, DELTA -> leg;
            case DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED -> {
                double all = layouts(model, branch).stream()
                        .mapToDouble(TuningStudy::perUnit)
                        .sum();
                yield 1.0 + perUnit(layout) / all * (leg - 1.0);
            }
            // Upper half (leg + 1)/2 of two legs in parallel, in series with the healthy lower half.
            case BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> {
                double half = 0.5 * (1.0 + leg);
                yield 2.0 * half / (half + 1.0);
            }
        };
    }

    /** Capacitance of a leg over that of one of its units. */
    private static double perUnit(LegLayout layout) {
        return (double) layout.strings() * layout.units() / layout.groups();
    }

    private static double elementsOut(Construction c, int out) {
        double s = c.sections();
        double left = c.elements() - out;
        return s * left / (s * left + out);
    }

    private List<Check> checks(Stage stage, Reactor reactor, SeriesBranch branch, int aim, List<Drift> drifts) {
        List<Check> checks = new ArrayList<>();
        double tuned = branch.tunedOrder(omega1);
        boolean filter = reactor.purpose() == Reactor.Purpose.FILTER;
        if (reactor.purpose() == Reactor.Purpose.INRUSH) {
            return List.of();
        }
        String what = filter ? "filter tuned no higher than its harmonic" : "detuned below the lowest harmonic";
        checks.add(check(
                stage.name() + ": " + what, tuned, aim, branch, filter ? Verdict.WARN : Verdict.FAIL, "as it is"));
        double highest = tuned;
        String cause = "as it is";
        for (Drift drift : drifts) {
            // With two units out the protection has tripped: shown, not judged.
            if (!drift.cause().equals(TWO_OUT) && drift.tunedOrder() > highest * (1.0 + 1e-9)) {
                highest = drift.tunedOrder();
                cause = drift.cause();
            }
        }
        if (!cause.equals("as it is")) {
            checks.add(check(stage.name() + ": " + what + ", " + cause, highest, aim, branch, Verdict.WARN, cause));
        }
        return checks;
    }

    private static Check check(String subject, double tuned, int aim, SeriesBranch branch, Verdict over, String cause) {
        return new Check(
                subject,
                tuned,
                aim,
                "",
                tuned <= aim ? Verdict.PASS : over,
                new Basis(
                        "RES-10",
                        "h = 1/(ω·√(L·C)) ≤ order; above it the branch is inductive and raises nothing",
                        List.of(
                                new Term("L", "reactor, one phase", branch.henries(), "H"),
                                new Term("C", "of one phase now; judged: " + cause, branch.farads(), "F"),
                                new Term("h_aim", "the harmonic", aim, "")),
                        Source.FIRST_PRINCIPLES));
    }

    /** Such as {@code 0.7677 mH and 923.9 µF: p 7 %, order 3.78}. */
    static String sentence(StageTuning tuning) {
        return Dimension.INDUCTANCE.format(tuning.henries()) + " and " + Dimension.CAPACITANCE.format(tuning.farads())
                + " a phase: p " + Dimension.FRACTION.format(tuning.detuning().factor()) + ", tuned to order "
                + Dimension.digits(tuning.detuning().tunedOrder(), 4) + ", capacitor voltage × "
                + Dimension.digits(tuning.detuning().voltageRise(), 5) + ", gives "
                + Dimension.REACTIVE_POWER.format(tuning.netVars());
    }
}
