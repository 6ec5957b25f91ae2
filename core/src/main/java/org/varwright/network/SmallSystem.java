package org.varwright.network;

import java.util.Arrays;

/** A handful of complex equations, solved over and over in the same arrays. For one thread. */
final class SmallSystem {
    /** A pivot below this part of what it was made of has been lost to cancellation: the change makes the equations singular. */
    private static final double CANCELLED = 1e-10;

    /** Below this, in units of a typical branch's impedance, nothing but rounding stands between the ends of a short circuit. */
    private static final double NO_IMPEDANCE = 1e-12;

    private int size;
    private int width;
    private double[] re = new double[0];
    private double[] im = new double[0];
    private double[] madeOf = new double[0];
    private int[] rowAt = new int[0];

    /** Starts anew with so many equations, all entries zero. */
    void start(int equations) {
        size = equations;
        width = equations + 1;
        if (madeOf.length < size) {
            re = new double[size * width];
            im = new double[size * width];
            madeOf = new double[size];
            rowAt = new int[size];
        }
        Arrays.fill(madeOf, 0, size, 0.0);
        for (int r = 0; r < size; r++) {
            rowAt[r] = r;
        }
    }

    /** Sets an entry; the column after the last unknown's is the right side. */
    void set(int row, int column, double real, double imaginary) {
        re[row * width + column] = real;
        im[row * width + column] = imaginary;
    }

    /** Says that a row was made of a term of this size; a pivot far below the largest has been lost to cancellation. */
    void madeOf(int row, double real, double imaginary) {
        madeOf[row] = Math.max(madeOf[row], real * real + imaginary * imaginary);
    }

    /** Solves by Gaussian elimination with row pivoting; false where the system is singular to working accuracy. */
    boolean solve() {
        for (int p = 0; p < size; p++) {
            int best = p;
            double square = square(p, p);
            for (int r = p + 1; r < size; r++) {
                double other = square(r, p);
                if (other * madeOf[rowAt[best]] > square * madeOf[rowAt[r]]) {
                    best = r;
                    square = other;
                }
            }
            if (!(square > CANCELLED * CANCELLED * madeOf[rowAt[best]] && square > NO_IMPEDANCE * NO_IMPEDANCE)) {
                return false;
            }
            int pivot = rowAt[best];
            rowAt[best] = rowAt[p];
            rowAt[p] = pivot;
            for (int r = p + 1; r < size; r++) {
                eliminate(rowAt[r] * width, pivot * width, p, square);
            }
        }
        for (int r = size - 1; r >= 0; r--) {
            int at = rowAt[r] * width;
            double sumRe = re[at + size];
            double sumIm = im[at + size];
            for (int c = r + 1; c < size; c++) {
                double xr = real(c);
                double xi = imaginary(c);
                sumRe -= re[at + c] * xr - im[at + c] * xi;
                sumIm -= re[at + c] * xi + im[at + c] * xr;
            }
            double pr = re[at + r];
            double pi = im[at + r];
            double square = pr * pr + pi * pi;
            re[at + size] = (sumRe * pr + sumIm * pi) / square;
            im[at + size] = (sumIm * pr - sumRe * pi) / square;
        }
        return true;
    }

    private double square(int row, int column) {
        int at = rowAt[row] * width + column;
        return re[at] * re[at] + im[at] * im[at];
    }

    /** Takes so much of the pivot's row from another that its entry in the pivot's column vanishes. */
    private void eliminate(int row, int pivot, int column, double square) {
        double pr = re[pivot + column];
        double pi = im[pivot + column];
        double ratioRe = (re[row + column] * pr + im[row + column] * pi) / square;
        double ratioIm = (im[row + column] * pr - re[row + column] * pi) / square;
        for (int c = column; c <= size; c++) {
            double r = re[pivot + c];
            double i = im[pivot + c];
            re[row + c] -= ratioRe * r - ratioIm * i;
            im[row + c] -= ratioRe * i + ratioIm * r;
        }
    }

    /** Real part of an unknown; it stands where its right side was. */
    double real(int unknown) {
        return re[rowAt[unknown] * width + size];
    }

    double imaginary(int unknown) {
        return im[rowAt[unknown] * width + size];
    }
}
