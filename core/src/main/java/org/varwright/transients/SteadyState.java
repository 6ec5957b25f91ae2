package org.varwright.transients;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * The sinusoidal state that a circuit settles in: {@code x = P·cos θ + Q·sin θ} in the order of a topology's state, cosine and sine included (SWI-11).
 */
final class SteadyState {
    private final double[] cosine;
    private final double[] sine;

    private SteadyState(double[] cosine, double[] sine) {
        this.cosine = cosine;
        this.sine = sine;
    }

    /**
     * The settled state.
     *
     * <p>With {@code x = Re(X·e^{jθ})} and the forcing {@code F}: {@code (jωI − A)·X = F}, solved in real parts.
     *
     * @throws IllegalArgumentException where the circuit resonates at the sources' frequency without damping
     */
    static SteadyState of(Topology topology, double omega) {
        int size = topology.size();
        int skip = topology.cosine();
        int n = size - 3;
        double[] real = new double[2 * n];
        DMatrixRMaj system = new DMatrixRMaj(2 * n, 2 * n);
        for (int r = 0; r < n; r++) {
            int row = r < skip ? r : r + 3;
            for (int c = 0; c < n; c++) {
                double a = topology.matrix().get(row, c < skip ? c : c + 3);
                system.set(r, c, -a);
                system.set(n + r, n + c, -a);
            }
            system.set(r, n + r, -omega);
            system.set(n + r, r, omega);
            real[r] = topology.matrix().get(row, topology.cosine());
            real[n + r] = -topology.matrix().get(row, topology.sine());
        }
        DMatrixRMaj right = new DMatrixRMaj(2 * n, 1);
        right.setData(real);
        DMatrixRMaj solution = new DMatrixRMaj(2 * n, 1);
        double[] p = new double[size];
        double[] q = new double[size];
        if (n > 0) {
            LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.lu(2 * n);
            if (!solver.setA(system)) {
                throw new IllegalArgumentException("the circuit resonates at the frequency of its sources");
            }
            solver.solve(right, solution);
            for (int r = 0; r < n; r++) {
                int row = r < skip ? r : r + 3;
                p[row] = solution.get(r, 0);
                q[row] = -solution.get(n + r, 0);
            }
        }
        p[topology.cosine()] = 1.0;
        q[topology.sine()] = 1.0;
        return new SteadyState(p, q);
    }

    /** P; not to be written to. */
    double[] cosine() {
        return cosine;
    }

    /** Q; not to be written to. */
    double[] sine() {
        return sine;
    }

    /** The state at an angle of the clock [rad], without the one. */
    double[] at(double radians) {
        double[] z = new double[cosine.length];
        for (int i = 0; i < z.length; i++) {
            z[i] = cosine[i] * Math.cos(radians) + sine[i] * Math.sin(radians);
        }
        return z;
    }
}
