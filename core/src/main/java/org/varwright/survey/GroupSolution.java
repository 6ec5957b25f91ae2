package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import org.varwright.quantity.SymmetricEigen;

/**
 * What readings of units together say of the single units of one group (SRV-14).
 *
 * @param units in order
 * @param next units whose single reading would settle the rest: the fewest that do
 * @param worst largest residual, or how far a unit is below zero, in standard uncertainties; 0 where nothing is left over
 */
record GroupSolution(List<UnitValue> units, List<Integer> next, double worst) {
    /** Below this part of the largest eigenvalue a direction is not determined: the equations are sums of units, far from it or exactly on it. */
    private static final double RANK = 1e-9;

    /** A unit is determined where this part of it or less lies in directions that are not. */
    private static final double DETERMINED = 1e-9;

    GroupSolution {
        units = List.copyOf(units);
        next = List.copyOf(next);
    }

    /**
     * What is known of one unit.
     *
     * @param determined whether the readings determine it
     * @param farads its capacitance [F]; 0 where it is not determined
     * @param sigmaFarads standard uncertainty of it [F]; likewise
     * @param low at least [F]
     * @param high at most [F]; infinite where no reading holds it
     */
    record UnitValue(boolean determined, double farads, double sigmaFarads, double low, double high) {}

    /**
     * One reading.
     *
     * @param units indices of the units read together
     * @param farads what was read [F]
     * @param sigmaFarads standard uncertainty [F], above 0
     */
    record Equation(List<Integer> units, double farads, double sigmaFarads) {
        Equation {
            units = List.copyOf(units);
        }
    }

    /**
     * Solves for the units.
     *
     * <p><b>Model.</b> Parallel units add: {@code m_r = Σ C_i}. Weighted least squares on the row space of the equations: with {@code N = AᵀWA},
     * {@code C = N⁺AᵀWm}, {@code var(C_i) = (N⁺)_ii}; unit {@code i} is determined where it has no part in the null space of {@code N}. Bounds of the others from
     * {@code C ≥ 0} alone: {@code C_i ≤ m_r − Σ low}, {@code C_i ≥ m_r − Σ high}, until nothing changes. Each further single reading of a unit with a part in the
     * null space lowers its dimension by one, so as many as there are dimensions settle everything, and no fewer.
     * <p><b>Not modelled.</b> Errors common to all readings of one meter: they scale all units alike.
     * <p><b>Source.</b> First principles (linear least squares, pseudoinverse).
     */
    static GroupSolution of(int units, List<Equation> equations) {
        double[][] normal = new double[units][units];
        double[] right = new double[units];
        double scale =
                equations.stream().mapToDouble(Equation::sigmaFarads).max().orElse(1.0);
        for (Equation equation : equations) {
            double weight = Math.pow(scale / equation.sigmaFarads(), 2.0);
            for (int i : equation.units()) {
                right[i] += weight * equation.farads();
                for (int j : equation.units()) {
                    normal[i][j] += weight;
                }
            }
        }
        SymmetricEigen eigen = SymmetricEigen.of(normal);
        double largest = 0.0;
        for (int k = 0; k < units; k++) {
            largest = Math.max(largest, eigen.value(k));
        }
        double[] farads = new double[units];
        double[] variance = new double[units];
        List<double[]> free = new ArrayList<>();
        for (int k = 0; k < units; k++) {
            double[] vector = eigen.vector(k);
            if (largest <= 0.0 || eigen.value(k) <= RANK * largest) {
                free.add(vector);
                continue;
            }
            double along = 0.0;
            for (int i = 0; i < units; i++) {
                along += vector[i] * right[i];
            }
            for (int i = 0; i < units; i++) {
                farads[i] += vector[i] * along / eigen.value(k);
                variance[i] += vector[i] * vector[i] / eigen.value(k);
            }
        }
        double worst = worst(farads, equations);
        double[] sigma = new double[units];
        for (int i = 0; i < units; i++) {
            boolean determined = part(free, i) <= DETERMINED;
            farads[i] = determined ? farads[i] : Double.NaN;
            sigma[i] = determined ? scale * Math.sqrt(variance[i]) : Double.NaN;
            // less than nothing is left for the unit: the readings contradict each other
            worst = determined ? Math.max(worst, -farads[i] / sigma[i]) : worst;
        }
        double[][] bounds = bounds(farads, equations);
        List<UnitValue> values = new ArrayList<>();
        for (int i = 0; i < units; i++) {
            boolean determined = !Double.isNaN(farads[i]);
            values.add(new UnitValue(
                    determined, determined ? farads[i] : 0.0, determined ? sigma[i] : 0.0, bounds[0][i], bounds[1][i]));
        }
        return new GroupSolution(values, next(units, free), worst);
    }

