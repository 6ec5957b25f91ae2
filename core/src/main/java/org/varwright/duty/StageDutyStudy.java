package org.varwright.duty;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Harmonic;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.limit.ContinuousLimits;
import org.varwright.limit.Stress;
import org.varwright.resonance.CombinationResult;
import org.varwright.resonance.FundamentalDuty;
import org.varwright.resonance.HarmonicDuty;
import org.varwright.resonance.Resonance;
import org.varwright.resonance.ResonanceQuestion;
import org.varwright.resonance.StageModel;

/** Every stage at every voltage, without and with harmonics, against the continuous limits. */
final class StageDutyStudy {
    private static final String NONE = "none";

    private final Bank bank;
    private final DutyQuestion question;
    private final List<StageModel> models;
    private final List<FundamentalDuty> fundamentals;
    private final ContinuousLimits limits;
    private final List<VoltageCase> cases;
    /** [case] its combinations with the harmonics given; empty where none are, or where the short-circuit level is not known. */
    private final List<List<CombinationResult>> combinations;

    StageDutyStudy(Bank bank, DutyQuestion question, List<StageModel> models, List<FundamentalDuty> fundamentals) {
        this.bank = bank;
        this.question = question;
        this.models = models;
        this.fundamentals = fundamentals;
        limits = ContinuousLimits.of(bank.standard());
        cases = VoltageCase.of(bank, question.busVolts());
        combinations = cases.stream().map(this::combinations).toList();
    }

    private List<CombinationResult> combinations(VoltageCase at) {
        List<Harmonic> spectrum = question.harmonics().orElse(bank.system().harmonics());
        return spectrum.isEmpty()
                ? List.of()
                : Resonance.of(
                                bank,
                                new ResonanceQuestion(
                                        OptionalDouble.of(at.volts()), Optional.of(spectrum), Optional.empty()))
                        .combinations();
    }

    List<StageDuty> all() {
        List<StageDuty> all = new ArrayList<>();
        for (int c = 0; c < cases.size(); c++) {
            VoltageCase at = cases.get(c);
            for (int s = 0; s < models.size(); s++) {
                FundamentalDuty base = fundamentals.get(s);
                StageModel model = models.get(s);
                double factor = factor(at);
                all.add(duty(base, at, NONE, base.at(factor, List.of())));
                if (!question.measured().isEmpty()) {
                    all.add(duty(base, at, "as measured at the bus", base.at(factor, measuredRatios(model, at))));
                }
                worst(combinations.get(c), model).ifPresent(w -> all.add(duty(base, at, w.where(), w.stress())));
            }
        }
        return all;
    }

    /** Highest rms line current of a stage over every voltage, with the harmonics that are known, whichever stages are on beside it [A]. */
    double highestLine(int s) {
        FundamentalDuty base = fundamentals.get(s);
        StageModel model = models.get(s);
        double line = 0.0;
        for (int c = 0; c < cases.size(); c++) {
            VoltageCase at = cases.get(c);
            double squares = 1.0;
            for (Stress.Component h : measuredRatios(model, at)) {
                squares += h.order() * h.perRated() * h.order() * h.perRated();
            }
            line = Math.max(line, base.lineAmperes() * factor(at) * Math.sqrt(squares));
            for (CombinationResult combination : combinations.get(c)) {
                for (HarmonicDuty.StageStress stage :
                        combination.duty().map(HarmonicDuty::stages).orElse(List.of())) {
                    if (stands(stage, model)) {
                        line = Math.max(line, stage.lineAmperes());
                    }
                }
            }
        }
        return line;
    }

    private double factor(VoltageCase at) {
        return at.volts() / bank.system().nominalVolts();
    }

    /** Whether what a stage bears is borne by this one too: it is this one, or built alike. */
    private boolean stands(HarmonicDuty.StageStress stage, StageModel model) {
        return models.stream().anyMatch(m -> m.stage().name().equals(stage.stage()) && m.isAlike(model));
    }

    /** Voltage of each measured harmonic across the capacitors over that of the fundamental. */
    private List<Stress.Component> measuredRatios(StageModel model, VoltageCase at) {
        double omega1 = bank.system().angularFrequency();
        double first = at.volts() * model.capacitorShare(omega1);
        List<Stress.Component> ratios = new ArrayList<>();
        for (Harmonic h : question.measured()) {
            double volts = h.voltageFraction().orElse(0.0)
                    * bank.system().nominalVolts()
                    * model.capacitorShare(h.order() * omega1);
            ratios.add(new Stress.Component(h.order(), volts / first));
        }
        return ratios;
    }

    private record Worst(String where, Stress stress, double use) {}

    /** The combination that is worst for a stage, or for one that is built alike and stands for it. */
    private Optional<Worst> worst(List<CombinationResult> all, StageModel model) {
        Worst worst = null;
        for (CombinationResult c : all) {
            if (c.duty().isEmpty()) {
                continue;
            }
            HarmonicDuty duty = c.duty().get();
            for (HarmonicDuty.StageStress stage : duty.stages()) {
                double use = use(stage.stress());
                if (stands(stage, model) && (worst == null || use > worst.use() * (1.0 + 1e-9))) {
                    worst = new Worst(
                            "worst with " + c.combination().name() + " on, " + duty.load(), stage.stress(), use);
                }
            }
        }
        return Optional.ofNullable(worst);
    }

    private double use(Stress stress) {
        return limits.judge(stress).stream()
                .mapToDouble(ContinuousLimits.Judged::use)
                .max()
                .orElseThrow();
    }

    private StageDuty duty(FundamentalDuty base, VoltageCase at, String harmonics, Stress stress) {
        double ratedAmperes = FundamentalDuty.legRatedAmperes(base.stage().unit());
        List<Check> checks = new ArrayList<>();
        for (ContinuousLimits.Judged judged : limits.judge(stress)) {
            checks.add(new Check(
                    base.stage().name() + " at " + at.print() + ", harmonics " + harmonics + ": " + judged.quantity()
                            + " over rated",
                    judged.value(),
                    judged.limit().value(),
                    "",
                    judged.verdict(),
                    basis(base, at, ratedAmperes, judged.limit().source())));
        }
        return new StageDuty(base.stage().name(), at, harmonics, stress, stress.current() * ratedAmperes, checks);
    }

    private static Basis basis(FundamentalDuty base, VoltageCase at, double ratedAmperes, Source source) {
        return new Basis(
                "DUT-1",
                "V = √ΣV_h², crest ΣV_h, I = √Σ(h·c·V_h)², Q = Σh·c·V_h², each over rated",
                List.of(
                        new Term("V_bus", "line to line", at.volts(), "V"),
                        new Term(
                                "V_1",
                                "highest unit voltage over rated at nominal, from the network",
                                base.voltage(),
                                ""),
                        new Term(
                                "c·V_1",
                                base.isMeasured()
                                        ? "highest unit current over rated at nominal, capacitances measured"
                                        : "highest unit current over rated at nominal, unmeasured units at their upper tolerance",
                                base.current(),
                                ""),
                        new Term(
                                "V_rated",
                                "of a unit's leg",
                                base.stage().unit().legVolts(),
                                "V"),
                        new Term("I_rated", "of a unit's leg", ratedAmperes, "A")),
                source);
    }
}
