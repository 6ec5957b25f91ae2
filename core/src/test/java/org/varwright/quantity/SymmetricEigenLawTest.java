package org.varwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What eigenvectors are by definition, of random matrices. */
class SymmetricEigenLawTest {
    @Test
    void matrixTimesVectorIsValueTimesVector() {
        for (long seed = 1; seed <= 200; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int n = random.nextInt(1, 12);
            double[][] b = new double[n][n];
            for (double[] row : b) {
                for (int j = 0; j < n; j++) {
                    row[j] = random.nextDouble(-1.0, 1.0);
                }
            }
            double[][] a = new double[n][n];
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    for (int k = 0; k < n; k++) {
                        a[i][j] += b[i][k] * b[j][k];
                    }
                }
            }
            SymmetricEigen eigen = SymmetricEigen.of(a);
            for (int k = 0; k < n; k++) {
                double[] v = eigen.vector(k);
                double length = 0.0;
                for (int i = 0; i < n; i++) {
                    double product = 0.0;
                    for (int j = 0; j < n; j++) {
                        product += a[i][j] * v[j];
                    }
                    assertEquals(eigen.value(k) * v[i], product, 1e-12 * n, "seed " + seed);
                    assertEquals(v[i], eigen.vector(i, k), "seed " + seed);
                    length += v[i] * v[i];
                }
                assertEquals(1.0, length, 1e-13 * n, "seed " + seed);
            }
        }
    }
}
