package org.varwright.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Connection;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.quantity.Dimension;

/**
 * Comes to a verdict on a reading of units together (SRV-15).
 *
 * <p><b>Model.</b> As SRV-4 with one failure among the units: {@code k} in one of {@code n} parallel units, {@code g} groups in series, {@code s} strings:
 * group {@code G = 1 + (f−1)/n}, string {@code 1/((g−1)/g + 1/(g·G))}, whole {@code 1 + (string − 1)/s}. A unit out of circuit (fuse operated, open inside) has
 * {@code f = 0}. Slips: a wrong range, the closed delta ({@code 1.5}), three legs together ({@code 3}), two legs in series ({@code 0.5}).
 * <p><b>Not modelled.</b> Two failures among the units.
 * <p><b>Source.</b> First principles; priors as in SRV-4.
 */
final class GroupJudge {
    /** Fewest readings of like groups whose median is taken. */
    private static final int FEWEST_ALIKE = 3;

    private final Map<UnitPosition, Reference> references;
    private final List<GroupReading> all;
    private final InPlace inPlace;
    private final SurveySettings settings;

    GroupJudge(
            Map<UnitPosition, Reference> references, List<GroupReading> all, InPlace inPlace, SurveySettings settings) {
        this.references = references;
        this.all = all;
        this.inPlace = inPlace;
        this.settings = settings;
    }

    private record Candidate(Hypothesis.Kind kind, String words, double weight, double factor, double spread) {}

    private record Weighed(Candidate candidate, double probability) {}

    GroupSurvey of(GroupReading reading) {
        Reference reference = reference(reading);
        List<GroupSurvey.Bounds> bounds = inPlace.bounds(reading);
        List<String> next = inPlace.next(reading);
        if (!(reading.measured() instanceof Measured.Value value)) {
            return answer(
                    reading,
                    reference,
                    UnitVerdict.MEASURE_AGAIN,
                    1.0,
                    reading.name() + ": the meter shows " + reading.measured().raw()
                            + ": leads touch or make no contact, or the range is too small; measure again.",
                    bounds,
                    next);
        }
        if (inPlace.contradicts(reading)) {
            return answer(
                    reading,
                    reference,
                    UnitVerdict.MEASURE_AGAIN,
                    1.0,
                    reading.name()
                            + ": the readings of its units and of units together contradict each other by more than the meter's"
                            + " error; measure again.",
                    bounds,
                    next);
        }
        List<Weighed> weighed = weigh(reading, value.si(), reference);
        double healthy = of(weighed, Hypothesis.Kind.HEALTHY);
        double failed = of(weighed, Hypothesis.Kind.FAILED);
        double impossible = of(weighed, Hypothesis.Kind.IMPOSSIBLE);
        String what = reading.name() + " reads " + Dimension.CAPACITANCE.format(value.si()) + ", "
                + Reasons.deviation(value.si() / reference.farads()) + " "
                + (reference.isOwn() ? "its units' own earlier values" : reference.words());
        if (healthy >= Judge.SURE) {
            return answer(
                    reading, reference, UnitVerdict.HEALTHY, healthy, what + ", as healthy units would.", bounds, next);
        }
        if (impossible >= 0.5 || (failed < Judge.SURE && impossible >= Judge.DOUBT)) {
            return answer(
                    reading,
                    reference,
                    UnitVerdict.MEASURE_AGAIN,
                    impossible,
                    what + ": " + best(weighed, Hypothesis.Kind.IMPOSSIBLE).words()
                            + (failed > 0.1
                                    ? "; or in one of its units "
                                            + best(weighed, Hypothesis.Kind.FAILED)
                                                    .words() + " ("
                                            + Reasons.percent(failed) + ")"
                                    : "")
                            + ".",
                    bounds,
                    next);
        }
        return answer(
                reading,
                reference,
                UnitVerdict.WATCH,
                failed,
                what + ": as if in one of its " + reading.units().size() + " units "
                        + best(weighed, Hypothesis.Kind.FAILED).words() + " (healthy by " + Reasons.percent(healthy)
                        + (bounds.isEmpty() ? "); its units tell which." : "); read the units one by one."),
                bounds,
                next);
    }

