package org.varwright.network;

import org.varwright.quantity.Complex;

/** A handful of complex equations. */
final class SmallSystem {
    /** A pivot below this part of what it was made of has been lost to cancellation: the change makes the equations singular. */
    private static final double CANCELLED = 1e-10;

    /** Below this, in units of a typical branch's impedance, nothing but rounding stands between the ends of a short circuit. */
    private static final double NO_IMPEDANCE = 1e-12;

    private SmallSystem() {}

    /**
     * Solves in place by Gaussian elimination with row pivoting.
     *
     * @param m rows with the right side as last column; overwritten
     * @param madeOf size of the terms that each row was made of; a pivot far below it has been lost to cancellation
     * @param solution receives the unknowns
     * @return false where the system is singular to working accuracy
     */
    static boolean solve(Complex[][] m, double[] madeOf, Complex[] solution) {
        int k = m.length;
        for (int p = 0; p < k; p++) {
            int best = p;
            for (int r = p + 1; r < k; r++) {
                if (m[r][p].magnitude() * madeOf[best] > m[best][p].magnitude() * madeOf[r]) {
                    best = r;
                }
            }
            if (!(m[best][p].magnitude() > CANCELLED * madeOf[best] && m[best][p].magnitude() > NO_IMPEDANCE)) {
                return false;
            }
            Complex[] row = m[best];
            m[best] = m[p];
            m[p] = row;
            double size = madeOf[best];
            madeOf[best] = madeOf[p];
            madeOf[p] = size;
            for (int r = p + 1; r < k; r++) {
                Complex ratio = m[r][p].dividedBy(row[p]);
                for (int c = p; c <= k; c++) {
                    m[r][c] = m[r][c].minus(ratio.times(row[c]));
                }
            }
        }
        for (int r = k - 1; r >= 0; r--) {
            Complex sum = m[r][k];
            for (int c = r + 1; c < k; c++) {
                sum = sum.minus(m[r][c].times(solution[c]));
            }
            solution[r] = sum.dividedBy(m[r][r]);
        }
        return true;
    }
}
