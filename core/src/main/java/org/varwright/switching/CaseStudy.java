package org.varwright.switching;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.varwright.bank.SwitchType;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;

/** One closing: by formula and in time, at both ends of the bus's inductance. */
final class CaseStudy {
    /** Times that a remedy is made larger until the time domain agrees. */
    private static final int MOST_STEPS = 8;

    /** Kept under a limit, so that a remedy rounded to three digits still is inside. */
    private static final double MARGIN = 0.995;

    private final org.varwright.switching.Source source;
    private final SwitchedStage stage;
    private final List<SwitchedStage> on;
    private final InrushRequest request;

    CaseStudy(
            org.varwright.switching.Source source, SwitchedStage stage, List<SwitchedStage> on, InrushRequest request) {
        this.source = source;
        this.stage = stage;
        this.on = List.copyOf(on);
        this.request = request;
    }

    InrushCase find() {
        // In the formula less inductance always gives more current at a higher frequency: the lower end is the worse.
        Optional<ClosedForm> worse = formula(stage, Path.LEAST_PER_METRE);
        Optional<ClosedForm> other = formula(stage, Path.MOST_PER_METRE);
        boolean same =
                worse.isEmpty() || worse.get().henries() == other.orElseThrow().henries();
        return new InrushCase(
                stage.name(),
                on.stream().map(SwitchedStage::name).toList(),
                worse,
                same ? Optional.empty() : other,
                simulation());
    }

    private Simulation simulation() {
        Optional<String> obstacle = obstacle(source, stage, on);
        if (obstacle.isPresent()) {
            return new Simulation.NotPossible(obstacle.get());
        }
        List<ClosingStudy> ends = ends(stage);
        if (request.degrees().isPresent()) {
            List<Closing> found =
                    ends.stream().map(e -> e.at(request.degrees().get(), true)).toList();
            Closing worse = worse(found, Closing::peakAmperes);
            return new Simulation.Given(worse, without(found, List.of(worse)));
        }
        List<Closing> all = new ArrayList<>();
        List<Closing> picked = List.of(
                pick(ends, ClosingStudy::worstTogetherForCurrent, Closing::peakAmperes, all),
                pick(ends, ClosingStudy::worstTogetherForVoltage, Closing::legPerPeak, all),
                pick(ends, ClosingStudy::worstApartForCurrent, Closing::peakAmperes, all),
                pick(ends, ClosingStudy::worstApartForVoltage, Closing::legPerPeak, all));
        return new Simulation.Worst(picked.get(0), picked.get(1), picked.get(2), picked.get(3), without(all, picked));
    }

    /** The study at each end of the bus's inductance; once where no length of bus counts. */
    private List<ClosingStudy> ends(SwitchedStage closing) {
        boolean bus = closing.path().busMetres() > 0.0
                || on.stream().anyMatch(s -> s.path().busMetres() > 0.0);
        List<Double> ends = bus ? List.of(Path.LEAST_PER_METRE, Path.MOST_PER_METRE) : List.of(Path.LEAST_PER_METRE);
        return ends.stream()
                .map(perMetre -> new ClosingStudy(source, closing, on, perMetre, request.trapped()))
                .toList();
    }

    private static Closing pick(
            List<ClosingStudy> ends,
            Function<ClosingStudy, Closing> find,
            ToDoubleFunction<Closing> measure,
            List<Closing> all) {
        List<Closing> found = ends.stream().map(find).toList();
        all.addAll(found);
        return worse(found, measure);
    }

    private static Closing worse(List<Closing> found, ToDoubleFunction<Closing> measure) {
        // Equal to rounding, the first counts: the same answer in every home of the code.
        return found.stream()
                .reduce((a, b) -> measure.applyAsDouble(b) > measure.applyAsDouble(a) * (1.0 + 1e-9) ? b : a)
                .orElseThrow();
    }

    private static List<Closing> without(List<Closing> all, List<Closing> picked) {
        return all.stream().filter(c -> !picked.contains(c)).toList();
    }

    /** Why nothing can be simulated; empty where it can. */
    static Optional<String> obstacle(
            org.varwright.switching.Source source, SwitchedStage stage, List<SwitchedStage> on) {
        if (source.behind().isEmpty()) {
            return Optional.of("not simulated: the short-circuit level is not given");
        }
        List<SwitchedStage> bare = new ArrayList<>(on);
        bare.add(stage);
        bare.removeIf(s -> s.path().henries(Path.LEAST_PER_METRE) > 0.0);
        if (bare.size() > 1) {
            return Optional.of("not simulated: no inductance is known between "
                    + org.varwright.page.Enumeration.of(
                            bare.stream().map(SwitchedStage::name).toList()));
        }
        return Optional.empty();
    }

