package org.varwright.switching;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;
import org.varwright.bank.FuseType;
import org.varwright.bank.Stage;
import org.varwright.bank.SwitchType;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;
import org.varwright.page.Enumeration;

/** Closings and outrush held against ratings. Poles closing together decide; what only poles apart would break is a warning. */
final class InrushChecks {
    /** Outrush product of a general-purpose breaker [A·Hz]. */
    static final double GENERAL_PURPOSE = 2.0e7;

    private static final Source GENERAL_PURPOSE_SOURCE =
            Source.published("ANSI C37.06-2000: outrush of general-purpose breakers, 2e7 A·Hz");
    private static final double MOST_LEG_PER_PEAK = 2.0;
    private static final double MOST_PER_RATED_CURRENT = 100.0;
    private static final String IEC_TRANSIENT = "IEC 60871-1, switching transients";

    private final Bank bank;
    private final org.varwright.switching.Source source;
    private final List<SwitchedStage> stages;
    private final List<InrushCase> cases;
    private final List<Gap> gaps = new ArrayList<>();

    InrushChecks(Bank bank, org.varwright.switching.Source source, List<SwitchedStage> stages, List<InrushCase> cases) {
        this.bank = bank;
        this.source = source;
        this.stages = stages;
        this.cases = cases;
    }

    /** What couldn't be judged; filled by {@link #of()}. */
    List<Gap> gaps() {
        return gaps;
    }

    List<Check> of() {
        List<Check> checks = new ArrayList<>();
        for (SwitchedStage stage : stages) {
            List<InrushCase> own = cases.stream()
                    .filter(c -> c.stage().equals(stage.name()) && c.peakAmperes() > 0.0)
                    .toList();
            if (own.isEmpty()) {
                rating(stage.stage());
            } else {
                InrushCase worst = own.stream()
                        .reduce((a, b) -> b.peakAmperes() > a.peakAmperes() * (1.0 + 1e-9) ? b : a)
                        .orElseThrow();
                checks.addAll(switchRatings(stage.stage(), worst));
                checks.addAll(units(stage, own));
            }
            checks.addAll(strains(stage.stage()));
        }
        return checks;
    }

    private List<Check> switchRatings(Stage stage, InrushCase worst) {
        Optional<SwitchType> type = rating(stage);
        if (type.isEmpty()) {
            return List.of();
        }
        String name = bank.switchOf(stage).map(Device::name).orElse("");
        double peakLimit = type.get().inrushPeakAmperes().getAsDouble();
        double hertzLimit = type.get().inrushHertz().getAsDouble();
        String head = worst.title() + ", " + name + ": ";
        List<Check> checks = new ArrayList<>();
        double peak = worst.main().map(Closing::peakAmperes).orElseGet(worst::peakAmperes);
        double apart = worst.peakAmperes();
        // The largest peak, the highest frequency and the largest product need not be those of one closing.
        double hertz = largest(worst.likeMain(), Closing::hertz)
                .orElseGet(() -> worst.formula().orElseThrow().hertz());
        double product = largest(worst.likeMain(), Closing::product).orElse(peak * hertz);
        double apartProduct = largest(worst.closings(), Closing::product).orElse(product);
        checks.add(check(
                head + "inrush peak", peak, apart, peakLimit, "A", "SWI-8", "Î ≤ rated inrush peak", worst, type));
        checks.add(check(
                head + "peak times frequency",
                product,
                Math.max(product, apartProduct),
                peakLimit * hertzLimit,
                "A·Hz",
                "SWI-8",
                "Î·f ≤ rated peak times rated frequency",
                worst,
                type));
        boolean above = hertz > hertzLimit;
        checks.add(new Check(
                head + "inrush frequency" + (above ? ", above its rating: only peak times frequency covers it" : ""),
                hertz,
                hertzLimit,
                "Hz",
                above ? Verdict.WARN : Verdict.PASS,
                basis("SWI-8", "f ≤ rated inrush frequency", worst, type)));
        return checks;
    }

    private static OptionalDouble largest(List<Closing> closings, ToDoubleFunction<Closing> measure) {
        return closings.stream().mapToDouble(measure).max();
    }