    private GroupSurvey answer(
            GroupReading reading,
            Reference reference,
            UnitVerdict verdict,
            double probability,
            String reason,
            List<GroupSurvey.Bounds> bounds,
            List<String> next) {
        boolean judged = verdict != UnitVerdict.MEASURE_AGAIN;
        return new GroupSurvey(
                reading.name(),
                reading.row(),
                reading.units().size(),
                reading.farads(),
                reference.farads(),
                verdict,
                probability,
                reason,
                judged && bounds.isEmpty(),
                judged ? bounds : List.of(),
                judged && !bounds.isEmpty() ? next : List.of(),
                new Basis(
                        "SRV-15",
                        "P(h|m) ∝ P(h)·∫p(c)·N(m; F_h·c, σ²)dc",
                        List.of(
                                new Term("m", "reading, corrected for temperature", reading.farads(), "F"),
                                new Term("c", reference.words(), reference.farads(), "F"),
                                new Term(
                                        "σ_c",
                                        "how well that is known, as a part of it",
                                        reference.relativeSigma(),
                                        ""),
                                new Term("u", "standard uncertainty of the meter", reading.sigmaFarads(), "F"),
                                new Term(
                                        "n",
                                        "units in parallel",
                                        reading.layout().units(),
                                        ""),
                                new Term(
                                        "g",
                                        "groups in series",
                                        reading.layout().groups(),
                                        ""),
                                new Term(
                                        "s",
                                        "strings in parallel",
                                        reading.layout().strings(),
                                        "")),
                        Source.commonPractice("Bayes' rule; priors: common practice, no source")));
    }

    private List<Weighed> weigh(GroupReading reading, double farads, Reference reference) {
        List<Candidate> candidates = candidates(reading);
        double[] weights = new double[candidates.size()];
        double sum = 0.0;
        double meter = Math.max(reading.sigmaFarads(), 1e-9 * reference.farads());
        for (int i = 0; i < weights.length; i++) {
            Candidate candidate = candidates.get(i);
            weights[i] = candidate.weight()
                    * (candidate.factor() > 0.0
                            ? Posterior.scaled(candidate.factor(), candidate.spread(), farads, meter, reference)
                            // nothing fits: log-uniform over the decades of SRV-4
                            : 1.0 / (Math.max(farads, 1e-6 * reference.farads()) * Posterior.DECADES * Math.log(10.0)));
            sum += weights[i];
        }
        List<Weighed> weighed = new ArrayList<>();
        for (int i = 0; i < weights.length; i++) {
            weighed.add(new Weighed(candidates.get(i), weights[i] / sum));
        }
        return weighed;
    }

    private List<Candidate> candidates(GroupReading reading) {
        int units = reading.units().size();
        Priors priors = settings.priors();
        List<Candidate> all = new ArrayList<>();
        for (Hypothesis.Prior prior : Hypothesis.of(reading.type(), List.of(), priors)) {
            if (prior.hypothesis().kind() == Hypothesis.Kind.FAILED) {
                double unit = prior.hypothesis().factor();
                double factor = reading.factor(unit);
                all.add(new Candidate(
                        Hypothesis.Kind.FAILED,
                        Reasons.failure(prior.hypothesis()),
                        units * prior.weight(),
                        factor,
                        Posterior.STEP_SPREAD * Math.abs(factor - 1.0)));
            } else if (prior.hypothesis() instanceof Hypothesis.WrongRange range) {
                all.add(slip(Reasons.slip(range), prior.weight(), range.factor()));
            }
        }
        double out = reading.factor(1e-9);
        if (out > 1e-6) {
            all.add(new Candidate(
                    Hypothesis.Kind.FAILED,
                    "the fuse had operated or the unit were open",
                    units * priors.leadsOpen(),
                    out,
                    Posterior.STEP_SPREAD * (1.0 - out)));
        }
        for (Joined joined : joined(reading)) {
            all.add(slip(joined.words(), priors.neighbourConnected() / 2.0, joined.factor()));
        }
        all.add(new Candidate(
                Hypothesis.Kind.IMPOSSIBLE,
                "no state of one unit and no usual slip reads so",
                priors.fitsNothing(),
                0.0,
                0.0));
        double others = all.stream().mapToDouble(Candidate::weight).sum();
        all.addFirst(new Candidate(Hypothesis.Kind.HEALTHY, "healthy", Math.max(0.2, 1.0 - others), 1.0, 0.0));
        return all;
    }

