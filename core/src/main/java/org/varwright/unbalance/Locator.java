package org.varwright.unbalance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.TransformerRatio;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.network.Capacitances;
import org.varwright.network.Failure;
import org.varwright.network.Fault;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;
import org.varwright.network.Sweep;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Complex;

/**
 * Finds the failures that explain a sensor's reading.
 *
 * <p><b>Model.</b> Hypotheses: nothing, every single suspect, every pair of suspects (two legs, or two groups of one leg). Prior: weights of the suspects,
 * a pair counting as a twentieth of the product (UNB-6). Likelihood: normal, of the distance between the reading and {@code healthy + (failed − as is)}
 * of the network; of the phasor where the angle is known, of the magnitude otherwise; times the same for every line current read. Bayes.
 *
 * <p><b>Not modelled.</b> Three and more failures in different places. A wrong ratio or polarity is only looked for where nothing single explains the reading.
 *
 * <p><b>Source.</b> First principles; the weights are common practice, no source.
 */
public final class Locator {
    private static final double NOTHING = 0.5;
    private static final double PAIR = 0.05;
    private static final double EXPLAINED = 3.0;
    private static final double SHOWN = 0.01;
    private static final double AMMETER = 0.02;

    /** Part of the assumed spread by which legs drift apart after a healthy reading (temperature): common practice, no source. */
    private static final double SINCE_HEALTHY = 0.1;

    /** Part of the assumed spread that is left in doubt where every unit was measured (the meter): common practice, no source. */
    private static final double BY_READINGS = 0.5;

    /** Failures of a higher count are looked for alone, not in pairs. */
    private static final int MOST_IN_PAIR = 3;

    private final Bank bank;
    private final Stage stage;
    private final Protection protection;
    private final int sensor;
    private final Sighting sighting;
    private final Network network;
    private final Sweep sweep;
    private final Solution.Solved asIs;
    private final double ratio;
    private final double sigma;
    private final Complex healthy;
    private final ErrorBudget error;

    private Locator(
            Bank bank,
            Stage stage,
            Protection protection,
            int sensor,
            Sighting sighting,
            Network network,
            Solution.Solved asIs,
            ErrorBudget error) {
        this.bank = bank;
        this.stage = stage;
        this.protection = protection;
        this.sensor = sensor;
        this.sighting = sighting;
        this.network = network;
        this.sweep = network.sweep().orElseThrow();
        this.asIs = asIs;
        this.error = error;
        ratio = sighting.primary() ? 1.0 : ratio(protection, sighting);
        double instrument = 0.5 * sighting.uncertainty() * sighting.magnitude() / ratio;
        double legs = error.spread()
                * (sighting.healthy().isPresent() ? SINCE_HEALTHY : error.bankIsMeasured() ? BY_READINGS : 1.0);
        // Half of a 95 % value is one standard deviation.
        double drift = 0.5 * Math.hypot(error.system(), legs);
        sigma = Math.max(Math.hypot(instrument, drift), 1e-9);
        healthy = sighting.healthy()
                .map(h -> h.times(1.0 / ratio))
                .orElse(asIs.sensors().get(sensor).primary());
    }

    /**
     * The failures that explain a reading.
     *
     * @param bank as read
     * @param readings capacitance of units as measured [F]; else the bank file's value counts, else the nameplate's
     * @param supply voltages at the bus when it was read
     * @param assumptions of what was not measured
     * @param sighting what was read
     * @throws VarwrightException {@code SENSOR_UNKNOWN}, {@code SENSOR_RATIO}, {@code NO_SOLUTION}
     */
    public static Locate locate(
            Bank bank, Map<UnitPosition, Double> readings, Supply supply, Assumptions assumptions, Sighting sighting) {
        Capacitances capacitances = Capacitances.known(bank).with(readings);
        List<String> names = new ArrayList<>();
        for (Stage stage : bank.stages()) {
            if (bank.protection().stream().noneMatch(p -> p.stage().equals(stage.name()))) {
                continue;
            }
            Network network = Network.of(bank, stage, capacitances, supply);
            Solution.Solved asIs = requireSolved(stage, network.healthy());
            for (int s = 0; s < asIs.sensors().size(); s++) {
                Solution.SensorValue value = asIs.sensors().get(s);
                names.add(value.name());
                if (value.name().equalsIgnoreCase(sighting.sensor().strip())) {
                    Protection protection = bank.protection().stream()
                            .filter(p -> p.stage().equals(value.stage()) && p.senses() == value.senses())
                            .findFirst()
                            .orElseThrow();
                    ErrorBudget error =
                            Unbalance.budget(bank, stage, protection, readings, capacitances, supply, assumptions);
                    return new Locator(bank, stage, protection, s, sighting, network, asIs, error).locate();
                }
            }
        }
        throw new VarwrightException(
                Message.SENSOR_UNKNOWN,
                Place.NOWHERE,
                sighting.sensor(),
                names.isEmpty() ? "none; the bank file has no protection" : String.join(", ", names));
    }

