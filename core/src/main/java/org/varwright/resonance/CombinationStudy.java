package org.varwright.resonance;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.varwright.bank.Bank;
import org.varwright.bank.Harmonic;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;
import org.varwright.limit.ContinuousLimits;
import org.varwright.limit.DistortionLimits;
import org.varwright.limit.Stress;
import org.varwright.page.Enumeration;
import org.varwright.quantity.Dimension;

/** Looks at combinations of stages one by one, with everything they share worked out once. */
public final class CombinationStudy {
    /** A harmonic that the bank makes this many times higher is worth avoiding. Common practice, no source. */
    public static final double HIGH_AMPLIFICATION = 3.0;

    private static final List<Integer> CHARACTERISTIC = List.of(5, 7, 11, 13);

    private final Bank bank;
    private final double busVolts;
    private final List<Harmonic> spectrum;
    private final SourceImpedance source;
    private final List<LoadCase> loads;
    private final double omega1;
    private final ContinuousLimits limits;
    private final DistortionLimits distortion;
    private final Map<String, FundamentalDuty> fundamental = new LinkedHashMap<>();

    /**
     * A study of a bank.
     *
     * @param bank the bank
     * @param source at its bus
     * @param busVolts fundamental, line to line [V], above 0
     * @param spectrum harmonics given; empty where none are known
     */
    public CombinationStudy(Bank bank, SourceImpedance source, double busVolts, List<Harmonic> spectrum) {
        this.bank = bank;
        this.source = source;
        this.busVolts = busVolts;
        this.spectrum = List.copyOf(spectrum);
        loads = LoadCase.of(bank);
        omega1 = bank.system().angularFrequency();
        limits = ContinuousLimits.of(bank.standard());
        distortion = DistortionLimits.of(bank.system().nominalVolts());
    }

    /** What is seen from the bus with some stages on. */
    public BusModel bus(List<StageModel> stages, LoadCase load, SourceImpedance.ResistanceLaw law) {
        return new BusModel(source, load, stages, omega1, law);
    }

    /** One combination. */
    public CombinationResult examine(Combination combination) {
        List<StageModel> stages = combination.stages();
        BusModel plain = bus(stages, loads.getFirst(), SourceImpedance.ResistanceLaw.CONSTANT);
        double nominal = bank.system().nominalVolts();
        double vars = stages.stream().mapToDouble(s -> s.vars(nominal, omega1)).sum();
        double bare = stages.stream()
                .mapToDouble(s -> nominal * nominal * omega1 * s.farads())
                .sum();
        double shortCircuit = nominal * nominal / Math.hypot(source.resistanceOhms(), source.reactanceOhms());
        List<Peak> peaks =
                plain.parallelOrders().stream().map(h -> peak(stages, plain, h)).toList();
        List<Amplification> amplifications = new ArrayList<>();
        for (int order : orders(stages)) {
            amplifications.add(amplification(stages, order));
        }
        Optional<HarmonicDuty> duty = spectrum.isEmpty() ? Optional.empty() : Optional.of(worst(stages));
        Optional<HarmonicDuty> mildest = spectrum.isEmpty() ? Optional.empty() : Optional.of(mildest(stages));
        List<Check> checks = new ArrayList<>(amplificationChecks(combination, amplifications, vars));
        duty.ifPresent(d -> checks.addAll(dutyChecks(combination, d)));
        return new CombinationResult(
                combination,
                vars,
                Math.sqrt(shortCircuit / bare),
                peaks,
                plain.seriesOrders(BusModel.HIGHEST_ORDER),
                amplifications,
                duty,
                mildest,
                checks,
                reasons(amplifications, duty, mildest));
    }

    /** Why to avoid a combination; a distortion that stands there without the bank is no reason. */
    private List<String> reasons(
            List<Amplification> amplifications, Optional<HarmonicDuty> duty, Optional<HarmonicDuty> mildest) {
        List<String> reasons = new ArrayList<>();
        duty.ifPresent(d -> reasons.addAll(broken(d, mildest.orElse(d))));
        for (Amplification a : amplifications) {
            if (!(a.factor() <= HIGH_AMPLIFICATION)) {
                reasons.add("order " + a.order() + " × " + number(a.factor()) + " (" + a.load() + ")");
            }
        }
        duty.flatMap(this::distorted).ifPresent(reasons::add);
        return reasons;
    }

