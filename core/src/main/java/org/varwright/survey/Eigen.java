package org.varwright.survey;

/** Eigenvalues and orthonormal eigenvectors of a symmetric matrix. */
final class Eigen {
    private static final int MOST_SWEEPS = 60;

    private final double[] values;
    private final double[][] columns;

    private Eigen(double[] values, double[][] columns) {
        this.values = values;
        this.columns = columns;
    }

    /** An eigenvalue; they are not sorted. */
    double value(int k) {
        return values[k];
    }

    /** The eigenvector that goes with it. */
    double[] vector(int k) {
        double[] vector = new double[values.length];
        for (int i = 0; i < vector.length; i++) {
            vector[i] = columns[i][k];
        }
        return vector;
    }

    /**
     * Decomposes by Jacobi's rotations.
     *
     * <p><b>Accuracy.</b> Off-diagonal elements below 1e-15 of the largest element.
     * <p><b>Source.</b> First principles (the classical method).
     */
    static Eigen of(double[][] symmetric) {
        int n = symmetric.length;
        double[][] a = new double[n][];
        double[][] v = new double[n][n];
        double largest = 0.0;
        for (int i = 0; i < n; i++) {
            a[i] = symmetric[i].clone();
            v[i][i] = 1.0;
            for (double element : a[i]) {
                largest = Math.max(largest, Math.abs(element));
            }
        }
        boolean rotated = true;
        for (int sweep = 0; rotated && sweep < MOST_SWEEPS; sweep++) {
            rotated = false;
            for (int p = 0; p < n; p++) {
                for (int q = p + 1; q < n; q++) {
                    if (Math.abs(a[p][q]) > 1e-15 * largest) {
                        rotate(a, v, p, q);
                        rotated = true;
                    }
                }
            }
        }
        double[] values = new double[n];
        for (int i = 0; i < n; i++) {
            values[i] = a[i][i];
        }
        return new Eigen(values, v);
    }

    private static void rotate(double[][] a, double[][] v, int p, int q) {
        double theta = (a[q][q] - a[p][p]) / (2.0 * a[p][q]);
        double t = (theta < 0.0 ? -1.0 : 1.0) / (Math.abs(theta) + Math.sqrt(theta * theta + 1.0));
        double c = 1.0 / Math.sqrt(t * t + 1.0);
        double s = t * c;
        for (int k = 0; k < a.length; k++) {
            double kp = a[k][p];
            double kq = a[k][q];
            a[k][p] = c * kp - s * kq;
            a[k][q] = s * kp + c * kq;
        }
        for (int k = 0; k < a.length; k++) {
            double pk = a[p][k];
            double qk = a[q][k];
            a[p][k] = c * pk - s * qk;
            a[q][k] = s * pk + c * qk;
            double vp = v[k][p];
            double vq = v[k][q];
            v[k][p] = c * vp - s * vq;
            v[k][q] = s * vp + c * vq;
        }
    }
}