    private static double worst(double[] farads, List<Equation> equations) {
        double worst = 0.0;
        for (Equation equation : equations) {
            double sum = 0.0;
            for (int i : equation.units()) {
                sum += farads[i];
            }
            worst = Math.max(worst, Math.abs(sum - equation.farads()) / equation.sigmaFarads());
        }
        return worst;
    }

    private static double part(List<double[]> free, int unit) {
        double part = 0.0;
        for (double[] vector : free) {
            part += vector[unit] * vector[unit];
        }
        return part;
    }

    private static double[][] bounds(double[] farads, List<Equation> equations) {
        double[] low = new double[farads.length];
        double[] high = new double[farads.length];
        for (int i = 0; i < farads.length; i++) {
            boolean known = !Double.isNaN(farads[i]);
            low[i] = known ? Math.max(0.0, farads[i]) : 0.0;
            high[i] = known ? Math.max(0.0, farads[i]) : Double.POSITIVE_INFINITY;
        }
        boolean changed = true;
        while (changed) {
            changed = false;
            for (Equation equation : equations) {
                for (int i : equation.units()) {
                    double others = 0.0;
                    double most = 0.0;
                    for (int j : equation.units()) {
                        others += j == i ? 0.0 : low[j];
                        most += j == i ? 0.0 : high[j];
                    }
                    double top = Math.max(0.0, equation.farads() - others);
                    double bottom = Math.max(0.0, equation.farads() - most);
                    boolean known = !Double.isNaN(farads[i]);
                    if (!known && top < high[i] - 1e-12 * equation.farads()) {
                        high[i] = top;
                        changed = true;
                    }
                    if (!known && bottom > low[i] + 1e-12 * equation.farads() && bottom <= high[i]) {
                        low[i] = bottom;
                        changed = true;
                    }
                }
            }
        }
        return new double[][] {low, high};
    }

    /** The unit with the largest part in what is not determined, then the largest of what is left, and so on. */
    private static List<Integer> next(int units, List<double[]> free) {
        List<double[]> left = new ArrayList<>(free);
        List<Integer> next = new ArrayList<>();
        while (!left.isEmpty()) {
            int best = 0;
            for (int i = 1; i < units; i++) {
                // equal to rounding, the first unit counts: the same answer in every home of the code
                if (part(left, i) > part(left, best) + 1e-9) {
                    best = i;
                }
            }
            next.add(best);
            left = without(left, best);
        }
        next.sort(Integer::compare);
        return List.copyOf(next);
    }

    /** An orthonormal basis of what is left of a space when one coordinate is known. */
    private static List<double[]> without(List<double[]> basis, int unit) {
        double size = Math.sqrt(part(basis, unit));
        double[] along = new double[basis.getFirst().length];
        for (double[] vector : basis) {
            for (int i = 0; i < along.length; i++) {
                along[i] += vector[unit] / size * vector[i];
            }
        }
        List<double[]> rest = new ArrayList<>();
        for (double[] vector : basis) {
            double[] reduced = vector.clone();
            remove(reduced, along);
            rest.forEach(other -> remove(reduced, other));
            double norm = Math.sqrt(dot(reduced, reduced));
            if (norm > 1e-6) {
                for (int i = 0; i < reduced.length; i++) {
                    reduced[i] /= norm;
                }
                rest.add(reduced);
            }
        }
        return rest;
    }

    private static void remove(double[] vector, double[] direction) {
        double along = dot(vector, direction);
        for (int i = 0; i < vector.length; i++) {
            vector[i] -= along * direction[i];
        }
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0.0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
