package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;

/**
 * What is believed of a unit after its reading.
 *
 * @param weighted every explanation with its probability, in the order in which they were tried; the probabilities add up to 1
 */
public record Posterior(List<Weighted> weighted) {
    /** The span over which a reading that fits nothing may lie, in decades about the reference. */
    static final double DECADES = 12.0;

    /** Readings below this part of the reference count as leads that made no contact. */
    private static final double OPEN_PART = 0.05;

    /** Readings below this part of the reference are all as good as zero. */
    private static final double LEAST_PART = 1e-6;

    /** How far a failure strays from its ideal factor, as a part of the step. */
    static final double STEP_SPREAD = 0.03;

    /** How far a sum of neighbours or a slip of the range strays, because the others are not known as well. */
    static final double SLIP_SPREAD = 0.02;

    public Posterior {
        weighted = List.copyOf(weighted);
    }

    /**
     * An explanation with its probability.
     *
     * @param hypothesis the explanation
     * @param probability 0 to 1
     */
    public record Weighted(Hypothesis hypothesis, double probability) {}

    /**
     * Probabilities of all explanations of one reading.
     *
     * <p><b>Model.</b> Bayes: {@code P(h|m) ∝ P(h)·∫ p(c)·N(m; f_h·c, (u·m)² + s_h²) dc} (SRV-4), {@code c} the capacitance of the healthy unit (normal about
     * a factory value or the mates' median, uniform over a nameplate's tolerance), {@code f_h} of SRV-2, {@code u} the meter, {@code s_h} 3 % of the step for a
     * failure and 2 % for a slip. Open leads: log-uniform up to 5 % of the reference. Fits nothing: log-uniform over twelve decades.
     * <p><b>Not modelled.</b> Two explanations at once.
     * <p><b>Accuracy.</b> The integral is closed (normal with normal, uniform with normal); {@code PosteriorOracleTest} has it by quadrature to 1e-6.
     * <p><b>Source.</b> First principles.
     *
     * @param farads the reading, corrected for temperature [F], 0 or more
     * @param meterSigma standard uncertainty of the meter, as a part of the reading
     * @param reference what a healthy unit would read
     * @param priors every explanation
     */
    static Posterior of(double farads, double meterSigma, Reference reference, List<Hypothesis.Prior> priors) {
        return ofAbsolute(farads, meterSigma * farads, reference, priors);
    }

    /** The same with the standard uncertainty of the reading in farads. */
    static Posterior ofAbsolute(double farads, double sigmaFarads, Reference reference, List<Hypothesis.Prior> priors) {
        double[] weight = new double[priors.size()];
        double sum = 0.0;
        double floor = 1e-9 * reference.farads();
        for (int i = 0; i < weight.length; i++) {
            Hypothesis.Prior prior = priors.get(i);
            weight[i] =
                    prior.weight() * likelihood(prior.hypothesis(), farads, Math.max(sigmaFarads, floor), reference);
            sum += weight[i];
        }
        List<Weighted> all = new ArrayList<>();
        for (int i = 0; i < weight.length; i++) {
            all.add(new Weighted(priors.get(i).hypothesis(), weight[i] / sum));
        }
        return new Posterior(all);
    }

    private static double likelihood(Hypothesis hypothesis, double farads, double meterFarads, Reference reference) {
        double factor = hypothesis.factor();
        return switch (hypothesis) {
            case Hypothesis.LeadsOpen ignored ->
                farads <= OPEN_PART * reference.farads()
                        ? 1.0 / (Math.max(farads, LEAST_PART * reference.farads()) * Math.log(OPEN_PART / LEAST_PART))
                        : 0.0;
            case Hypothesis.FitsNothing ignored ->
                1.0 / (Math.max(farads, LEAST_PART * reference.farads()) * DECADES * Math.log(10.0));
            case Hypothesis.Healthy ignored -> scaled(factor, 0.0, farads, meterFarads, reference);
            case Hypothesis.SectionsShorted ignored ->
                scaled(factor, STEP_SPREAD * (factor - 1.0), farads, meterFarads, reference);
            case Hypothesis.ElementsOut ignored ->
                scaled(factor, STEP_SPREAD * (1.0 - factor), farads, meterFarads, reference);
            case Hypothesis.WrongRange ignored -> scaled(factor, SLIP_SPREAD * factor, farads, meterFarads, reference);
            case Hypothesis.NeighbourConnected ignored ->
                scaled(factor, SLIP_SPREAD * factor, farads, meterFarads, reference);
            case Hypothesis.WrongTerminals ignored ->
                scaled(factor, SLIP_SPREAD * factor, farads, meterFarads, reference);
        };
    }

    /** Density of a reading whose mean is {@code factor} times the healthy capacitance. */
    static double scaled(double factor, double spread, double farads, double meterFarads, Reference reference) {
        double noise = Math.hypot(meterFarads, spread * reference.farads());
        return switch (reference) {
            case Reference.Factory factory ->
                normal(farads, factor * factory.farads(), noise, factor * factory.sigma() * factory.farads());
            case Reference.Earlier earlier ->
                normal(farads, factor * earlier.farads(), noise, factor * earlier.sigma() * earlier.farads());
            case Reference.Mates mates ->
                normal(farads, factor * mates.farads(), noise, factor * mates.sigma() * mates.farads());
            case Reference.Nameplate plate -> {
                double low = factor * plate.ratedFarads() * (1.0 + plate.low());
                double high = factor * plate.ratedFarads() * (1.0 + plate.high());
                yield high - low < 1e-9 * high
                        ? normal(farads, low, noise, 0.0)
                        : (Gauss.below((high - farads) / noise) - Gauss.below((low - farads) / noise)) / (high - low);
            }
        };
    }

    private static double normal(double x, double mean, double sigma, double otherSigma) {
        double whole = Math.hypot(sigma, otherSigma);
        double z = (x - mean) / whole;
        return Math.exp(-0.5 * z * z) / (whole * Math.sqrt(2.0 * Math.PI));
    }

    /** Probability of a kind of explanation. */
    public double of(Hypothesis.Kind kind) {
        return weighted.stream()
                .filter(w -> w.hypothesis().kind() == kind)
                .mapToDouble(Weighted::probability)
                .sum();
    }

    /** The most probable explanation of a kind. */
    public Weighted best(Hypothesis.Kind kind) {
        return best(weighted.stream().filter(w -> w.hypothesis().kind() == kind).toList());
    }

    private static Weighted best(List<Weighted> among) {
        Weighted best = among.getFirst();
        for (Weighted candidate : among) {
            if (candidate.probability() > best.probability()) {
                best = candidate;
            }
        }
        return best;
    }
}