    /** One sentence a limit that is broken, with the stages that break it. */
    private List<String> broken(HarmonicDuty duty, HarmonicDuty mildest) {
        Map<String, List<String>> stages = new LinkedHashMap<>();
        Map<String, ContinuousLimits.Judged> worst = new LinkedHashMap<>();
        for (HarmonicDuty.StageStress stage : duty.stages()) {
            for (ContinuousLimits.Judged judged : limits.judge(stage.stress())) {
                if (judged.verdict() == Verdict.FAIL) {
                    stages.computeIfAbsent(judged.quantity(), q -> new ArrayList<>())
                            .add(stage.stage());
                    worst.merge(judged.quantity(), judged, (a, b) -> b.value() > a.value() ? b : a);
                }
            }
        }
        List<String> sentences = new ArrayList<>();
        worst.forEach((quantity, judged) -> sentences.add(quantity + " up to " + number(judged.value())
                + " of rated (" + number(highest(mildest, quantity)) + " most damped), limit "
                + number(judged.limit().value()) + ", in "
                + Enumeration.of(stages.getOrDefault(quantity, List.of()))));
        return sentences;
    }

    private double highest(HarmonicDuty duty, String quantity) {
        double highest = 0.0;
        for (HarmonicDuty.StageStress stage : duty.stages()) {
            for (ContinuousLimits.Judged judged : limits.judge(stage.stress())) {
                highest = judged.quantity().equals(quantity) ? Math.max(highest, judged.value()) : highest;
            }
        }
        return highest;
    }

    /** The total distortion where the bank lifts it over what is recommended, else the first single harmonic that it lifts over. */
    private Optional<String> distorted(HarmonicDuty duty) {
        if (isLifted(duty.distortion(), duty.distortionWithout(), distortion.total())) {
            return Optional.of(lifted(
                    "distortion of the bus voltage", duty.distortion(), duty.distortionWithout(), distortion.total()));
        }
        double phaseVolts = busVolts / Math.sqrt(3.0);
        return duty.flow().orders().stream()
                .filter(o -> isLifted(o.busVolts() / phaseVolts, o.busVoltsWithout() / phaseVolts, distortion.single()))
                .findFirst()
                .map(o -> lifted(
                        "order " + o.order() + " in the bus voltage",
                        o.busVolts() / phaseVolts,
                        o.busVoltsWithout() / phaseVolts,
                        distortion.single()));
    }

    private static boolean isLifted(double with, double without, double limit) {
        return with > limit * (1.0 + 1e-9) && with > without * (1.0 + 1e-9);
    }

    private static String lifted(String what, double with, double without, double limit) {
        return what + " " + Dimension.FRACTION.format(with, 3) + ", " + Dimension.FRACTION.format(without, 3)
                + " without the bank, at most " + Dimension.FRACTION.format(limit, 3) + " recommended";
    }

    private static String number(double value) {
        return Double.isFinite(value) ? Dimension.digits(value, 3) : "without bound";
    }

    /** Orders looked at: the characteristic ones, 3 where a wye is grounded, and those of the spectrum. */
    private Set<Integer> orders(List<StageModel> stages) {
        Set<Integer> orders = new TreeSet<>(CHARACTERISTIC);
        if (stages.stream().anyMatch(s -> s.stage().connection().isGrounded())) {
            orders.add(3);
        }
        spectrum.forEach(h -> orders.add(h.order()));
        return orders;
    }

    /** Harmonics of order 3 that nobody measured flow to ground only: then only grounded stages take part. */
    private List<StageModel> takingPart(List<StageModel> stages, int order) {
        boolean typed = spectrum.stream().anyMatch(h -> h.order() == order);
        return order % 3 == 0 && !typed
                ? stages.stream()
                        .filter(s -> s.stage().connection().isGrounded())
                        .toList()
                : stages;
    }

