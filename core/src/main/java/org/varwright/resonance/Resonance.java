package org.varwright.resonance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Harmonic;
import org.varwright.bank.Reactor;
import org.varwright.basis.Check;
import org.varwright.basis.Unanswered;
import org.varwright.basis.Verdict;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * A bank at harmonics: every combination of stages, and the tuning of reactors.
 *
 * @param bank the bank
 * @param busVolts fundamental voltage, line to line [V]
 * @param spectrum harmonics that were counted; empty where none are known
 * @param source impedance at the bus; empty where the bank file gives no short-circuit level: then no combination is looked at
 * @param combinations by rising reactive power
 * @param tunings of the stages with reactors, in the order of the bank
 * @param unanswered what can't be said, and for want of what
 */
public record Resonance(
        Bank bank,
        double busVolts,
        List<Harmonic> spectrum,
        Optional<SourceImpedance> source,
        List<CombinationResult> combinations,
        List<StageTuning> tunings,
        List<Unanswered> unanswered) {
    public Resonance {
        spectrum = List.copyOf(spectrum);
        combinations = List.copyOf(combinations);
        tunings = List.copyOf(tunings);
        unanswered = List.copyOf(unanswered);
    }

    /**
     * Answers a question.
     *
     * @throws VarwrightException {@code RESONANCE_STAGE}, {@code COMBINATIONS_TOO_MANY}, {@code BUS_VOLTS}, {@code NO_SOLUTION}
     */
    public static Resonance of(Bank bank, ResonanceQuestion question) {
        double volts = question.volts(bank);
        List<Harmonic> spectrum = question.spectrum(bank);
        List<StageModel> models = StageModel.of(bank);
        Optional<SourceImpedance> source = SourceImpedance.of(bank.system());
        List<CombinationResult> results = new ArrayList<>();
        List<Combination> wanted = question.stages()
                .map(names -> List.of(named(models, names)))
                .orElseGet(() -> source.isPresent() ? Combination.all(models) : List.of());
        if (source.isPresent()) {
            CombinationStudy study = new CombinationStudy(bank, source.get(), volts, spectrum);
            wanted.forEach(c -> results.add(study.examine(c)));
            results.sort(Comparator.comparingDouble(CombinationResult::vars));
        }
        return new Resonance(
                bank,
                volts,
                spectrum,
                source,
                results,
                new TuningStudy(bank, source, spectrum).all(models),
                unanswered(bank, spectrum));
    }

    private static Combination named(List<StageModel> models, List<String> names) {
        List<StageModel> on = new ArrayList<>();
        for (StageModel model : models) {
            if (names.contains(model.stage().name())) {
                on.add(model);
            }
        }
        for (String name : names) {
            if (models.stream().noneMatch(m -> m.stage().name().equals(name))) {
                throw new VarwrightException(
                        Message.RESONANCE_STAGE,
                        Place.NOWHERE,
                        name,
                        String.join(
                                ", ", models.stream().map(m -> m.stage().name()).toList()));
            }
        }
        return Combination.of(on);
    }

    private static List<Unanswered> unanswered(Bank bank, List<Harmonic> spectrum) {
        List<Unanswered> all = new ArrayList<>();
        if (bank.system().shortCircuitVoltAmperes().isEmpty()) {
            all.add(new Unanswered(
                    "system.short-circuit",
                    "no resonance, no amplification and no sharing of harmonic currents can be computed"));
        } else if (bank.system().xOverR().isEmpty()) {
            all.add(
                    new Unanswered(
                            "system.x-over-r",
                            "no damping by the source is counted; peaks are higher than real ones, at an exact resonance without bound"));
        }
        if (spectrum.isEmpty()) {
            all.add(
                    new Unanswered(
                            "system.harmonics",
                            "amplification is shown, but not whether it breaks a limit; measure the bus voltage at 5, 7, 11 and 13 with the bank off"));
        }
        if (bank.load().isEmpty()) {
            all.add(new Unanswered("load", "no damping by the load is counted; the peaks are those at no load"));
        }
        for (int i = 0; i < bank.stages().size(); i++) {
            Optional<Reactor> reactor = bank.stages().get(i).reactor();
            if (reactor.isPresent()
                    && reactor.get().purpose() != Reactor.Purpose.INRUSH
                    && reactor.get().resistanceOhms().isEmpty()) {
                all.add(new Unanswered(
                        "stages[" + i + "].reactor.resistance",
                        "no damping by the reactor of " + bank.stages().get(i).name() + " is counted"));
            }
        }
        return all;
    }

    /** Every check: combinations, then tunings. */
    public List<Check> checks() {
        List<Check> all = new ArrayList<>();
        combinations.forEach(c -> all.addAll(c.checks()));
        tunings.forEach(t -> all.addAll(t.checks()));
        return all;
    }

    /** Combinations to avoid, the worst first: limits broken, then high amplification. */
    public List<CombinationResult> avoid() {
        return combinations.stream()
                .filter(CombinationResult::isToAvoid)
                .sorted(Comparator.comparing(CombinationResult::verdict)
                        .thenComparingDouble(CombinationResult::highestAmplification)
                        .reversed())
                .toList();
    }

    /** Combinations that nothing speaks against, by rising reactive power. */
    public List<CombinationResult> clear() {
        return combinations.stream().filter(c -> !c.isToAvoid()).toList();
    }

    /** Of the combinations to avoid the one that the least speaks against; empty where there are none. */
    public Optional<CombinationResult> leastBad() {
        return combinations.stream()
                .filter(CombinationResult::isToAvoid)
                .min(Comparator.comparing(CombinationResult::verdict)
                        .thenComparingDouble(CombinationResult::highestAmplification));
    }

    /** Whether no check fails and at least something was looked at. */
    public boolean isGood() {
        return checks().stream().noneMatch(c -> c.verdict() == Verdict.FAIL);
    }
}
