package org.varwright.duty;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Load;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;
import org.varwright.resonance.Combination;
import org.varwright.resonance.CombinationResult;
import org.varwright.resonance.Resonance;
import org.varwright.resonance.StageModel;

/** The bank beside its load: what is wanted, what over-corrects, which stages to have on (DUT-9). */
final class LoadStudy {
    private static final String NONE_ON = "none on";

    private final Bank bank;
    private final List<StageModel> models;
    private final Resonance resonance;

    LoadStudy(Bank bank, List<StageModel> models, Resonance resonance) {
        this.bank = bank;
        this.models = models;
        this.resonance = resonance;
    }

    /** A combination with what it gives and whether resonance speaks against it. */
    private record Choice(String name, double vars, boolean isToAvoid) {}

    List<LoadAnswer> all() {
        if (bank.load().isEmpty()) {
            return List.of();
        }
        Load load = bank.load().get();
        List<LoadAnswer> all = new ArrayList<>();
        all.add(answer("full load", load.watts(), load.vars(), load.wantedPowerFactor()));
        if (load.lightWatts().isPresent() && load.lightVars().isPresent()) {
            all.add(answer(
                    "light load",
                    load.lightWatts().getAsDouble(),
                    load.lightVars().getAsDouble(),
                    load.wantedPowerFactor()));
        }
        return all;
    }

    private LoadAnswer answer(String name, double watts, double vars, OptionalDouble wanted) {
        double given = bankVars();
        OptionalDouble wantedVars = wanted.isPresent()
                ? OptionalDouble.of(PowerFactor.varsWanted(watts, vars, wanted.getAsDouble()))
                : OptionalDouble.empty();
        Optional<LoadAnswer.Use> use =
                wantedVars.isPresent() ? use(watts, vars, wantedVars.getAsDouble()) : Optional.empty();
        return new LoadAnswer(
                name,
                watts,
                vars,
                PowerFactor.of(watts, vars),
                wantedVars,
                PowerFactor.of(watts, vars - given),
                given > vars * (1.0 + 1e-9),
                use,
                use.filter(LoadAnswer.Use::isToAvoid).flatMap(u -> clear(watts, vars)));
    }

    private Optional<LoadAnswer.Use> clear(double watts, double vars) {
        return choices().stream()
                .filter(c -> !c.isToAvoid() && c.vars() <= Math.max(0.0, vars) * (1.0 + 1e-9))
                .max(Comparator.comparingDouble(Choice::vars))
                .map(c -> new LoadAnswer.Use(c.name(), c.vars(), PowerFactor.of(watts, vars - c.vars()), false, false));
    }

    private double bankVars() {
        double omega = bank.system().angularFrequency();
        return models.stream()
                .mapToDouble(m -> m.vars(bank.system().nominalVolts(), omega))
                .sum();
    }

    /** The least that is enough and doesn't lead; else the most that doesn't lead. Combinations that resonance speaks against come last. */
    private Optional<LoadAnswer.Use> use(double watts, double vars, double wanted) {
        List<Choice> choices = new ArrayList<>(choices());
        choices.add(new Choice(NONE_ON, 0.0, false));
        Comparator<Choice> least = Comparator.comparing(Choice::isToAvoid).thenComparingDouble(Choice::vars);
        Comparator<Choice> most = Comparator.comparing(Choice::isToAvoid)
                .thenComparing(Comparator.comparingDouble(Choice::vars).reversed());
        List<Choice> lagging = choices.stream()
                .filter(c -> c.vars() <= Math.max(0.0, vars) * (1.0 + 1e-9))
                .toList();
        Optional<Choice> enough =
                lagging.stream().filter(c -> c.vars() >= wanted * (1.0 - 1e-9)).min(least);
        return enough.or(() -> lagging.stream().min(most))
                .map(c -> new LoadAnswer.Use(
                        c.name(), c.vars(), PowerFactor.of(watts, vars - c.vars()), enough.isPresent(), c.isToAvoid()));
    }

    private List<Choice> choices() {
        if (!resonance.combinations().isEmpty()) {
            return resonance.combinations().stream().map(LoadStudy::choice).toList();
        }
        double omega = bank.system().angularFrequency();
        double volts = bank.system().nominalVolts();
        return Combination.all(models).stream()
                .map(c -> new Choice(
                        c.name(),
                        c.stages().stream()
                                .mapToDouble(s -> s.vars(volts, omega))
                                .sum(),
                        false))
                .toList();
    }

    private static Choice choice(CombinationResult c) {
        return new Choice(c.combination().name(), c.vars(), c.isToAvoid());
    }

    /** Over-correction with every stage on, and whether the power factor wanted is reached. */
    List<Check> checks(List<LoadAnswer> answers) {
        double given = bankVars();
        List<Check> checks = new ArrayList<>();
        for (LoadAnswer a : answers) {
            checks.add(new Check(
                    a.load() + ": reactive power of the whole bank against the load's",
                    given,
                    a.vars(),
                    "var",
                    a.isLeading() ? Verdict.WARN : Verdict.PASS,
                    new Basis(
                            "DUT-9",
                            "Q_bank ≤ Q_load; above it the power factor leads",
                            List.of(
                                    new Term("P", "of the load", a.watts(), "W"),
                                    new Term("pf", "with the whole bank on", a.allOnPowerFactor(), "")),
                            Source.FIRST_PRINCIPLES)));
            a.use()
                    .ifPresent(u -> checks.add(new Check(
                            a.load() + ": power factor with " + u.combination(),
                            u.powerFactor(),
                            bank.load()
                                    .flatMap(l -> toOptional(l.wantedPowerFactor()))
                                    .orElse(1.0),
                            "",
                            u.isEnough() ? Verdict.PASS : Verdict.WARN,
                            new Basis(
                                    "DUT-9",
                                    "pf = P/√(P² + (Q − Q_bank)²)",
                                    List.of(
                                            new Term("P", "of the load", a.watts(), "W"),
                                            new Term("Q", "of the load", a.vars(), "var"),
                                            new Term("Q_bank", "of what is on", u.vars(), "var")),
                                    Source.FIRST_PRINCIPLES))));
        }
        return checks;
    }

    private static Optional<Double> toOptional(OptionalDouble value) {
        return value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty();
    }
}