    private static Candidate slip(String words, double weight, double factor) {
        return new Candidate(Hypothesis.Kind.IMPOSSIBLE, words, weight, factor, Posterior.SLIP_SPREAD * factor);
    }

    /** What else may have been joined to the leads. */
    private record Joined(double factor, String words) {}

    private static List<Joined> joined(GroupReading reading) {
        boolean wholeLeg = reading.units().size()
                == reading.stage().layoutOf(reading.units().getFirst().leg()).count();
        if (!wholeLeg || reading.stage().connection().isBridge()) {
            return List.of();
        }
        if (reading.stage().connection() == Connection.DELTA) {
            return List.of(new Joined(
                    1.5,
                    "as one leg with the other two in series across it would read; open the delta and measure again"));
        }
        return List.of(
                new Joined(3.0, "as all three legs together would read; part the lines and measure again"),
                new Joined(0.5, "as two legs in series, line to line, would read; measure to the neutral"));
    }

    private static double of(List<Weighed> weighed, Hypothesis.Kind kind) {
        return weighed.stream()
                .filter(w -> w.candidate().kind() == kind)
                .mapToDouble(Weighed::probability)
                .sum();
    }

    private static Candidate best(List<Weighed> weighed, Hypothesis.Kind kind) {
        return weighed.stream()
                .filter(w -> w.candidate().kind() == kind)
                .max(Comparator.comparingDouble(Weighed::probability))
                .orElseThrow()
                .candidate();
    }

    /** Own earlier values of all units; else readings of like groups; else the nameplate. */
    private Reference reference(GroupReading reading) {
        Map<UnitPosition, Double> farads = new LinkedHashMap<>();
        double variance = 0.0;
        boolean own = true;
        for (UnitPosition unit : reading.units()) {
            Optional<Reference> reference = Optional.ofNullable(references.get(unit));
            own &= reference.map(Reference::isOwn).orElse(false);
            double value =
                    reference.map(Reference::farads).orElse(reading.type().capacitanceFarads());
            farads.put(unit, value);
            variance += Math.pow(reference.map(Reference::relativeSigma).orElse(0.0), 2.0);
        }
        if (own) {
            return new Reference.Factory(
                    reading.of(farads), Math.sqrt(variance) / reading.units().size());
        }
        double[] alike = all.stream()
                .filter(other -> !other.name().equals(reading.name())
                        && other.type().equals(reading.type())
                        && other.layout().equals(reading.layout()))
                .mapToDouble(GroupReading::farads)
                .filter(value -> value > 0.0)
                .toArray();
        if (alike.length >= FEWEST_ALIKE) {
            double median = Robust.median(alike);
            double batch = settings.batchSpread() / Math.sqrt(reading.units().size());
            double sigma = Math.hypot(Robust.sigma(alike) / median, batch);
            return new Reference.Mates(median, sigma, alike.length, "readings of like groups");
        }
        return new Reference.Nameplate(
                reading.perUnit() * reading.type().capacitanceFarads(),
                reading.type().tolerance().low(),
                reading.type().tolerance().high());
    }
}
