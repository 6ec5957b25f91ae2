package org.varwright.unbalance;

import org.varwright.basis.Source;

/**
 * What is assumed of things that nobody measured.
 *
 * @param capacitanceSpread how far the capacitance of one leg may differ from the others where its units were not all measured, as a part
 * @param systemUnbalance how far one phase voltage may differ from the others, as a part
 * @param source where these come from
 */
public record Assumptions(double capacitanceSpread, double systemUnbalance, Source source) {
    /** 1 % of capacitance and 0.5 % of voltage: common practice, no source. */
    public static final Assumptions USUAL =
            new Assumptions(0.01, 0.005, Source.commonPractice("spread of matched legs and of a distribution system"));
}
