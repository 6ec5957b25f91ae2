package org.varwright.duty;

import org.varwright.bank.TransformerRatio;
import org.varwright.basis.Verdict;

/** When a control hunts: its own step takes what it senses from one threshold past the other (DUT-8). */
public final class DeadBand {
    /** A band less than this many steps wide is narrow. Common practice, no source. */
    static final double COMFORT = 1.5;

    private DeadBand() {}

    /** Fail where the step is as wide as the band or wider, warn where the band is less than 1.5 steps wide. */
    public static Verdict judge(double step, double band) {
        if (step >= band * (1.0 - 1e-9)) {
            return Verdict.FAIL;
        }
        return step * COMFORT > band ? Verdict.WARN : Verdict.PASS;
    }

    /**
     * What a control makes of a value when the ratio entered is not that of the transformer fitted.
     *
     * <p><b>Model.</b> {@code seen = true·(entered)/(fitted)}, ratios as primary over secondary (DUT-8). <b>Source.</b> First principles.
     *
     * @param value true value, primary
     * @param fitted ratio of the transformer
     * @param entered ratio in the control
     */
    public static double seen(double value, TransformerRatio fitted, TransformerRatio entered) {
        return value * fitted.factor() / entered.factor();
    }
}
