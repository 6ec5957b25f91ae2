package org.varwright.transients;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;

/**
 * Natural oscillations of a circuit, resistances left out: {@code K·φ = ω²·(TᵀLT)·φ} with {@code K = Σ 1/C} around the loops (SWI-12).
 */
final class Modes {
    /** Frequencies closer than this part count as one oscillation. */
    private static final double SAME = 0.01;

    /** Below this [rad/s] a mode is a current that doesn't oscillate. */
    private static final double SLOWEST = 1.0;

    /**
     * One oscillation in a current.
     *
     * @param hertz natural frequency
     * @param amperes amplitude in the current looked at
     */
    record Oscillation(double hertz, double amperes) {}

    private final Topology topology;
    private final double[] radians;
    private final double[][] shapes;

    Modes(SwitchedCircuit circuit, Topology topology) {
        this.topology = topology;
        int n = topology.loopCount();
        DMatrixRMaj k = new DMatrixRMaj(n, n);
        for (int b : topology.capacitors()) {
            double[] share = topology.loopsOf(b);
            double elastance = 1.0 / circuit.branches().get(b).farads().orElseThrow();
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n && share[i] != 0.0; j++) {
                    k.add(i, j, share[i] * elastance * share[j]);
                }
            }
        }
        radians = new double[n];
        shapes = new double[n][n];
        if (n > 0) {
            solve(k);
        }
    }

    private void solve(DMatrixRMaj k) {
        int n = k.numRows;
        CholeskyDecomposition_F64<DMatrixRMaj> cholesky = DecompositionFactory_DDRM.chol(n, true);
        if (!cholesky.decompose(topology.inductance().copy())) {
            throw new IllegalArgumentException("a loop of the circuit holds no inductance");
        }
        DMatrixRMaj inverse = new DMatrixRMaj(n, n);
        CommonOps_DDRM.invert(cholesky.getT(null), inverse);
        DMatrixRMaj half = new DMatrixRMaj(n, n);
        DMatrixRMaj symmetric = new DMatrixRMaj(n, n);
        CommonOps_DDRM.mult(inverse, k, half);
        CommonOps_DDRM.multTransB(half, inverse, symmetric);
        EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(n, true, true);
        if (!eigen.decompose(symmetric)) {
            throw new IllegalArgumentException("the natural frequencies of the circuit can't be found");
        }
        for (int m = 0; m < n; m++) {
            radians[m] = Math.sqrt(Math.max(0.0, eigen.getEigenvalue(m).getReal()));
            DMatrixRMaj vector = eigen.getEigenVector(m);
            DMatrixRMaj shape = new DMatrixRMaj(n, 1);
            CommonOps_DDRM.multTransA(inverse, vector, shape);
            shapes[m] = shape.data.clone();
        }
    }

    /** Highest natural frequency [rad/s]; 0 where nothing oscillates. */
    double highestRadians() {
        double highest = 0.0;
        for (double r : radians) {
            highest = Math.max(highest, r);
        }
        return highest;
    }

    /**
     * Oscillations in a current after a change, strongest first.
     *
     * @param row of the current
     * @param free the state less the settled state, at the change
     */
    List<Oscillation> in(double[] row, double[] free) {
        int n = radians.length;
        int first = topology.firstLoop();
        double[] slope = Exponential.times(topology.matrix(), free);
        List<double[]> found = new ArrayList<>();
        for (int m = 0; m < n; m++) {
            if (radians[m] < SLOWEST) {
                continue;
            }
            double now = 0.0;
            double next = 0.0;
            double seen = 0.0;
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    double weight = shapes[m][i] * topology.inductance().get(i, j);
                    now += weight * free[first + j];
                    next += weight * slope[first + j];
                }
                seen += row[first + i] * shapes[m][i];
            }
            add(found, radians[m], seen * now, seen * next / radians[m]);
        }
        List<Oscillation> oscillations = new ArrayList<>();
        for (double[] f : found) {
            oscillations.add(new Oscillation(f[0] / (2.0 * Math.PI), Math.hypot(f[1], f[2])));
        }
        oscillations.sort(
                Comparator.comparingDouble(Oscillation::amperes).reversed().thenComparingDouble(Oscillation::hertz));
        return oscillations;
    }

    /** Modes of (nearly) one frequency swing together: their parts add as phasors. */
    private static void add(List<double[]> found, double omega, double cosine, double sine) {
        for (double[] f : found) {
            if (Math.abs(f[0] - omega) <= SAME * omega) {
                f[1] += cosine;
                f[2] += sine;
                return;
            }
        }
        found.add(new double[] {omega, cosine, sine});
    }
}