    private Amplification amplification(List<StageModel> stages, int order) {
        Amplification worst = new Amplification(order, -1.0, "");
        for (LoadCase load : loads) {
            double factor = bus(takingPart(stages, order), load, SourceImpedance.ResistanceLaw.CONSTANT)
                    .amplification(order);
            // Equal to rounding, the first counts: the same answer in every home of the code.
            if (factor > worst.factor() * (1.0 + 1e-9)) {
                worst = new Amplification(order, factor, load.name());
            }
        }
        return worst;
    }

    private Peak peak(List<StageModel> stages, BusModel plain, double order) {
        double damped = Double.POSITIVE_INFINITY;
        for (LoadCase load : loads) {
            BusModel bus = bus(stages, load, SourceImpedance.ResistanceLaw.RISING);
            // The load shifts the peak: the nearest one of this bus counts.
            double best = bus.amplification(order);
            double distance = Double.POSITIVE_INFINITY;
            for (double h : bus.parallelOrders()) {
                if (Math.abs(h - order) < distance) {
                    distance = Math.abs(h - order);
                    best = bus.amplification(h);
                }
            }
            damped = Math.min(damped, best);
        }
        return new Peak(order, plain.ohms(order), plain.amplification(order), damped);
    }

    private HarmonicDuty worst(List<StageModel> stages) {
        HarmonicDuty worst = duty(stages, loads.getFirst(), SourceImpedance.ResistanceLaw.CONSTANT);
        for (LoadCase load : loads.subList(1, loads.size())) {
            HarmonicDuty other = duty(stages, load, SourceImpedance.ResistanceLaw.CONSTANT);
            if (other.use(limits) > worst.use(limits) * (1.0 + 1e-9)) {
                worst = other;
            }
        }
        return worst;
    }

    private HarmonicDuty mildest(List<StageModel> stages) {
        HarmonicDuty mildest = duty(stages, loads.getFirst(), SourceImpedance.ResistanceLaw.RISING);
        for (LoadCase load : loads.subList(1, loads.size())) {
            HarmonicDuty other = duty(stages, load, SourceImpedance.ResistanceLaw.RISING);
            if (other.use(limits) < mildest.use(limits) * (1.0 - 1e-9)) {
                mildest = other;
            }
        }
        return mildest;
    }

    private HarmonicDuty duty(List<StageModel> stages, LoadCase load, SourceImpedance.ResistanceLaw law) {
        BusModel bus = bus(stages, load, law);
        HarmonicFlow flow = HarmonicFlow.of(bus, spectrum, bank.system().phaseVolts());
        double phaseVolts = busVolts / Math.sqrt(3.0);
        List<HarmonicDuty.StageStress> stresses = new ArrayList<>();
        for (int s = 0; s < stages.size(); s++) {
            StageModel stage = stages.get(s);
            double first = phaseVolts * stage.capacitorShare(omega1);
            List<Stress.Component> ratios = new ArrayList<>();
            double squares = 0.0;
            for (HarmonicFlow.Order order : flow.orders()) {
                HarmonicFlow.StageFlow part = order.stages().get(s);
                ratios.add(new Stress.Component(order.order(), part.capacitorVolts() / first));
                squares += part.amperes() * part.amperes();
            }
            FundamentalDuty at = fundamental(stage);
            double voltageFactor = busVolts / bank.system().nominalVolts();
            double line = at.lineAmperes() * voltageFactor;
            stresses.add(new HarmonicDuty.StageStress(
                    stage.stage().name(), at.at(voltageFactor, ratios), Math.sqrt(line * line + squares)));
        }
        HarmonicFlow without =
                HarmonicFlow.of(bus.withoutStages(), spectrum, bank.system().phaseVolts());
        return new HarmonicDuty(
                load.name(), flow, stresses, flow.distortion(phaseVolts), without.distortion(phaseVolts));
    }

