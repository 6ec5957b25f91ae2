package org.varwright.network;

import java.util.Optional;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.decompose.lu.LUDecompositionAlt_ZDRM;

/** Complex LU factors of a square matrix whose rows were scaled first, so that a pivot is judged against its row and not against 1. Immutable. */
final class LuFactors {
    /** A pivot below this part of the largest entry of its scaled row (which is 1) counts as zero. */
    static final double SMALLEST_PIVOT = 1e-13;

    private final int size;
    private final double[] lu;
    private final int[] pivot;
    private final double[] rowScale;

    private LuFactors(int size, double[] lu, int[] pivot, double[] rowScale) {
        this.size = size;
        this.lu = lu;
        this.pivot = pivot;
        this.rowScale = rowScale;
    }

    /** The factors; empty where the matrix is singular to working accuracy. The matrix is changed. */
    static Optional<LuFactors> of(ZMatrixRMaj matrix) {
        int n = matrix.numRows;
        double[] scale = new double[n];
        for (int r = 0; r < n; r++) {
            double largest = 0.0;
            for (int c = 0; c < n; c++) {
                largest = Math.max(largest, Math.hypot(matrix.getReal(r, c), matrix.getImag(r, c)));
            }
            if (!(largest > 0.0) || !Double.isFinite(largest)) {
                return Optional.empty();
            }
            scale[r] = 1.0 / largest;
            for (int c = 0; c < n; c++) {
                matrix.set(r, c, matrix.getReal(r, c) * scale[r], matrix.getImag(r, c) * scale[r]);
            }
        }
        LUDecompositionAlt_ZDRM decomposition = new LUDecompositionAlt_ZDRM();
        if (!decomposition.decompose(matrix)) {
            return Optional.empty();
        }
        double[] lu = decomposition.getLU().data.clone();
        for (int i = 0; i < n; i++) {
            int at = 2 * (i * n + i);
            if (!(Math.hypot(lu[at], lu[at + 1]) > SMALLEST_PIVOT)) {
                return Optional.empty();
            }
        }
        return Optional.of(new LuFactors(n, lu, decomposition.getPivot().clone(), scale));
    }

    /** Solution for one right side; real and imaginary parts alternate. */
    double[] solve(double[] right) {
        double[] x = new double[2 * size];
        for (int i = 0; i < size; i++) {
            int from = pivot[i];
            x[2 * i] = right[2 * from] * rowScale[from];
            x[2 * i + 1] = right[2 * from + 1] * rowScale[from];
        }
        for (int i = 0; i < size; i++) {
            subtract(x, i, 0, i);
        }
        for (int i = size - 1; i >= 0; i--) {
            subtract(x, i, i + 1, size);
            int at = 2 * (i * size + i);
            double re = lu[at];
            double im = lu[at + 1];
            double norm = re * re + im * im;
            double xr = x[2 * i];
            double xi = x[2 * i + 1];
            x[2 * i] = (xr * re + xi * im) / norm;
            x[2 * i + 1] = (xi * re - xr * im) / norm;
        }
        return x;
    }

    /** {@code x_i −= Σ lu_ij·x_j} over {@code first ≤ j < end}. */
    private void subtract(double[] x, int i, int first, int end) {
        double re = x[2 * i];
        double im = x[2 * i + 1];
        int at = 2 * (i * size + first);
        for (int j = first; j < end; j++) {
            double lr = lu[at++];
            double li = lu[at++];
            re -= lr * x[2 * j] - li * x[2 * j + 1];
            im -= lr * x[2 * j + 1] + li * x[2 * j];
        }
        x[2 * i] = re;
        x[2 * i + 1] = im;
    }
}
