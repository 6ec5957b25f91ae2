package org.varwright.waveform;

import java.util.List;
import org.varwright.quantity.Complex;

/**
 * Three phasors as zero, positive and negative sequence, referred to phase A.
 *
 * <p><b>Model.</b> {@code X_0 = (A+B+C)/3}, {@code X_1 = (A+aB+a²C)/3}, {@code X_2 = (A+a²B+aC)/3}, {@code a = 1∠120°} (REC-3).
 *
 * <p><b>Source.</b> Published: C. L. Fortescue, Trans. AIEE 37 (1918).
 */
public record SequenceComponents(Complex zero, Complex positive, Complex negative) {
    private static final Complex TURN = new Complex(-0.5, Math.sqrt(0.75));
    private static final Complex BACK = new Complex(-0.5, -Math.sqrt(0.75));

    /** Of phases A, B, C. */
    public static SequenceComponents of(Complex a, Complex b, Complex c) {
        return new SequenceComponents(
                a.plus(b).plus(c).times(1.0 / 3.0),
                a.plus(TURN.times(b)).plus(BACK.times(c)).times(1.0 / 3.0),
                a.plus(BACK.times(b)).plus(TURN.times(c)).times(1.0 / 3.0));
    }

    /** Phases A, B, C again. */
    public List<Complex> phases() {
        return List.of(
                zero.plus(positive).plus(negative),
                zero.plus(BACK.times(positive)).plus(TURN.times(negative)),
                zero.plus(TURN.times(positive)).plus(BACK.times(negative)));
    }
}