    /** What the switch of a stage is rated for; where the file doesn't say, that is a gap. */
    private Optional<SwitchType> rating(Stage stage) {
        Optional<Device> device = bank.switchOf(stage);
        Optional<SwitchType> type = device.flatMap(Device::type)
                .filter(t ->
                        t.inrushPeakAmperes().isPresent() && t.inrushHertz().isPresent());
        if (type.isEmpty()) {
            gaps.add(Gap.of(
                    device.map(Device::name).orElse("switch of " + stage.name()),
                    "inrush rating (switch-types: {inrush-peak: …, inrush-frequency: …})",
                    "whether the switch stands the inrush is not answered"));
        }
        return type;
    }

    private static Check check(
            String subject,
            double together,
            double apart,
            double limit,
            String unit,
            String id,
            String formula,
            InrushCase worst,
            Optional<SwitchType> type) {
        boolean onlyApart = together <= limit && apart > limit;
        return new Check(
                subject + (onlyApart ? ", poles closing apart" : ""),
                onlyApart ? apart : together,
                limit,
                unit,
                together > limit ? Verdict.FAIL : onlyApart ? Verdict.WARN : Verdict.PASS,
                basis(id, formula, worst, type));
    }

    private static Basis basis(String id, String formula, InrushCase worst, Optional<SwitchType> type) {
        List<Term> terms = new ArrayList<>();
        worst.main().ifPresent(c -> {
            terms.add(new Term("Î", "in time, poles together", c.peakAmperes(), "A"));
            terms.add(new Term("f", "strongest oscillation in it", c.hertz(), "Hz"));
            largest(worst.likeMain(), Closing::product)
                    .ifPresent(p -> terms.add(new Term("Î·f", "largest with the poles so", p, "A·Hz")));
            terms.add(new Term("θ", "closing angle of pole A", c.degrees().getFirst(), "°"));
        });
        worst.largest()
                .ifPresent(c -> terms.add(new Term("Î_apart", "in time, the worst found", c.peakAmperes(), "A")));
        worst.formula().ifPresent(f -> {
            terms.add(new Term("Î_" + f.basis().id(), "by formula", f.peakAmperes(), "A"));
            terms.add(new Term("f_" + f.basis().id(), "by formula", f.hertz(), "Hz"));
        });
        type.ifPresent(t -> {
            terms.add(new Term(
                    "Î_rated",
                    "rated inrush peak of " + t.name(),
                    t.inrushPeakAmperes().orElse(0.0),
                    "A"));
            terms.add(new Term(
                    "f_rated",
                    "rated inrush frequency of " + t.name(),
                    t.inrushHertz().orElse(0.0),
                    "Hz"));
        });
        return new Basis(id, formula, terms, Source.published("the switch's nameplate, by the bank file"));
    }

    /** What the capacitors bear when their stage closes. */
    private List<Check> units(SwitchedStage stage, List<InrushCase> own) {
        List<Check> checks = new ArrayList<>();
        double volts = 0.0;
        double angle = 0.0;
        String where = "";
        double amperes = 0.0;
        for (InrushCase c : own) {
            for (Closing closing : c.closings()) {
                if (closing.legPerPeak() > volts * (1.0 + 1e-9)) {
                    volts = closing.legPerPeak();
                    angle = closing.degrees().getFirst();
                    where = c.title();
                }
            }
            amperes = Math.max(amperes, c.peakAmperes());
        }
        if (volts > 0.0) {
            checks.add(new Check(
                    where + ": highest voltage across a leg over its peak in service",
                    volts,
                    MOST_LEG_PER_PEAK,
                    "",
                    volts <= MOST_LEG_PER_PEAK ? Verdict.PASS : Verdict.WARN,
                    new Basis(
                            "SWI-9",
                            "v/(√2·V_leg) ≤ 2",
                            List.of(
                                    new Term("v/(√2·V_leg)", "in time, the worst angles found", volts, ""),
                                    new Term("θ", "closing angle of pole A", angle, "°")),
                            Source.unchecked(IEC_TRANSIENT))));
        }
        double rated = stage.stage().ratedVars() / (Math.sqrt(3.0) * ratedLineVolts(stage.stage()));
        checks.add(new Check(
                stage.name() + ": inrush peak over rated line current",
                amperes / rated,
                MOST_PER_RATED_CURRENT,
                "",
                amperes / rated <= MOST_PER_RATED_CURRENT ? Verdict.PASS : Verdict.WARN,
                new Basis(
                        "SWI-9",
                        "Î/I_rated ≤ 100",
                        List.of(
                                new Term("Î", "largest peak found", amperes, "A"),
                                new Term("I_rated", "rated line current, rms", rated, "A")),
                        Source.unchecked(IEC_TRANSIENT))));
        return checks;
    }

