package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;
import org.junit.jupiter.api.Test;

/** Units from readings of units together, against the singular value decomposition of a general library (Hipparchus) and against the truth. */
class GroupSolutionOracleTest {
    @Test
    void solvesWhatAGeneralLibrarySolvesAndHoldsTheTruthInItsBounds() {
        int determined = 0;
        int open = 0;
        for (long seed = 1; seed <= 500; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int units = random.nextInt(2, 9);
            double[] truth = new double[units];
            for (int i = 0; i < units; i++) {
                truth[i] = random.nextInt(6) == 0 ? 0.0 : random.nextDouble(11e-6, 14e-6);
            }
            List<GroupSolution.Equation> equations = new ArrayList<>();
            for (int r = random.nextInt(1, units + 2); r > 0; r--) {
                List<Integer> together = new ArrayList<>();
                double sum = 0.0;
                for (int i = 0; i < units; i++) {
                    if (random.nextBoolean() || (i == units - 1 && together.isEmpty())) {
                        together.add(i);
                        sum += truth[i];
                    }
                }
                equations.add(new GroupSolution.Equation(together, sum, random.nextDouble(0.02e-6, 0.1e-6)));
            }
            GroupSolution solution = GroupSolution.of(units, equations);
            RealMatrix matrix = MatrixUtils.createRealMatrix(equations.size(), units);
            double[] right = new double[equations.size()];
            for (int r = 0; r < equations.size(); r++) {
                double weight = 1e-6 / equations.get(r).sigmaFarads();
                for (int i : equations.get(r).units()) {
                    matrix.setEntry(r, i, weight);
                }
                right[r] = weight * equations.get(r).farads();
            }
            SingularValueDecomposition svd = new SingularValueDecomposition(matrix);
            RealMatrix inverse = svd.getSolver().getInverse();
            double[] solved = inverse.operate(right);
            RealMatrix projection = inverse.multiply(matrix);
            for (int i = 0; i < units; i++) {
                boolean known = Math.abs(projection.getEntry(i, i) - 1.0) < 1e-6;
                assertEquals(known, solution.units().get(i).determined(), "seed " + seed + ", unit " + i);
                if (known) {
                    determined++;
                    assertEquals(solved[i], solution.units().get(i).farads(), 1e-12, "seed " + seed + ", unit " + i);
                    assertEquals(truth[i], solution.units().get(i).farads(), 1e-12, "seed " + seed + ", unit " + i);
                    double variance = inverse.multiply(inverse.transpose()).getEntry(i, i);
                    assertEquals(
                            1e-6 * Math.sqrt(variance), solution.units().get(i).sigmaFarads(), 1e-12, "seed " + seed);
                } else {
                    open++;
                }
                assertTrue(
                        truth[i] >= solution.units().get(i).low() - 1e-12
                                && truth[i] <= solution.units().get(i).high() + 1e-12,
                        "seed " + seed + ", unit " + i + " is outside its bounds");
            }
            assertTrue(solution.worst() < 1e-3, "seed " + seed + ": " + solution.worst());
            // as many further readings as there are directions left, and with them everything is known
            assertEquals(units - svd.getRank(), solution.next().size(), "seed " + seed);
            List<GroupSolution.Equation> more = new ArrayList<>(equations);
            solution.next().forEach(i -> more.add(new GroupSolution.Equation(List.of(i), truth[i], 0.05e-6)));
            GroupSolution settled = GroupSolution.of(units, more);
            for (int i = 0; i < units; i++) {
                assertEquals(truth[i], settled.units().get(i).farads(), 1e-12, "seed " + seed + ", unit " + i);
            }
        }
        assertTrue(determined > 200 && open > 200, determined + " determined, " + open + " open");
    }
}
