package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.varwright.bank.BankSketch;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;

/** The closed posterior against a naive twin that integrates over the unit's healthy capacitance by quadrature, and the normal distribution likewise. */
class PosteriorOracleTest {
    private static final double NOMINAL = 12e-6;

    @Test
    void posteriorAgreesWithQuadrature() {
        for (long seed = 1; seed <= 150; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            boolean fused = random.nextBoolean();
            boolean threePhase = random.nextInt(4) == 0;
            UnitType type = BankSketch.type(
                    "U",
                    300e3,
                    7960,
                    60,
                    new Tolerance(0.0, 0.1),
                    random.nextInt(0, 9),
                    random.nextInt(2, 14),
                    fused,
                    Optional.empty(),
                    threePhase ? Optional.of(InternalConnection.DELTA) : Optional.empty());
            List<Hypothesis.Prior> priors = Hypothesis.of(type, List.of(2, 3, 9), Priors.USUAL);
            Reference reference = switch (random.nextInt(3)) {
                case 0 -> new Reference.Factory(NOMINAL, random.nextDouble(0.002, 0.02));
                case 1 -> new Reference.Mates(NOMINAL, random.nextDouble(0.005, 0.03), 5, "the bank");
                default -> new Reference.Nameplate(NOMINAL, 0.0, random.nextDouble(0.01, 0.15));
            };
            double meter = random.nextDouble(0.002, 0.02);
            double farads = NOMINAL
                    * Math.exp(random.nextInt(5) == 0 ? random.nextDouble(-7.0, 7.0) : random.nextDouble(-0.4, 0.9));
            Posterior posterior = Posterior.of(farads, meter, reference, priors);
            double[] twin = twin(farads, meter, reference, priors);
            double sum = 0.0;
            for (int i = 0; i < twin.length; i++) {
                assertEquals(
                        twin[i],
                        posterior.weighted().get(i).probability(),
                        1e-6,
                        "seed " + seed + ", " + priors.get(i));
                sum += posterior.weighted().get(i).probability();
            }
            assertEquals(1.0, sum, 1e-12, "seed " + seed);
        }
    }

    @Test
    void priorsAddUpToOne() {
        UnitType type = BankSketch.type("U", 300e3, 7960, 60, new Tolerance(0.0, 0.1), 4, 12, true, Optional.empty());
        assertEquals(
                1.0,
                Hypothesis.of(type, List.of(2, 3), Priors.USUAL).stream()
                        .mapToDouble(Hypothesis.Prior::weight)
                        .sum(),
                1e-12);
    }

    @Test
    void normalDistributionAgreesWithQuadrature() {
        for (double x = -8.0; x <= 8.0; x += 0.37) {
            double from = -12.0;
            int steps = 40_000;
            double sum = 0.0;
            double h = (x - from) / steps;
            for (int i = 0; i < steps; i++) {
                double middle = from + (i + 0.5) * h;
                sum += Math.exp(-0.5 * middle * middle) * h / Math.sqrt(2.0 * Math.PI);
            }
            assertEquals(sum, Gauss.below(x), 2e-9, "x = " + x);
        }
        assertEquals(1.0, Gauss.below(-6.0) / 9.865876450377e-10, 1e-9, "tail at 6 standard deviations");
    }

    private static double[] twin(double farads, double meter, Reference reference, List<Hypothesis.Prior> priors) {
        double[] weights = new double[priors.size()];
        double sum = 0.0;
        for (int i = 0; i < weights.length; i++) {
            weights[i] = priors.get(i).weight()
                    * integral(farads, meter, reference, priors.get(i).hypothesis());
            sum += weights[i];
        }
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= sum;
        }
        return weights;
    }

    /** Midpoint rule over the healthy capacitance. */
    private static double integral(double farads, double meter, Reference reference, Hypothesis hypothesis) {
        double c0 = reference.farads();
        if (hypothesis instanceof Hypothesis.LeadsOpen) {
            return farads <= 0.05 * c0 ? 1.0 / (farads * Math.log(0.05 / 1e-6)) : 0.0;
        }
        if (hypothesis instanceof Hypothesis.FitsNothing) {
            return 1.0 / (farads * Math.log(1e12));
        }
        double factor = hypothesis.factor();
        double spread = switch (hypothesis.kind()) {
            case HEALTHY -> 0.0;
            case FAILED -> 0.03 * Math.abs(factor - 1.0);
            case IMPOSSIBLE -> 0.02 * factor;
        };
        double noise = Math.sqrt(Math.pow(meter * farads, 2) + Math.pow(spread * c0, 2));
        double low;
        double high;
        if (reference instanceof Reference.Nameplate plate) {
            low = plate.ratedFarads() * (1.0 + plate.low());
            high = plate.ratedFarads() * (1.0 + plate.high());
        } else {
            low = c0 * (1.0 - 10.0 * reference.relativeSigma());
            high = c0 * (1.0 + 10.0 * reference.relativeSigma());
        }
        int steps = 20_000;
        double h = (high - low) / steps;
        double sum = 0.0;
        for (int i = 0; i < steps; i++) {
            double c = low + (i + 0.5) * h;
            double density = reference instanceof Reference.Nameplate
                    ? 1.0 / (high - low)
                    : normal(c, c0, reference.relativeSigma() * c0);
            sum += density * normal(farads, factor * c, noise) * h;
        }
        return sum;
    }

    private static double normal(double x, double mean, double sigma) {
        return Math.exp(-0.5 * Math.pow((x - mean) / sigma, 2)) / (sigma * Math.sqrt(2.0 * Math.PI));
    }
}
