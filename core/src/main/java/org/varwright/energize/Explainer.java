package org.varwright.energize;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Construction;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;
import org.varwright.network.Failure;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.UnitBranch;

/**
 * Which single failure of a stage would give the values that were measured.
 *
 * <p><b>Model.</b> For every single failure (one unit of each group, every count of sections or element fuses, a shorted unit, an open phase) the network
 * gives what the meters would read; the one with the least sum of squares of distances, in half-widths of the bands, is the best (ENG-4). Failures
 * within 1 of it are named beside it: the measured values don't tell them apart.
 *
 * <p><b>Source.</b> First principles (least squares).
 */
final class Explainer {
    /** Half-widths up to which a measured value counts as explained. */
    private static final double EXPLAINED = 1.5;

    private static final double ALIKE = 1.0;

    private final Bank bank;
    private final Fitted fitted;
    private final BusVolts bus;
    private final Uncertainty uncertainty;

    Explainer(Bank bank, Fitted fitted, BusVolts bus, Uncertainty uncertainty) {
        this.bank = bank;
        this.fitted = fitted;
        this.bus = bus;
        this.uncertainty = uncertainty;
    }

    private record Candidate(Failure failure, double squares, double misfit) {}

    Explanation explain(Stage stage, List<Comparison> measured) {
        Optional<Double> factor = commonFactor(stage, measured);
        if (factor.isPresent()) {
            long percent = Math.round(100.0 * (factor.get() - 1.0));
            return new Explanation(
                    stage.name(),
                    List.of(),
                    0.0,
                    "All three phases read " + Math.abs(percent) + " % " + (percent > 0 ? "high" : "low")
                            + " alike. No single failure does that: look at the voltage at the moment of the reading, the meter's"
                            + " range and the ratio of its transformer, and whether the units are of the type that the file says.",
                    Optional.empty());
        }
        Network network = Network.of(bank, stage, fitted.capacitances(), bus.supply());
        List<Candidate> candidates = new ArrayList<>();
        for (Failure failure : singles(stage, network)) {
            if (network.solve(List.of(failure)) instanceof Solution.Solved solved) {
                candidates.add(score(failure, solved, measured));
            }
        }
        // Equal to rounding, the order of the legs counts: the same answer in every home of the code.
        candidates.sort(Comparator.comparingDouble(c -> Math.rint(1e6 * c.squares())));
        if (candidates.isEmpty() || candidates.getFirst().misfit() > EXPLAINED) {
            return new Explanation(
                    stage.name(),
                    List.of(),
                    candidates.isEmpty()
                            ? Double.MAX_VALUE
                            : candidates.getFirst().misfit(),
                    "No single failure gives these values. Take the "
                            + bank.words().stage() + " out, prove it dead, and measure"
                            + " every unit; look at the readings' phases and positions too.",
                    Optional.empty());
        }
        Candidate best = candidates.getFirst();
        List<Failure> alike = candidates.stream()
                .filter(c -> c.squares() <= best.squares() + ALIKE && c.misfit() <= EXPLAINED)
                .map(Candidate::failure)
                .toList();
        Basis basis = new Basis(
                "ENG-4",
                "least Σ((measured − predicted)/half-width)²",
                List.of(
                        new Term("Σ", "sum for the best failure", best.squares(), ""),
                        new Term("n", "measured values", measured.size(), ""),
                        new Term("d", "largest single distance, in half-widths", best.misfit(), ""),
                        new Term("m", "failures that fit alike", alike.size(), "")),
                Source.FIRST_PRINCIPLES);
        return new Explanation(stage.name(), alike, best.misfit(), sentence(stage, alike), Optional.of(basis));
    }

    /** Ratio of measured to expected where all three lines are off by the same part, which no failure of the bank does. */
    private Optional<Double> commonFactor(Stage stage, List<Comparison> measured) {
        List<Comparison> lines = measured.stream()
                .filter(c -> List.of("A", "B", "C")
                                .contains(c.name().substring(stage.name().length() + 1))
                        && c.name().charAt(stage.name().length()) == '/')
                .toList();
        if (lines.size() < 3
                || lines.stream()
                        .anyMatch(c -> c.verdict() == Verdict.PASS || c.band().expected() <= 0.0)) {
            return Optional.empty();
        }
        double low = Double.MAX_VALUE;
        double high = 0.0;
        for (Comparison line : lines) {
            double ratio = line.measured() / line.band().expected();
            low = Math.min(low, ratio);
            high = Math.max(high, ratio);
        }
        double mean = 0.5 * (low + high);
        return low > 0.0 && high - low <= 2.0 * uncertainty.ammeter() * mean ? Optional.of(mean) : Optional.empty();
    }

