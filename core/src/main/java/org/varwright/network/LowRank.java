package org.varwright.network;

import java.util.List;
import java.util.Optional;
import org.varwright.quantity.Complex;

/**
 * Solution of equations changed in a few rank-one terms, from the factors of the unchanged ones (NET-6).
 *
 * <p><b>Model.</b> {@code A' = A + U·D·Vᵀ}; {@code x' = x − Z·λ}, {@code Z = A⁻¹U}, {@code (D⁻¹ + VᵀZ)·λ = Vᵀx}. A short circuit is the limit
 * {@code D⁻¹ = 0}; its λ is the current through it.
 */
final class LowRank {
    private LowRank() {}

    /** One entry of a sparse vector; an entry at ground counts for nothing. */
    record Entry(int at, Complex value) {}

    /** Product of a sparse vector and the unknowns. */
    static Complex dot(List<Entry> vector, double[] x) {
        Complex sum = Complex.ZERO;
        for (Entry entry : vector) {
            if (entry.at() != Circuit.GROUND) {
                sum = sum.plus(entry.value().times(new Complex(x[2 * entry.at()], x[2 * entry.at() + 1])));
            }
        }
        return sum;
    }

    /** A sparse vector as a whole right side, real and imaginary parts in turn. */
    static double[] dense(List<Entry> vector, int size) {
        double[] x = new double[size];
        for (Entry entry : vector) {
            if (entry.at() != Circuit.GROUND) {
                x[2 * entry.at()] += entry.value().re();
                x[2 * entry.at() + 1] += entry.value().im();
            }
        }
        return x;
    }

    /** One term {@code u·d·vᵀ}, with {@code 1/d}. */
    record Update(List<Entry> u, List<Entry> v, Complex inverse) {
        static Update admittance(int from, int to, Complex siemens) {
            List<Entry> ends = between(from, to);
            return new Update(ends, ends, Complex.ONE.dividedBy(siemens));
        }

        static Update shortBetween(int from, int to) {
            List<Entry> ends = between(from, to);
            return new Update(ends, ends, Complex.ZERO);
        }

        /** The link's equation {@code V_from − V_to − Z·I = 0} becomes {@code I = 0}. */
        static Update open(int from, int to, int link, Complex ohms) {
            return new Update(
                    List.of(new Entry(link, Complex.ONE)),
                    List.of(
                            new Entry(from, Complex.ONE.negated()),
                            new Entry(to, Complex.ONE),
                            new Entry(link, Complex.ONE.plus(ohms))),
                    Complex.ONE);
        }

        private static List<Entry> between(int from, int to) {
            return List.of(new Entry(from, Complex.ONE), new Entry(to, Complex.ONE.negated()));
        }
    }

    /** The unknowns followed by each update's λ; empty where the changed equations are singular. */
    static Optional<double[]> solve(LuFactors factors, double[] unchanged, List<Update> updates) {
        int k = updates.size();
        double[][] z = new double[k][];
        for (int c = 0; c < k; c++) {
            z[c] = factors.solve(dense(updates.get(c).u(), unchanged.length));
        }
        SmallSystem small = new SmallSystem();
        small.start(k);
        for (int r = 0; r < k; r++) {
            Update update = updates.get(r);
            small.madeOf(r, update.inverse().re(), update.inverse().im());
            for (int c = 0; c < k; c++) {
                Complex w = dot(update.v(), z[c]);
                small.madeOf(r, w.re(), w.im());
                Complex entry = r == c ? w.plus(update.inverse()) : w;
                small.set(r, c, entry.re(), entry.im());
            }
            Complex right = dot(update.v(), unchanged);
            small.set(r, k, right.re(), right.im());
        }
        if (!small.solve()) {
            return Optional.empty();
        }
        double[] x = new double[unchanged.length + 2 * k];
        System.arraycopy(unchanged, 0, x, 0, unchanged.length);
        for (int c = 0; c < k; c++) {
            double re = small.real(c);
            double im = small.imaginary(c);
            for (int i = 0; i < unchanged.length; i += 2) {
                x[i] -= z[c][i] * re - z[c][i + 1] * im;
                x[i + 1] -= z[c][i] * im + z[c][i + 1] * re;
            }
            x[unchanged.length + 2 * c] = re;
            x[unchanged.length + 2 * c + 1] = im;
        }
        return Optional.of(x);
    }
}
