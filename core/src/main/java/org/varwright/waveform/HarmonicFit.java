package org.varwright.waveform;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
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
    private final int samples;
    private final int orders;
    /** One row an unknown: dc, then re and im of each order. */
    private final double[][] rows;

    private HarmonicFit(int samples, int orders, double[][] rows) {
        this.samples = samples;
        this.orders = orders;
        this.rows = rows;
    }

    /** Even samples around the middle of the window; empty where there are too few for the orders. */
    static Optional<HarmonicFit> even(int samples, double radiansPerStep, int orders) {
        double[] angles = new double[samples];
        for (int i = 0; i < samples; i++) {
            angles[i] = (i - 0.5 * (samples - 1)) * radiansPerStep;
        }
        return at(angles, orders);
    }

    /**
     * Samples at any angles of the fundamental.
     *
     * @param angles from the middle of the window [rad]
     */
    static Optional<HarmonicFit> at(double[] angles, int orders) {
        int n = angles.length;
        int unknowns = 2 * orders + 1;
        if (orders < 1 || n < unknowns) {
            return Optional.empty();
        }
        DMatrixRMaj a = new DMatrixRMaj(n, unknowns);
        for (int i = 0; i < n; i++) {
            a.set(i, 0, 1.0);
            for (int k = 1; k <= orders; k++) {
                a.set(i, 2 * k - 1, Math.sqrt(2.0) * Math.cos(k * angles[i]));
                a.set(i, 2 * k, -Math.sqrt(2.0) * Math.sin(k * angles[i]));
            }
        }
        DMatrixRMaj normal = new DMatrixRMaj(unknowns, unknowns);
        CommonOps_DDRM.multTransA(a, a, normal);
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.symmPosDef(unknowns);
        if (!solver.setA(normal) || solver.quality() < 1e-10) {
            return Optional.empty();
        }
        DMatrixRMaj transposed = new DMatrixRMaj(unknowns, n);
        CommonOps_DDRM.transpose(a, transposed);
        DMatrixRMaj inverse = new DMatrixRMaj(unknowns, n);
        solver.solve(transposed, inverse);
        double[][] rows = new double[unknowns][n];
        for (int r = 0; r < unknowns; r++) {
            System.arraycopy(inverse.data, r * n, rows[r], 0, n);
        }
        return Optional.of(new HarmonicFit(n, orders, rows));
    }

    int samples() {
        return samples;
    }

    /** The fundamental alone, with the other orders fitted beside it; NaN where a sample is missing. */
    Complex fundamental(Signal signal, int from) {
        return new Complex(dot(rows[1], signal, from), dot(rows[2], signal, from));
    }

    private double dot(double[] row, Signal signal, int from) {
        double sum = 0.0;
        for (int i = 0; i < samples; i++) {
            sum += row[i] * signal.value(from + i);
        }
        return sum;
    }

    Components components(double[] x, double[] angles) {
        double[] c = new double[rows.length];
        double squares = 0.0;
        double peak = 0.0;
        for (int i = 0; i < samples; i++) {
            for (int r = 0; r < c.length; r++) {
                c[r] += rows[r][i] * x[i];
            }
            squares += x[i] * x[i];
            peak = Math.max(peak, Math.abs(x[i]));
        }
        List<Complex> found = new ArrayList<>();
        for (int k = 1; k <= orders; k++) {
            found.add(new Complex(c[2 * k - 1], c[2 * k]));
        }
        double rest = 0.0;
        for (int i = 0; i < samples; i++) {
            double left = x[i] - c[0];
            for (int k = 1; k <= orders; k++) {
                left -= Math.sqrt(2.0) * (c[2 * k - 1] * Math.cos(k * angles[i]) - c[2 * k] * Math.sin(k * angles[i]));
            }
            rest += left * left;
        }
        return new Components(c[0], found, Math.sqrt(squares / samples), peak, Math.sqrt(rest / samples));
    }
}