    private List<Failure> singles(Stage stage, Network network) {
        List<Failure> failures = new ArrayList<>();
        for (UnitBranch branch : network.branches()) {
            if (branch.at().unit() != 1) {
                continue;
            }
            failures.add(new Failure.UnitOut(branch));
            failures.add(new Failure.UnitShorted(branch));
            stage.unit().construction().ifPresent(c -> inside(failures, branch, c));
        }
        for (String phase : List.of("A", "B", "C")) {
            failures.add(new Failure.PhaseOpen(stage.name(), phase));
        }
        return failures;
    }

    private static void inside(List<Failure> failures, UnitBranch branch, Construction construction) {
        for (int k = 1; k < construction.sections(); k++) {
            failures.add(new Failure.SectionsShorted(branch, k));
        }
        for (int n = 1; construction.internallyFused() && n < construction.elements(); n++) {
            failures.add(new Failure.ElementsOut(branch, n));
        }
    }

    private Candidate score(Failure failure, Solution.Solved solved, List<Comparison> measured) {
        Map<String, Double> predicted = new HashMap<>();
        for (Solution.LegValue leg : solved.legs()) {
            predicted.put(leg.stage() + "/" + leg.leg(), leg.amperes().magnitude());
        }
        for (Solution.LineValue line : solved.lines()) {
            predicted.put(line.stage() + "/" + line.phase(), line.amperes().magnitude());
        }
        for (Solution.SensorValue sensor : solved.sensors()) {
            predicted.put(
                    sensor.name(), sensor.secondary().orElse(sensor.primary()).magnitude());
        }
        double squares = 0.0;
        double misfit = 0.0;
        for (Comparison comparison : measured) {
            double value = Objects.requireNonNull(predicted.get(comparison.name()), comparison.name());
            double distance =
                    Math.abs(comparison.measured() - value) / comparison.band().reach(comparison.measured());
            squares += distance * distance;
            misfit = Math.max(misfit, distance);
        }
        return new Candidate(failure, squares, misfit);
    }

    private String sentence(Stage stage, List<Failure> alike) {
        List<String> words = new ArrayList<>();
        for (Failure failure : alike.subList(0, Math.min(4, alike.size()))) {
            words.add(words(stage, failure));
        }
        String list = String.join("; or ", words);
        String more =
                alike.size() > words.size() ? "; or " + (alike.size() - words.size()) + " more that read alike" : "";
        return "Fits best: " + list + more + ". Take the " + bank.words().stage()
                + " out, prove it dead, discharge, and look there first.";
    }

    private String words(Stage stage, Failure failure) {
        return switch (failure) {
            case Failure.UnitOut f -> "a fuse operated or a unit left out, " + place(stage, f.at());
            case Failure.UnitShorted f -> "a unit shorted, " + place(stage, f.at());
            case Failure.SectionsShorted f ->
                f.sections() + (f.sections() == 1 ? " section" : " sections") + " shorted in a unit, "
                        + place(stage, f.at());
            case Failure.ElementsOut f ->
                f.elements() + (f.elements() == 1 ? " element fuse" : " element fuses") + " operated in a unit, "
                        + place(stage, f.at());
            case Failure.PhaseOpen f ->
                "phase " + f.phase() + " open (bank fuse, switch pole, or a connection); with an "
                        + bank.words().ungrounded() + " neutral its terminals are live all the same";
        };
    }

    private String place(Stage stage, UnitBranch branch) {
        LegLayout layout = stage.layoutOf(branch.stageLeg());
        int units = layout.units();
        String name = branch.name();
        return units > 1 ? "one of the " + units + " at " + name + " and its mates in parallel" : "at " + name;
    }
}
