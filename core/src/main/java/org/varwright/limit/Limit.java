package org.varwright.limit;

import org.varwright.basis.Source;
import org.varwright.basis.Verdict;

/**
 * A limit as a multiple of a rated value.
 *
 * @param value highest allowed multiple
 * @param source where it stands
 * @param binding whether the bank's standard sets it; otherwise going over it is a warning
 */
public record Limit(double value, Source source, boolean binding) {
    /** A value at the limit, to rounding, is within it. */
    public Verdict judge(double multiple) {
        if (multiple <= value * (1.0 + 1e-9)) {
            return Verdict.PASS;
        }
        return binding ? Verdict.FAIL : Verdict.WARN;
    }
}