    private Optional<ClosedForm> formula(SwitchedStage closing, double perMetre) {
        double farads = closing.star().largest();
        double henries = closing.path().henries(perMetre);
        List<Term> terms = new ArrayList<>(closing.path().terms(closing.name(), perMetre));
        if (on.isEmpty()) {
            if (source.behind().isEmpty()) {
                return Optional.empty();
            }
            org.varwright.switching.Source.Behind behind = source.behind().get();
            terms.add(new Term("L_s", "source, from its short-circuit level", behind.henries(), "H"));
            terms.add(new Term("I_sc", "short-circuit current at this voltage", behind.amperes(), "A"));
            return Optional.of(ClosedForm.isolated(
                    source.lineVolts(),
                    farads,
                    behind.henries() + henries,
                    behind.ohms() + closing.path().ohms(),
                    terms));
        }
        double onFarads = 0.0;
        double siemensLike = 0.0;
        double ohms = 0.0;
        for (SwitchedStage other : on) {
            onFarads += other.star().largest();
            siemensLike += 1.0 / other.path().henries(perMetre);
            terms.addAll(other.path().terms(other.name(), perMetre));
            terms.add(new Term(
                    "C_" + other.name(),
                    "one phase of " + other.name(),
                    other.star().largest(),
                    "F"));
        }
        for (SwitchedStage other : on) {
            double share = 1.0 / other.path().henries(perMetre) / siemensLike;
            ohms += Double.isFinite(siemensLike) ? share * share * other.path().ohms() : 0.0;
        }
        terms.add(new Term("C_" + closing.name(), "one phase of " + closing.name(), farads, "F"));
        double loop = henries + 1.0 / siemensLike;
        if (!(loop > 0.0)) {
            return Optional.empty();
        }
        return Optional.of(ClosedForm.backToBack(
                source.lineVolts(),
                farads * onFarads / (farads + onFarads),
                loop,
                closing.path().ohms() + ohms,
                terms));
    }

    /**
     * Inductance that brings the closing inside a switch's rating; empty where it is inside, or the rating or the simulation is missing (SWI-7).
     *
     * <p>By formula first; then in time, made larger until poles closing together stay inside.
     */
    Optional<Remedy> remedy(InrushCase found, SwitchType type) {
        if (found.main().isEmpty()
                || found.formula().isEmpty()
                || type.inrushPeakAmperes().isEmpty()
                || type.inrushHertz().isEmpty()) {
            return Optional.empty();
        }
        double peak = type.inrushPeakAmperes().getAsDouble();
        double product = peak * type.inrushHertz().getAsDouble();
        Closing now = found.main().orElseThrow();
        if (now.peakAmperes() <= peak && now.product() <= product) {
            return Optional.empty();
        }
        ClosedForm formula = found.formula().orElseThrow();
        double byFormula = Math.max(formula.henriesForPeak(peak), formula.henriesForProduct(product));
        double wanted = Math.max(byFormula, formula.henries());
        for (int step = 0; step < MOST_STEPS; step++) {
            double added = wanted - formula.henries();
            SwitchedStage eased = stage.with(stage.path().plus(added));
            List<Closing> closings = ends(eased).stream()
                    .map(study -> request.degrees().isPresent()
                            ? study.at(request.degrees().get(), false)
                            : study.worstTogetherForCurrent())
                    .toList();
            Closing closing = worse(closings, Closing::peakAmperes);
            double over = Math.max(
                    Math.pow(closing.peakAmperes() / (peak * MARGIN), 2.0),
                    worse(closings, Closing::product).product() / (product * MARGIN));
            if (over <= 1.0) {
                return Optional.of(new Remedy(
                        stage.name(),
                        found.title(),
                        added,
                        eased.path().henries(Path.LEAST_PER_METRE),
                        closing.peakAmperes(),
                        closing.hertz(),
                        new Basis(
                                "SWI-7",
                                "L ≥ C_eq·(√(2/3)·V/Î)² and L ≥ √(2/3)·V/(2π·Î·f); made larger until the time domain"
                                        + " is inside",
                                List.of(
                                        new Term("Î", "rated inrush peak of the switch", peak, "A"),
                                        new Term("Î·f", "rated peak times rated frequency", product, "A·Hz"),
                                        new Term("L_now", "in the loop now", formula.henries(), "H"),
                                        new Term("L_formula", "in the loop, by formula", byFormula, "H"),
                                        new Term("L_time", "in the loop, confirmed in time", wanted, "H")),
                                Source.FIRST_PRINCIPLES)));
            }
            wanted *= over;
        }
        return Optional.empty();
    }
}
