package org.varwright.transients;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/** {@code exp(M·t)}: as a matrix for many equal steps, or acting on one state for a single odd one. */
final class Exponential {
    /** Terms of the series; with a norm of at most one half the first term left out is below 1e-23. */
    private static final int TERMS = 18;

    private static final double LARGEST_NORM = 0.5;

    /** More terms than any series here needs. */
    private static final int MOST_TERMS = 400;

    private Exponential() {}

    /**
     * The matrix exponential by scaling, Taylor series and squaring.
     *
     * @param m square
     * @param seconds any
     */
    static DMatrixRMaj of(DMatrixRMaj m, double seconds) {
        int n = m.numRows;
        double norm = norm(m) * Math.abs(seconds);
        int squarings = Math.max(0, (int) Math.ceil(Math.log(Math.max(norm, 1e-300) / LARGEST_NORM) / Math.log(2.0)));
        DMatrixRMaj scaled = m.copy();
        CommonOps_DDRM.scale(seconds / Math.pow(2.0, squarings), scaled);
        DMatrixRMaj sum = CommonOps_DDRM.identity(n);
        for (int k = TERMS; k >= 1; k--) {
            // Horner: I + (A/k)·(…)
            DMatrixRMaj next = new DMatrixRMaj(n, n);
            CommonOps_DDRM.mult(1.0 / k, scaled, sum, next);
            for (int i = 0; i < n; i++) {
                next.add(i, i, 1.0);
            }
            sum = next;
        }
        for (int s = 0; s < squarings; s++) {
            DMatrixRMaj square = new DMatrixRMaj(n, n);
            CommonOps_DDRM.mult(sum, sum, square);
            sum = square;
        }
        return sum;
    }

    /** {@code exp(M·seconds)·z} for a short time, by its series, until a term adds nothing. */
    static double[] act(DMatrixRMaj m, double seconds, double[] z) {
        int parts = Math.max(1, (int) Math.ceil(norm(m) * Math.abs(seconds) / 4.0));
        double[] state = z.clone();
        for (int p = 0; p < parts; p++) {
            double[] term = state.clone();
            for (int k = 1; k < MOST_TERMS; k++) {
                term = times(m, term);
                double added = 0.0;
                double size = 0.0;
                for (int i = 0; i < term.length; i++) {
                    term[i] *= seconds / parts / k;
                    state[i] += term[i];
                    added = Math.max(added, Math.abs(term[i]));
                    size = Math.max(size, Math.abs(state[i]));
                }
                if (added <= 1e-18 * size) {
                    break;
                }
            }
        }
        return state;
    }

    static double[] times(DMatrixRMaj m, double[] z) {
        double[] out = new double[z.length];
        times(m, z, out);
        return out;
    }

    static void times(DMatrixRMaj m, double[] z, double[] out) {
        int n = z.length;
        double[] data = m.data;
        int at = 0;
        for (int r = 0; r < n; r++) {
            double sum = 0.0;
            for (int c = 0; c < n; c++) {
                sum += data[at++] * z[c];
            }
            out[r] = sum;
        }
    }

    /** The product with three states at once: their sums don't wait for one another. */
    static void timesThree(DMatrixRMaj m, double[][] z, double[][] out) {
        double[] first = z[0];
        double[] second = z[1];
        double[] third = z[2];
        int n = first.length;
        double[] data = m.data;
        int at = 0;
        for (int r = 0; r < n; r++) {
            double a = 0.0;
            double b = 0.0;
            double c = 0.0;
            for (int i = 0; i < n; i++) {
                double factor = data[at++];
                a += factor * first[i];
                b += factor * second[i];
                c += factor * third[i];
            }
            out[0][r] = a;
            out[1][r] = b;
            out[2][r] = c;
        }
    }

    static double dot(double[] row, double[] z) {
        double sum = 0.0;
        for (int i = 0; i < row.length; i++) {
            sum += row[i] * z[i];
        }
        return sum;
    }

    private static double norm(DMatrixRMaj m) {
        double largest = 0.0;
        for (int c = 0; c < m.numCols; c++) {
            double sum = 0.0;
            for (int r = 0; r < m.numRows; r++) {
                sum += Math.abs(m.get(r, c));
            }
            largest = Math.max(largest, sum);
        }
        return largest;
    }
}
