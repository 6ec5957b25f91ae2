package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.distribution.RealDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.UniformRealDistribution;
import org.junit.jupiter.api.Test;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;

/** The closed posterior against numerical integration with a general statistics library (Hipparchus), which knows nothing of capacitors. */
class PosteriorLibraryOracleTest {
    private static final double NOMINAL = 12e-6;
    private static final int PIECES = 40;
    private static final GaussIntegratorFactory GAUSS = new GaussIntegratorFactory();

    @Test
    void posteriorAgreesWithNumericalIntegration() {
        for (long seed = 1; seed <= 300; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            boolean fused = random.nextBoolean();
            UnitType type = BankSketch.type(
                    "U",
                    300e3,
                    7960,
                    60,
                    new Tolerance(0.0, 0.1),
                    random.nextInt(2, 9),
                    random.nextInt(2, 14),
                    fused,
                    Optional.empty());
            List<Hypothesis.Prior> priors = Hypothesis.of(type, List.of(2, 3), Priors.USUAL);
            Reference reference = switch (random.nextInt(4)) {
                case 0 -> new Reference.Factory(NOMINAL, random.nextDouble(0.002, 0.02));
                case 1 -> new Reference.Earlier(NOMINAL, random.nextDouble(0.002, 0.02), "a visit");
                case 2 -> new Reference.Mates(NOMINAL, random.nextDouble(0.005, 0.03), 5, "the bank");
                default -> new Reference.Nameplate(NOMINAL, 0.0, random.nextDouble(0.01, 0.15));
            };
            double meter = random.nextDouble(0.002, 0.02);
            double farads = NOMINAL * Math.exp(random.nextDouble(-0.3, 0.8));
            Posterior posterior = Posterior.of(farads, meter, reference, priors);
            double[] twin = new double[priors.size()];
            double sum = 0.0;
            for (int i = 0; i < twin.length; i++) {
                twin[i] = priors.get(i).weight()
                        * evidence(farads, meter, reference, priors.get(i).hypothesis());
                sum += twin[i];
            }
            for (int i = 0; i < twin.length; i++) {
                assertEquals(
                        twin[i] / sum,
                        posterior.weighted().get(i).probability(),
                        1e-8,
                        "seed " + seed + ", " + priors.get(i).hypothesis());
            }
        }
    }

    @Test
    void theNormalDistributionAgrees() {
        NormalDistribution normal = new NormalDistribution(0.0, 1.0);
        for (double x = -8.0; x <= 8.0; x += 0.173) {
            assertEquals(normal.cumulativeProbability(x), Gauss.below(x), 1e-14, "x = " + x);
        }
    }

    /** ∫ p(c)·p(m | f·c) dc, both densities from the library. */
    private static double evidence(double farads, double meter, Reference reference, Hypothesis hypothesis) {
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
        NormalDistribution noise = new NormalDistribution(0.0, Math.hypot(meter * farads, spread * c0));
        double reach = 10.0 * reference.relativeSigma() * c0;
        RealDistribution healthy;
        double low;
        double high;
        if (reference instanceof Reference.Nameplate plate) {
            low = plate.ratedFarads() * (1.0 + plate.low());
            high = plate.ratedFarads() * (1.0 + plate.high());
            healthy = new UniformRealDistribution(low, high);
        } else {
            low = c0 - reach;
            high = c0 + reach;
            healthy = new NormalDistribution(c0, reference.relativeSigma() * c0);
        }
        double whole = 0.0;
        for (int piece = 0; piece < PIECES; piece++) {
            GaussIntegrator rule =
                    GAUSS.legendre(24, low + (high - low) * piece / PIECES, low + (high - low) * (piece + 1) / PIECES);
            whole += rule.integrate(c -> healthy.density(c) * noise.density(farads - factor * c));
        }
        return whole;
    }
}