    /** Line voltage at which the stage gives its rated power: that of its units, by groups and connection. */
    private static double ratedLineVolts(Stage stage) {
        if (stage.hasThreePhaseUnits()) {
            return stage.unit().ratedVolts();
        }
        int series = stage.layout().groups() * (stage.connection().isBridge() ? 2 : 1);
        double leg = stage.unit().ratedVolts() * series;
        return switch (stage.connection()) {
            case DELTA -> leg;
            case WYE_GROUNDED,
                    WYE_UNGROUNDED,
                    DOUBLE_WYE_GROUNDED,
                    DOUBLE_WYE_UNGROUNDED,
                    BRIDGE_GROUNDED,
                    BRIDGE_UNGROUNDED -> leg * Math.sqrt(3.0);
        };
    }

    /** What reactor and fuses of a stage bear at worst, whichever stage closes. */
    private List<Check> strains(Stage stage) {
        List<Check> checks = new ArrayList<>();
        double peak = 0.0;
        double line = 0.0;
        double unit = 0.0;
        String when = "";
        for (InrushCase c : cases) {
            for (Closing closing : c.closings()) {
                Closing.StageStrain strain = closing.stages().get(stage.name());
                if (strain == null) {
                    continue;
                }
                if (strain.peakAmperes() > peak * (1.0 + 1e-9)) {
                    peak = strain.peakAmperes();
                    when = c.title();
                }
                line = Math.max(line, strain.ampereSquaredSeconds());
                unit = Math.max(unit, strain.unitAmpereSquaredSeconds());
            }
        }
        if (!(peak > 0.0)) {
            return checks;
        }
        String closing = when;
        double most = peak;
        stage.reactor().ifPresent(reactor -> {
            if (reactor.peakAmperes().isEmpty()) {
                gaps.add(Gap.of(
                        stage.name(),
                        "peak current of the reactor (reactor: {peak-current: …})",
                        "whether the reactor stands the inrush is not answered"));
                return;
            }
            double limit = reactor.peakAmperes().getAsDouble();
            checks.add(new Check(
                    stage.name() + ": peak current in its reactor, " + closing,
                    most,
                    limit,
                    "A",
                    most <= limit ? Verdict.PASS : Verdict.FAIL,
                    new Basis(
                            "SWI-8",
                            "Î ≤ peak current of the reactor",
                            List.of(new Term("Î", "largest in time, closing or feeding another", most, "A")),
                            Source.published("the reactor's nameplate, by the bank file"))));
        });
        double lineSquares = line;
        double unitSquares = unit;
        stage.lineFuse().ifPresent(fuse -> checks.addAll(fuse(stage, "line fuse", fuse, lineSquares)));
        stage.fuse().ifPresent(fuse -> checks.addAll(fuse(stage, "unit fuse", fuse, unitSquares)));
        return checks;
    }

    private List<Check> fuse(Stage stage, String what, FuseType fuse, double squares) {
        OptionalDouble melting = fuse.meltingAmpereSquaredSeconds();
        if (melting.isEmpty()) {
            gaps.add(Gap.of(
                    what + " " + fuse.name(),
                    "melting I²t (fuse-types: {melting-i2t: …})",
                    "whether the fuse stands the inrush is not answered"));
            return List.of();
        }
        double limit = melting.getAsDouble();
        return List.of(new Check(
                stage.name() + ": I²t of the inrush in a " + what + ", one cycle",
                squares,
                limit,
                "A²s",
                squares < limit ? Verdict.PASS : Verdict.FAIL,
                new Basis(
                        "SWI-6",
                        "∫i²dt over one cycle < melting I²t; a unit's fuse carries the share of its unit",
                        List.of(
                                new Term("∫i²dt", "largest in time", squares, "A²s"),
                                new Term("I²t", "melting, " + fuse.name(), limit, "A²s")),
                        Source.published("the fuse's data, by the bank file"))));
    }

