package org.varwright.duty;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Harmonic;
import org.varwright.bank.Stage;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Term;
import org.varwright.basis.Unanswered;
import org.varwright.basis.Verdict;
import org.varwright.limit.DistortionLimits;
import org.varwright.page.Enumeration;
import org.varwright.quantity.Dimension;
import org.varwright.resonance.FundamentalDuty;
import org.varwright.resonance.Resonance;
import org.varwright.resonance.ResonanceQuestion;
import org.varwright.resonance.SourceImpedance;
import org.varwright.resonance.StageModel;

/**
 * What service asks of a bank, and what the bank does to its bus.
 *
 * @param bank the bank
 * @param question what was asked
 * @param stages every stage at every voltage, without and with harmonics
 * @param conductors every stage's
 * @param overvoltages a short-time overvoltage, where one was asked about
 * @param relocations the stages on another system, where one was asked about
 * @param wrongSpares that would mislead
 * @param rises of the bus voltage, stage by stage, the whole bank last; empty without the short-circuit level
 * @param control thresholds against steps
 * @param loads the bank beside its load
 * @param distortion of the bus voltage as measured; empty where it was not
 * @param loadChecks over-correction and power factor
 * @param unanswered what can't be said, and for want of what
 */
public record Duty(
        Bank bank,
        DutyQuestion question,
        List<StageDuty> stages,
        List<ConductorDuty> conductors,
        List<OvervoltageAnswer> overvoltages,
        List<Relocation> relocations,
        List<WrongSpare> wrongSpares,
        List<VoltageRise> rises,
        ControlAnswer control,
        List<LoadAnswer> loads,
        List<Check> distortion,
        List<Check> loadChecks,
        List<Unanswered> unanswered) {
    public Duty {
        stages = List.copyOf(stages);
        conductors = List.copyOf(conductors);
        overvoltages = List.copyOf(overvoltages);
        relocations = List.copyOf(relocations);
        wrongSpares = List.copyOf(wrongSpares);
        rises = List.copyOf(rises);
        loads = List.copyOf(loads);
        distortion = List.copyOf(distortion);
        loadChecks = List.copyOf(loadChecks);
        unanswered = List.copyOf(unanswered);
    }

    /**
     * Answers a question.
     *
     * @throws org.varwright.problem.VarwrightException {@code NO_SOLUTION}, {@code COMBINATIONS_TOO_MANY}
     */
    public static Duty of(Bank bank, DutyQuestion question) {
        List<StageModel> models = StageModel.of(bank);
        List<FundamentalDuty> fundamentals = bank.stages().stream()
                .map(stage -> FundamentalDuty.of(bank, stage))
                .toList();
        List<Unanswered> unanswered = new ArrayList<>();
        StageDutyStudy study = new StageDutyStudy(bank, question, models, fundamentals);
        Resonance resonance =
                Resonance.of(bank, new ResonanceQuestion(question.busVolts(), question.harmonics(), Optional.empty()));
        List<ConductorDuty> conductors = new ArrayList<>();
        for (int s = 0; s < models.size(); s++) {
            conductors.add(ConductorDuty.of(bank, models.get(s).stage(), study.highestLine(s)));
        }
        List<VoltageRise> rises = rises(bank, models, unanswered);
        ControlAnswer control = rises.isEmpty() && bank.control().isPresent()
                ? ControlAnswer.EMPTY
                : ControlStudy.of(bank, stagesOnly(rises), question.entered(), unanswered);
        LoadStudy loads = new LoadStudy(bank, models, resonance);
        List<LoadAnswer> answers = loads.all();
        unanswered(bank, question, unanswered);
        return new Duty(
                bank,
                question,
                study.all(),
                conductors,
                question.overvoltage()
                        .map(o -> OvervoltageAnswer.of(bank, o, fundamentals))
                        .orElse(List.of()),
                question.elsewhere().map(e -> Relocation.of(bank, e)).orElse(List.of()),
                SpareStudy.of(bank, question.moreSpares()),
                rises,
                control,
                answers,
                distortion(bank, question),
                loads.checks(answers),
                unanswered);
    }

    private static List<VoltageRise> rises(Bank bank, List<StageModel> models, List<Unanswered> unanswered) {
        Optional<SourceImpedance> source = SourceImpedance.of(bank.system());
        if (source.isEmpty()) {
            unanswered.add(new Unanswered(
                    "system.short-circuit", "no voltage rise, no hunting and no resonance can be computed"));
            return List.of();
        }
        double volts = bank.system().nominalVolts();
        double omega = bank.system().angularFrequency();
        List<VoltageRise> rises = new ArrayList<>();
        double sum = 0.0;
        for (StageModel model : models) {
            double vars = model.vars(volts, omega);
            sum += vars;
            rises.add(VoltageRise.of(model.stage().name(), vars, source.get(), volts));
        }
        rises.add(VoltageRise.of("whole bank", sum, source.get(), volts));
        return rises;
    }

    private static List<VoltageRise> stagesOnly(List<VoltageRise> rises) {
        return rises.isEmpty() ? rises : rises.subList(0, rises.size() - 1);
    }

    private static List<Check> distortion(Bank bank, DutyQuestion question) {
        if (question.measured().isEmpty()) {
            return List.of();
        }
        DistortionLimits limits = DistortionLimits.of(bank.system().nominalVolts());
        List<Check> checks = new ArrayList<>();
        double squares = 0.0;
        for (Harmonic h : question.measured()) {
            double part = h.voltageFraction().orElse(0.0);
            squares += part * part;
            checks.add(distortion(
                    "order " + h.order() + " in the bus voltage as measured", part, limits.single(), limits));
        }
        checks.add(distortion(
                "total distortion of the bus voltage as measured", Math.sqrt(squares), limits.total(), limits));
        return checks;
    }

    private static Check distortion(String subject, double value, double limit, DistortionLimits limits) {
        return new Check(
                subject,
                value,
                limit,
                "",
                value <= limit * (1.0 + 1e-9) ? Verdict.PASS : Verdict.WARN,
                new Basis(
                        "DUT-10",
                        "V_h/V_nominal; total √Σ(V_h/V_nominal)²",
                        List.of(new Term("limit", "for this nominal voltage", limit, "")),
                        limits.source()));
    }

    private static void unanswered(Bank bank, DutyQuestion question, List<Unanswered> unanswered) {
        if (bank.system().maximumVolts().isEmpty() && question.busVolts().isEmpty()) {
            unanswered.add(new Unanswered(
                    "system.maximum-voltage",
                    "the units are judged at nominal voltage only, not at the highest sustained one"));
        }
        if (question.harmonics().orElse(bank.system().harmonics()).isEmpty()
                && question.measured().isEmpty()) {
            unanswered.add(new Unanswered(
                    "system.harmonics", "crest, current and reactive power are judged for the fundamental alone"));
        }
        if (bank.load().isEmpty()) {
            unanswered.add(new Unanswered(
                    "load", "no kvar wanted, no over-correction at light load and no combination to use can be named"));
        } else {
            if (bank.load().get().wantedPowerFactor().isEmpty()) {
                unanswered.add(new Unanswered(
                        "load.wanted-power-factor", "no kvar wanted and no combination to use can be named"));
            }
            if (bank.load().get().lightWatts().isEmpty()) {
                unanswered.add(new Unanswered("load.light-power", "over-correction at light load can't be judged"));
            }
        }
        List<String> reactors = new ArrayList<>();
        List<String> switches = new ArrayList<>();
        for (Stage stage : bank.stages()) {
            if (stage.reactor().filter(r -> r.ratedAmperes().isEmpty()).isPresent()) {
                reactors.add(stage.name());
            }
            if (bank.switchOf(stage).flatMap(d -> d.type()).isEmpty()) {
                switches.add(stage.name());
            }
        }
        if (!reactors.isEmpty()) {
            unanswered.add(new Unanswered(
                    "reactor.current of " + Enumeration.of(reactors),
                    "whether the reactors carry their current can't be said"));
        }
        if (!switches.isEmpty()) {
            unanswered.add(new Unanswered(
                    "type of the switch of " + Enumeration.of(switches),
                    "whether it carries the current for good can't be said"));
        }
    }

    /** Every check, in the order of the answer. */
    public List<Check> checks() {
        List<Check> all = new ArrayList<>();
        stages.forEach(s -> all.addAll(s.checks()));
        all.addAll(otherChecks());
        return all;
    }

    /** Every check but those of the units in service. */
    public List<Check> otherChecks() {
        List<Check> all = new ArrayList<>(distortion);
        conductors.forEach(c -> all.addAll(c.checks()));
        overvoltages.forEach(o -> all.add(o.check()));
        relocations.forEach(r -> all.addAll(r.checks()));
        wrongSpares.forEach(w -> all.add(w.check()));
        all.addAll(control.checks());
        all.addAll(loadChecks);
        return all;
    }

    /** Whether no check fails. */
    public boolean isGood() {
        return checks().stream().noneMatch(c -> c.verdict() == Verdict.FAIL);
    }

    /** Such as {@code +0.57 %}. */
    static String signed(double part) {
        return (part >= 0.0 ? "+" : "") + Dimension.FRACTION.format(part, 3);
    }
}