    /** The stage at the fundamental, worked out once. */
    public FundamentalDuty fundamental(StageModel stage) {
        return fundamental.computeIfAbsent(stage.stage().name(), name -> FundamentalDuty.of(bank, stage.stage()));
    }

    private List<Check> amplificationChecks(Combination combination, List<Amplification> amplifications, double vars) {
        List<Check> checks = new ArrayList<>();
        for (Amplification a : amplifications) {
            checks.add(new Check(
                    combination.name() + ": order " + a.order() + " amplified, " + a.load(),
                    a.factor(),
                    HIGH_AMPLIFICATION,
                    "",
                    a.factor() <= HIGH_AMPLIFICATION ? Verdict.PASS : Verdict.WARN,
                    new Basis(
                            "RES-7",
                            "A = |Z_bus(h) with the bank|/|Z_bus(h) without|",
                            List.of(
                                    new Term("h", "order", a.order(), ""),
                                    new Term("X_s", "source reactance, fundamental", source.reactanceOhms(), "Ω"),
                                    new Term(
                                            "R_s",
                                            source.isDamped()
                                                    ? "source resistance, the same at every order"
                                                    : "source resistance: X/R is not given, no damping counted",
                                            source.resistanceOhms(),
                                            "Ω"),
                                    new Term("Q", "of the combination at nominal voltage", vars, "var")),
                            Source.commonPractice("a harmonic made three times higher is worth avoiding"))));
        }
        return checks;
    }

    private List<Check> dutyChecks(Combination combination, HarmonicDuty duty) {
        List<Check> checks = new ArrayList<>();
        for (HarmonicDuty.StageStress stage : duty.stages()) {
            for (ContinuousLimits.Judged judged : limits.judge(stage.stress())) {
                checks.add(new Check(
                        combination.name() + ": " + stage.stage() + ", " + judged.quantity() + " over rated, "
                                + duty.load(),
                        judged.value(),
                        judged.limit().value(),
                        "",
                        judged.verdict(),
                        dutyBasis(duty, stage.stage(), judged.limit().source())));
            }
        }
        checks.add(distortionCheck(
                combination.name() + ": total distortion of the bus voltage, " + duty.load(),
                duty.distortion(),
                distortion.total()));
        for (HarmonicFlow.Order order : duty.flow().orders()) {
            checks.add(distortionCheck(
                    combination.name() + ": order " + order.order() + " in the bus voltage, " + duty.load(),
                    order.busVolts() / (busVolts / Math.sqrt(3.0)),
                    distortion.single()));
        }
        return checks;
    }

    private Check distortionCheck(String subject, double value, double limit) {
        return new Check(
                subject,
                value,
                limit,
                "",
                value <= limit * (1.0 + 1e-9) ? Verdict.PASS : Verdict.WARN,
                new Basis(
                        "RES-9",
                        "V_h = E_h·|Z_bus/Z_s| + I_h·|Z_bus|, over the fundamental; total: root of the sum of squares",
                        List.of(new Term("V_1", "bus voltage, line to line", busVolts, "V")),
                        distortion.source()));
    }

    private Basis dutyBasis(HarmonicDuty duty, String stage, Source limit) {
        List<Term> terms = new ArrayList<>();
        terms.add(new Term("V_1", "bus voltage, line to line", busVolts, "V"));
        for (HarmonicFlow.Order order : duty.flow().orders()) {
            terms.add(new Term(
                    "V_" + order.order(),
                    "at the bus, phase to neutral; " + Dimension.VOLTAGE.format(order.busVoltsWithout())
                            + " without the bank",
                    order.busVolts(),
                    "V"));
            order.stages().stream()
                    .filter(s -> s.stage().equals(stage))
                    .forEach(s ->
                            terms.add(new Term("I_" + order.order(), "in the line of " + stage, s.amperes(), "A")));
        }
        return new Basis(
                "DUT-1", "V = √ΣV_h², crest ΣV_h, I = √Σ(h·c·V_h)², Q = Σh·c·V_h², each over rated", terms, limit);
    }
}