    private static Solution.Solved requireSolved(Stage stage, Solution solution) {
        return switch (solution) {
            case Solution.Solved solved -> solved;
            case Solution.Singular s ->
                throw new VarwrightException(Message.NO_SOLUTION, Place.NOWHERE, stage.name(), s.reason());
        };
    }

    private static double ratio(Protection protection, Sighting sighting) {
        return protection
                .ratio()
                .map(TransformerRatio::factor)
                .orElseThrow(() -> new VarwrightException(Message.SENSOR_RATIO, Place.NOWHERE, sighting.sensor()));
    }

    /** A hypothesis with its unnormalized probability. */
    private record Scored(
            List<Candidate.Part> parts,
            List<Failure> failures,
            double prior,
            double logWeight,
            Complex shown,
            double distance) {}

    /** A suspect with its failure as the sweep takes it; the twin is the same failure in another group. */
    private record Resolved(Suspects.Suspect suspect, Fault fault, Optional<Fault> twin) {}

    private Locate locate() {
        List<Resolved> suspects = Suspects.of(stage, network, sweep, sensor).stream()
                .map(s -> new Resolved(
                        s,
                        sweep.fault(s.part().standIn()),
                        s.twin().isEmpty() ? Optional.empty() : Optional.of(sweep.fault(s.twin()))))
                .toList();
        double total = suspects.stream().mapToDouble(s -> s.suspect().weight()).sum();
        Fault nothing = sweep.fault(List.of());
        List<Scored> scored = new ArrayList<>();
        add(scored, List.of(), nothing, nothing, NOTHING);
        for (Resolved s : suspects) {
            add(
                    scored,
                    List.of(s.suspect().part()),
                    s.fault(),
                    nothing,
                    s.suspect().weight() / total);
        }
        for (int i = 0; i < suspects.size(); i++) {
            pairs(scored, suspects, i, total);
        }
        double best = scored.stream().mapToDouble(Scored::logWeight).max().orElse(0.0);
        double sum =
                scored.stream().mapToDouble(s -> Math.exp(s.logWeight() - best)).sum();
        List<Candidate> candidates = scored.stream()
                .filter(s -> Math.exp(s.logWeight() - best) / sum >= SHOWN)
                .map(s -> new Candidate(
                        s.parts(), Math.exp(s.logWeight() - best) / sum, s.shown(), lines(s.failures()), s.distance()))
                // Equal to rounding, the words decide: the same answer in every home of the code.
                .sorted(Comparator.comparingDouble((Candidate c) -> -Math.rint(1e6 * c.probability()))
                        .thenComparing(Candidate::words))
                .toList();
        boolean explained = scored.stream().anyMatch(s -> s.distance() <= EXPLAINED);
        return new Locate(
                bank,
                sighting,
                protection.senses(),
                ratio,
                explained ? candidates : List.of(),
                explained,
                explained
                        ? NextMeasurements.of(bank, candidates, sighting, protection)
                        : List.of("Take the " + bank.words().stage() + " out, prove it dead, and measure every unit."),
                notes(scored),
                basis(suspects.size()));
    }

    private void pairs(List<Scored> scored, List<Resolved> suspects, int i, double total) {
        Suspects.Suspect first = suspects.get(i).suspect();
        if (!isPaired(first)) {
            return;
        }
        Fault fault = suspects.get(i).fault();
        double weight = PAIR * first.weight() / total;
        suspects.get(i)
                .twin()
                .ifPresent(twin -> add(
                        scored,
                        List.of(first.part(), first.part()),
                        fault,
                        twin,
                        0.5 * weight * first.weight() / total));
        for (int j = i + 1; j < suspects.size(); j++) {
            Suspects.Suspect second = suspects.get(j).suspect();
            boolean otherLeg = !second.part().place().equals(first.part().place());
            if (otherLeg && isPaired(second)) {
                add(
                        scored,
                        List.of(first.part(), second.part()),
                        fault,
                        suspects.get(j).fault(),
                        weight * second.weight() / total);
            }
        }
    }

    private static boolean isPaired(Suspects.Suspect suspect) {
        return !suspect.part().kind().equals("phase-open") && suspect.part().count() <= MOST_IN_PAIR;
    }

    private void add(List<Scored> scored, List<Candidate.Part> parts, Fault one, Fault other, double prior) {
        if (sweep.set(one, other)) {
            List<Failure> failures = new ArrayList<>(one.failures());
            failures.addAll(other.failures());
            scored.add(score(parts, failures, Math.log(prior)));
        }
    }

