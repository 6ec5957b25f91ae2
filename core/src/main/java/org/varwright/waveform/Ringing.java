package org.varwright.waveform;

import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * The strongest damped oscillation that a switching set off.
 *
 * <p><b>Model.</b> From the switching on, for half a cycle at most: mean and fundamental, and {@code e^{−αt}·(c·cos 2πft + d·sin 2πft)}, by least squares
 * (REC-7). Frequency and damping are searched on a grid and then refined.
 *
 * <p><b>Not modelled.</b> A second oscillation: it counts as what is left unexplained.
 *
 * <p><b>Accuracy.</b> 0.1 % of the frequency for a single oscillation with 10 samples in it. Below 4 samples in one oscillation nothing is said.
 *
 * <p><b>Source.</b> First principles; the four samples are common practice, no source.
 */
public sealed interface Ringing {
    /** Samples in one oscillation below which neither peak nor frequency is told. */
    double FEWEST_SAMPLES = 4.0;

    /**
     * An oscillation.
     *
     * @param hertz its frequency
     * @param amplitude at the start, in the channel's unit
     * @param decaySeconds time in which it falls to 1/e; infinite where it doesn't fall
     * @param explained part of what is not fundamental that it explains, 0 to 1
     * @param samplesInOne samples in one oscillation
     */
    record Rang(double hertz, double amplitude, double decaySeconds, double explained, double samplesInOne)
            implements Ringing {
        /** Largest part by which the highest sample may lie below the true peak: {@code 1 − cos(π/n)}. */
        public double peakMayBeMissedBy() {
            return 1.0 - Math.cos(Math.PI / samplesInOne);
        }
    }

    /**
     * There may be one, but the samples are too far apart.
     *
     * @param rate samples a second
     * @param highestHertz that could be told
     */
    record TooSlow(double rate, double highestHertz) implements Ringing {}

    /** Nothing rings: less than 5 % of the fundamental. */
    record Quiet() implements Ringing {}

    /**
     * What rings in a channel.
     *
     * @param signal a current or voltage
     * @param start when it was switched [s]
     * @param limit time up to which it may be looked at [s]
     * @param fundamentalHertz above 0
     */
    static Ringing of(Signal signal, double start, double limit, double fundamentalHertz) {
        return new Search(signal, start, limit, fundamentalHertz).find();
    }

    /** The search for one oscillation. */
    final class Search {
        private static final int MOST_SAMPLES = 2000;
        private static final double MOST_HERTZ = 50e3;
        private static final double LOWEST_ORDER = 2.5;
        private static final double QUIET = 0.05;
        private static final double NYQUIST = 0.45;
        private static final int REFINEMENTS = 40;
        private static final double[] DAMPINGS = {0.0, 3.0, 10.0, 30.0};

        private final double[] t;
        private final double[] x;
        private final double fundamental;
        private final double rate;

        private Search(Signal signal, double start, double limit, double fundamentalHertz) {
            fundamental = fundamentalHertz;
            int from = signal.indexAt(start);
            double end = Math.min(limit, start + 0.5 / fundamentalHertz);
            int to = Math.min(signal.indexAt(end), from + MOST_SAMPLES);
            if (from < signal.size()) {
                Piece piece = signal.base().pieceAt(from);
                to = Math.min(to, piece.to());
                rate = piece.rate();
            } else {
                rate = 0.0;
            }
            int n = Math.max(0, to - from);
            t = new double[n];
            x = new double[n];
            for (int i = 0; i < n; i++) {
                t[i] = signal.seconds(from + i) - start;
                x[i] = Double.isFinite(signal.value(from + i)) ? signal.value(from + i) : 0.0;
            }
        }

        private Ringing find() {
            double highest = rate / FEWEST_SAMPLES;
            if (t.length < 12 || highest < 2.0 * LOWEST_ORDER * fundamental) {
                return new TooSlow(rate, highest);
            }
            double length = t[t.length - 1] - t[0];
            double base = squares(Optional.empty());
            double least = Math.max(LOWEST_ORDER * fundamental, 1.0 / length);
            double most = Math.min(NYQUIST * rate, MOST_HERTZ);
            double[] best = {least, 0.0};
            double bestSquares = base;
            for (double f = least; f <= most; f += 0.25 / length) {
                for (double damping : DAMPINGS) {
                    double found = squares(Optional.of(new double[] {f, damping / length}));
                    if (found < bestSquares) {
                        bestSquares = found;
                        best = new double[] {f, damping / length};
                    }
                }
            }
            best = refined(best, 0.25 / length, 3.0 / length);
            double[] c = solve(Optional.of(best)).orElse(new double[5]);
            double amplitude = Math.hypot(c[3], c[4]);
            double left = squares(Optional.of(best));
            double explained = base > 0.0 ? 1.0 - left / base : 0.0;
            if (!(amplitude > QUIET * loudness()) || !(base > 0.0)) {
                return new Quiet();
            }
            if (best[0] > highest) {
                return new TooSlow(rate, highest);
            }
            return new Rang(
                    best[0],
                    amplitude,
                    best[1] > 0.0 ? 1.0 / best[1] : Double.POSITIVE_INFINITY,
                    explained,
                    rate / best[0]);
        }

