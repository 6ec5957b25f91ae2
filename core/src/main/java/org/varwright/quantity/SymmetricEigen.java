package org.varwright.quantity;

/**
 * Eigenvalues and orthonormal eigenvectors of a symmetric matrix by Jacobi's rotations: slow for large matrices, exact to rounding for the small ones here,
 * and the same on every machine.
 */
public final class SymmetricEigen {
    private static final int MOST_SWEEPS = 60;

    private final double[] values;
    private final double[][] vectors;

    private SymmetricEigen(double[] values, double[][] vectors) {
        this.values = values;
        this.vectors = vectors;
    }

    /**
     * Decomposes a matrix.
     *
     * <p><b>Accuracy.</b> Off-diagonal elements below 1e-17 of the largest on the diagonal.
     * <p><b>Source.</b> First principles (the classical method).
     *
     * @param symmetric square, element ij equal to element ji; not changed
     */
    public static SymmetricEigen of(double[][] symmetric) {
        int n = symmetric.length;
        double[][] a = new double[n][];
        double[][] v = new double[n][n];
        double scale = 0.0;
        for (int i = 0; i < n; i++) {
            a[i] = symmetric[i].clone();
            v[i][i] = 1.0;
            scale = Math.max(scale, Math.abs(a[i][i]));
        }
        for (int sweep = 0; sweep < MOST_SWEEPS && offDiagonal(a) > 1e-17 * scale; sweep++) {
            for (int p = 0; p < n - 1; p++) {
                for (int q = p + 1; q < n; q++) {
                    rotate(a, v, p, q);
                }
            }
        }
        double[] values = new double[n];
        for (int i = 0; i < n; i++) {
            values[i] = a[i][i];
        }
        return new SymmetricEigen(values, v);
    }

    public int size() {
        return values.length;
    }

    /** An eigenvalue; they are not sorted. */
    public double value(int k) {
        return values[k];
    }

    /** Component {@code i} of eigenvector {@code k}. */
    public double vector(int i, int k) {
        return vectors[i][k];
    }

    /** Eigenvector {@code k}, as a copy. */
    public double[] vector(int k) {
        double[] vector = new double[values.length];
        for (int i = 0; i < vector.length; i++) {
            vector[i] = vectors[i][k];
        }
        return vector;
    }

    private static double offDiagonal(double[][] a) {
        double largest = 0.0;
        for (int p = 0; p < a.length - 1; p++) {
            for (int q = p + 1; q < a.length; q++) {
                largest = Math.max(largest, Math.abs(a[p][q]));
            }
        }
        return largest;
    }

    private static void rotate(double[][] a, double[][] v, int p, int q) {
        if (a[p][q] == 0.0) {
            return;
        }
        double theta = (a[q][q] - a[p][p]) / (2.0 * a[p][q]);
        double t = (theta >= 0.0 ? 1.0 : -1.0) / (Math.abs(theta) + Math.sqrt(theta * theta + 1.0));
        double c = 1.0 / Math.sqrt(t * t + 1.0);
        double s = t * c;
        for (int k = 0; k < a.length; k++) {
            double akp = a[k][p];
            double akq = a[k][q];
            a[k][p] = c * akp - s * akq;
            a[k][q] = s * akp + c * akq;
        }
        for (int k = 0; k < a.length; k++) {
            double apk = a[p][k];
            double aqk = a[q][k];
            a[p][k] = c * apk - s * aqk;
            a[q][k] = s * apk + c * aqk;
            double vkp = v[k][p];
            double vkq = v[k][q];
            v[k][p] = c * vkp - s * vkq;
            v[k][q] = s * vkp + c * vkq;
        }
    }
}
