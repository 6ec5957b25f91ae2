package org.varwright.discharge;

/** A symmetric positive definite matrix as {@code L·Lᵀ}; small ones, plain arrays. */
final class Cholesky {
    private final double[][] lower;

    private Cholesky(double[][] lower) {
        this.lower = lower;
    }

    /**
     * Factors a matrix.
     *
     * @param matrix symmetric, positive definite
     * @throws IllegalArgumentException where it is not: of a capacitance matrix, where a node hangs on nothing
     */
    static Cholesky of(double[][] matrix) {
        int n = matrix.length;
        double[][] lower = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = matrix[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= lower[i][k] * lower[j][k];
                }
                if (i == j) {
                    if (!(sum > 1e-14 * matrix[i][i])) {
                        throw new IllegalArgumentException("cholesky: node " + i + " hangs on nothing");
                    }
                    lower[i][i] = Math.sqrt(sum);
                } else {
                    lower[i][j] = sum / lower[j][j];
                }
            }
        }
        return new Cholesky(lower);
    }

    /** {@code x} of {@code L·Lᵀ·x = b}. */
    double[] solve(double[] b) {
        return solveUpper(solveLower(b));
    }

    /** {@code y} of {@code L·y = b}. */
    double[] solveLower(double[] b) {
        double[] y = b.clone();
        for (int i = 0; i < y.length; i++) {
            for (int k = 0; k < i; k++) {
                y[i] -= lower[i][k] * y[k];
            }
            y[i] /= lower[i][i];
        }
        return y;
    }

    /** {@code x} of {@code Lᵀ·x = y}. */
    double[] solveUpper(double[] y) {
        double[] x = y.clone();
        for (int i = x.length - 1; i >= 0; i--) {
            for (int k = i + 1; k < x.length; k++) {
                x[i] -= lower[k][i] * x[k];
            }
            x[i] /= lower[i][i];
        }
        return x;
    }
}