    /** Outrush into a fault at the bus against every rating there is; where there is none, against a general-purpose breaker's, as a hint. */
    List<Check> of(Outrush outrush) {
        List<Check> checks = new ArrayList<>();
        if (!outrush.without().isEmpty()) {
            gaps.add(
                    new Gap(
                            outrush.without(),
                            "any inductance (reactor, stray-inductance or bus-length)",
                            "what it sends into a fault at the bus is not answered, and is missing in the outrush of the bank"));
        }
        if (outrush.stages().isEmpty()) {
            return checks;
        }
        List<Term> terms = new ArrayList<>();
        terms.add(new Term("V", "line to line", source.lineVolts(), "V"));
        outrush.stages()
                .forEach(s -> terms.add(
                        new Term("L_" + s.stage(), "one phase", s.formula().henries(), "H")));
        boolean rated = false;
        for (Device device : bank.isolation().map(i -> i.devices()).orElse(List.of())) {
            OptionalDouble limit =
                    device.type().map(SwitchType::outrushAmpereHertz).orElse(OptionalDouble.empty());
            if (device.kind() == Device.Kind.BREAKER && limit.isPresent()) {
                rated = true;
                checks.add(outrush(
                        device.name() + ": outrush of the bank into a fault at the bus, peak times frequency",
                        outrush.product(),
                        limit.getAsDouble(),
                        Verdict.FAIL,
                        terms,
                        outrush.without(),
                        Source.published("the breaker's nameplate, by the bank file")));
            }
        }
        for (Stage stage : bank.stages()) {
            Optional<Device> device = bank.switchOf(stage);
            OptionalDouble limit = device.flatMap(Device::type)
                    .map(SwitchType::outrushAmpereHertz)
                    .orElse(OptionalDouble.empty());
            if (limit.isPresent() && device.get().kind() != Device.Kind.BREAKER) {
                double others = outrush.stages().stream()
                        .filter(s -> !s.stage().equals(stage.name()))
                        .mapToDouble(s -> s.formula().product())
                        .sum();
                rated = true;
                checks.add(outrush(
                        device.get().name() + ": outrush of the others into a fault behind it, peak times"
                                + " frequency",
                        others,
                        limit.getAsDouble(),
                        Verdict.FAIL,
                        terms,
                        outrush.without().stream()
                                .filter(s -> !s.equals(stage.name()))
                                .toList(),
                        Source.published("the switch's nameplate, by the bank file")));
            }
        }
        if (!rated) {
            gaps.add(Gap.of(
                    "breaker that feeds the bank, and switches",
                    "outrush rating (switch-types: {outrush-product: …})",
                    "only a hint is given: what a general-purpose breaker would stand"));
            checks.add(outrush(
                    "hint, no rating in the file: outrush of the bank into a fault at the bus, against a"
                            + " general-purpose breaker",
                    outrush.product(),
                    GENERAL_PURPOSE,
                    Verdict.WARN,
                    terms,
                    outrush.without(),
                    GENERAL_PURPOSE_SOURCE));
        }
        return checks;
    }

    /** A hint passes nothing, and neither does a sum in which a stage is missing: it can only grow. */
    private static Check outrush(
            String subject,
            double value,
            double limit,
            Verdict broken,
            List<Term> terms,
            List<String> missing,
            Source from) {
        boolean whole = missing.isEmpty();
        return new Check(
                subject + (whole ? "" : ", not counting what is not known of " + Enumeration.of(missing)),
                value,
                limit,
                "A·Hz",
                value > limit ? broken : whole && broken == Verdict.FAIL ? Verdict.PASS : Verdict.WARN,
                new Basis("SWI-5", "Σ Î·f = √(2/3)·V/(2π)·Σ 1/L", terms, from));
    }

    /** What the capacitors bear when their stage opens. */
    static List<Check> opened(Stage stage, Opened opened) {
        double highest = opened.legs().stream()
                .mapToDouble(Opened.Leg::highestPerPeak)
                .max()
                .orElse(0.0);
        return List.of(new Check(
                stage.name() + ": highest voltage across a leg over its peak in service, opening",
                highest,
                MOST_LEG_PER_PEAK,
                "",
                highest <= MOST_LEG_PER_PEAK ? Verdict.PASS : Verdict.WARN,
                new Basis(
                        "SWI-9",
                        "v/(√2·V_leg) ≤ 2",
                        List.of(new Term("v/(√2·V_leg)", "in time", highest, "")),
                        Source.unchecked(IEC_TRANSIENT))));
    }
}
