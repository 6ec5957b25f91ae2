package org.varwright.transients;

/** A weighted sum over a state. Weights that are zero are left out: most of a row's are. */
final class Weights {
    private final int[] at;
    private final double[] factors;

    private Weights(int[] at, double[] factors) {
        this.at = at;
        this.factors = factors;
    }

    static Weights of(double[] row) {
        int count = 0;
        for (double factor : row) {
            count += factor != 0.0 ? 1 : 0;
        }
        int[] at = new int[count];
        double[] factors = new double[count];
        int next = 0;
        for (int i = 0; i < row.length; i++) {
            if (row[i] != 0.0) {
                at[next] = i;
                factors[next++] = row[i];
            }
        }
        return new Weights(at, factors);
    }

    double sum(double[] z) {
        double sum = 0.0;
        for (int i = 0; i < at.length; i++) {
            sum += factors[i] * z[at[i]];
        }
        return sum;
    }
}