    /** What the sweep shows now against what was read. */
    private Scored score(List<Candidate.Part> parts, List<Failure> failures, double logPrior) {
        Complex primary = sweep.sensor(sensor);
        Complex shown = healthy.plus(primary.minus(asIs.sensors().get(sensor).primary()));
        double distance = distance(sighting.magnitude() / ratio, 0.0, shown);
        double squares = distance * distance;
        if (!sighting.lineAmperes().isEmpty()) {
            for (Map.Entry<String, Double> line : sighting.lineAmperes().entrySet()) {
                int phase = "ABC".indexOf(line.getKey());
                double off = lineDistance(sweep.line(phase).magnitude(), phase, line.getValue());
                squares += off * off;
                distance = Math.max(distance, Math.abs(off));
            }
        }
        return new Scored(parts, failures, logPrior, logPrior - 0.5 * squares, shown, distance);
    }

    /** Distance of a primary value from what would be shown, in standard deviations; of the phasor where the angle is known. */
    private double distance(double read, double turnedDegrees, Complex shown) {
        return sighting.degrees().isPresent()
                ? Complex.polar(read, sighting.degrees().getAsDouble() + turnedDegrees)
                                .minus(shown)
                                .magnitude()
                        / sigma
                : Math.abs(read - shown.magnitude()) / sigma;
    }

    /** Distance of a line current from what it should be, in standard deviations: meter and capacitances, each 2 % at 95 %. */
    private double lineDistance(double expected, int phase, double read) {
        double normal = asIs.lines().get(phase).amperes().magnitude();
        return (read - expected) / Math.max(0.5 * AMMETER * Math.hypot(expected, normal), 1e-9);
    }

    private List<Double> lines(List<Failure> failures) {
        if (!sweep.set(sweep.fault(failures))) {
            throw new IllegalStateException("a candidate had an answer: " + failures);
        }
        return List.of(
                sweep.line(0).magnitude(),
                sweep.line(1).magnitude(),
                sweep.line(2).magnitude());
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>();
        if (sighting.healthy().isEmpty()) {
            notes.add("No healthy reading is on file: the bank's own unbalance is "
                    + (error.bankIsMeasured()
                            ? "taken from the measured capacitances."
                            : "not known, and only allowed for."));
        }
        if (sighting.degrees().isPresent()) {
            notes.add("The angle counts from phase A to " + bank.words().ground()
                    + "; a transformer with its polarity turned shows 180° more.");
        }
        boolean isFloating = stage.connection().hasFloatingNeutral();
        if (isFloating || stage.connection() == Connection.DELTA || stage.hasThreePhaseUnits()) {
            notes.add("A " + bank.words().stage() + " that reads open with one pole still closed has every terminal"
                    + (isFloating ? " and the neutral" : "")
                    + " at phase voltage with almost no current: no ammeter shows it. Test every conductor.");
        }
        notes.add("Groups named together look alike to this sensor; like failures in different phases may cancel.");
        return notes;
    }

    /** A wrong ratio or polarity gives itself away where no single failure explains the reading as it is, and one does once it is put right. */
    private List<String> notes(List<Scored> scored) {
        List<String> notes = new ArrayList<>();
        if (scored.stream().anyMatch(s -> s.parts().size() < 2 && s.distance() <= EXPLAINED)) {
            return notes();
        }
        symptom(scored, 2.0, 0.0, "the transformer fitted has double the ratio of the bank file")
                .ifPresent(notes::add);
        symptom(scored, 0.5, 0.0, "the transformer fitted has half the ratio of the bank file")
                .ifPresent(notes::add);
        if (sighting.degrees().isPresent()) {
            symptom(scored, 1.0, 180.0, "its polarity is turned round").ifPresent(notes::add);
        }
        notes.addAll(notes());
        return notes;
    }

    private Optional<String> symptom(List<Scored> scored, double factor, double degrees, String what) {
        double read = factor * sighting.magnitude() / ratio;
        return scored.stream()
                .filter(s -> s.parts().size() == 1)
                .filter(s -> distance(read, degrees, s.shown()) <= EXPLAINED)
                .max(Comparator.comparingDouble(Scored::prior))
                .map(s -> "If " + what + ", the reading is that of "
                        + s.parts().getFirst().words() + ": check transformer and relay.");
    }

    private Basis basis(int suspects) {
        String unit = protection.senses().unit();
        return new Basis(
                "UNB-6",
                "P ∝ prior·exp(−½·Σ((read − shown)/σ)²), shown = healthy + (failed − as is)",
                List.of(
                        new Term("read", "primary value read", sighting.magnitude() / ratio, unit),
                        new Term("healthy", "primary value with nothing failed", healthy.magnitude(), unit),
                        new Term(
                                "σ",
                                "one standard deviation: instrument, and what varies in a bank in good order",
                                sigma,
                                unit),
                        new Term("N", "single suspects; pairs of them likewise", suspects, "")),
                Source.commonPractice("first principles (Bayes); prior weights"));
    }
}
