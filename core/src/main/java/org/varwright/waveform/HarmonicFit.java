package org.varwright.waveform;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
import org.varwright.quantity.Complex;

/**
 * The sum of a mean and harmonics of a known frequency that comes nearest to some samples.
 *
 * <p><b>Model.</b> Least squares of {@code x = dc + Σ √2·(re_k·cos kωt − im_k·sin kωt)} over the samples of a window (REC-1). Over a whole number of samples
 * a cycle this is the discrete Fourier transform; at any other frequency, where that transform leaks, it still gives the phasor of a pure wave exactly.
 *
 * <p><b>Not modelled.</b> Orders above those asked for; frequencies between the orders.
 *
 * <p><b>Accuracy.</b> Rounding for signals of the model.
 *
 * <p><b>Source.</b> First principles.
 */
final class HarmonicFit {
    private static final double ROOT_2 = Math.sqrt(2.0);

    /** Below this the samples can't tell the orders apart. */
    private static final double LEAST_QUALITY = 1e-10;

    private HarmonicFit() {}

    /**
     * What samples consist of; empty where there are too few for the orders.
     *
     * @param x samples
     * @param angles of the fundamental at each, from the middle of the window [rad]
     * @param orders 1 or more
     */
    static Optional<Components> of(double[] x, double[] angles, int orders) {
        int n = x.length;
        int unknowns = 2 * orders + 1;
        if (orders < 1 || n < unknowns) {
            return Optional.empty();
        }
        double[][] rows = new double[n][];
        DMatrixRMaj normal = new DMatrixRMaj(unknowns, unknowns);
        DMatrixRMaj right = new DMatrixRMaj(unknowns, 1);
        for (int i = 0; i < n; i++) {
            double[] row = row(angles[i], orders);
            rows[i] = row;
            for (int r = 0; r < unknowns; r++) {
                right.data[r] += row[r] * x[i];
                for (int c = 0; c <= r; c++) {
                    normal.data[r * unknowns + c] += row[r] * row[c];
                }
            }
        }
        for (int r = 0; r < unknowns; r++) {
            for (int c = r + 1; c < unknowns; c++) {
                normal.data[r * unknowns + c] = normal.data[c * unknowns + r];
            }
        }
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.symmPosDef(unknowns);
        if (!solver.setA(normal) || solver.quality() < LEAST_QUALITY) {
            return Optional.empty();
        }
        DMatrixRMaj solution = new DMatrixRMaj(unknowns, 1);
        solver.solve(right, solution);
        return Optional.of(components(x, rows, solution.data));
    }

    /** The columns at one angle: 1, then √2·cos kφ and −√2·sin kφ, each from the two before it. */
    private static double[] row(double angle, int orders) {
        double[] row = new double[2 * orders + 1];
        double cosine = Math.cos(angle);
        double sine = Math.sin(angle);
        double c = cosine;
        double s = sine;
        row[0] = 1.0;
        for (int k = 1; k <= orders; k++) {
            row[2 * k - 1] = ROOT_2 * c;
            row[2 * k] = -ROOT_2 * s;
            double next = c * cosine - s * sine;
            s = s * cosine + c * sine;
            c = next;
        }
        return row;
    }

    private static Components components(double[] x, double[][] rows, double[] c) {
        double squares = 0.0;
        double rest = 0.0;
        double peak = 0.0;
        for (int i = 0; i < x.length; i++) {
            double left = x[i];
            for (int r = 0; r < c.length; r++) {
                left -= rows[i][r] * c[r];
            }
            squares += x[i] * x[i];
            rest += left * left;
            peak = Math.max(peak, Math.abs(x[i]));
        }
        List<Complex> found = new ArrayList<>();
        for (int k = 1; 2 * k < c.length; k++) {
            found.add(new Complex(c[2 * k - 1], c[2 * k]));
        }
        return new Components(c[0], found, Math.sqrt(squares / x.length), peak, Math.sqrt(rest / x.length));
    }
}