        private double loudness() {
            double largest = 0.0;
            for (double value : x) {
                largest = Math.max(largest, Math.abs(value));
            }
            return largest;
        }

        /** Steps of falling size, one unknown after the other. */
        private double[] refined(double[] from, double hertzStep, double dampingStep) {
            double[] best = from.clone();
            double least = squares(Optional.of(best));
            double[] step = {hertzStep, dampingStep};
            for (int turn = 0; turn < REFINEMENTS; turn++) {
                boolean moved = false;
                for (int which = 0; which < 2; which++) {
                    for (double sign : new double[] {-1.0, 1.0}) {
                        double[] tried = best.clone();
                        tried[which] = Math.max(0.0, tried[which] + sign * step[which]);
                        double found = squares(Optional.of(tried));
                        if (found < least) {
                            least = found;
                            best = tried;
                            moved = true;
                        }
                    }
                }
                if (!moved) {
                    step[0] *= 0.5;
                    step[1] *= 0.5;
                }
            }
            return best;
        }

        /** What is left of the squares; with an oscillation {@code {f, α}} or without. */
        private double squares(Optional<double[]> oscillation) {
            Optional<double[]> c = solve(oscillation);
            if (c.isEmpty()) {
                return Double.POSITIVE_INFINITY;
            }
            double sum = 0.0;
            double[] row = new double[c.get().length];
            for (int i = 0; i < t.length; i++) {
                fill(row, i, oscillation);
                double left = x[i];
                for (int k = 0; k < row.length; k++) {
                    left -= row[k] * c.get()[k];
                }
                sum += left * left;
            }
            return sum;
        }

        private Optional<double[]> solve(Optional<double[]> oscillation) {
            int n = oscillation.isPresent() ? 5 : 3;
            DMatrixRMaj normal = new DMatrixRMaj(n, n);
            DMatrixRMaj right = new DMatrixRMaj(n, 1);
            double[] row = new double[n];
            for (int i = 0; i < t.length; i++) {
                fill(row, i, oscillation);
                for (int r = 0; r < n; r++) {
                    right.add(r, 0, row[r] * x[i]);
                    for (int c = 0; c <= r; c++) {
                        normal.add(r, c, row[r] * row[c]);
                    }
                }
            }
            for (int r = 0; r < n; r++) {
                for (int c = r + 1; c < n; c++) {
                    normal.set(r, c, normal.get(c, r));
                }
            }
            LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.symmPosDef(n);
            if (!solver.setA(normal) || solver.quality() < 1e-12) {
                return Optional.empty();
            }
            DMatrixRMaj solution = new DMatrixRMaj(n, 1);
            solver.solve(right, solution);
            return Optional.of(solution.data.clone());
        }

        /** Mean and fundamental; of a short stretch, in which these can't be told apart, a parabola. */
        private void fill(double[] row, int i, Optional<double[]> oscillation) {
            double length = t[t.length - 1] - t[0];
            double u = t[i] / length;
            row[0] = 1.0;
            if (length * fundamental > 0.3) {
                row[1] = Math.cos(2.0 * Math.PI * fundamental * t[i]);
                row[2] = Math.sin(2.0 * Math.PI * fundamental * t[i]);
            } else {
                row[1] = 2.0 * u - 1.0;
                row[2] = row[1] * row[1] - 1.0 / 3.0;
            }
            if (oscillation.isPresent()) {
                double[] p = oscillation.get();
                double e = Math.exp(-p[1] * t[i]);
                row[3] = e * Math.cos(2.0 * Math.PI * p[0] * t[i]);
                row[4] = e * Math.sin(2.0 * Math.PI * p[0] * t[i]);
            }
        }
    }
}
