package org.varwright.limit;

import java.util.List;
import org.varwright.bank.Standard;
import org.varwright.basis.Source;
import org.varwright.basis.Verdict;

/**
 * What a unit may bear for good, as multiples of rated values.
 *
 * @param voltage rms voltage
 * @param crest crest voltage over √2 times rated
 * @param current rms current
 * @param reactivePower reactive power, harmonics included
 */
public record ContinuousLimits(Limit voltage, Limit crest, Limit current, Limit reactivePower) {
    private static final ContinuousLimits IEEE = new ContinuousLimits(
            new Limit(1.10, Source.published("IEEE Std 18: 110 % of rated rms voltage"), true),
            new Limit(1.20, Source.published("IEEE Std 18: crest 120 % of √2 times rated rms voltage"), true),
            new Limit(1.35, Source.published("IEEE Std 18: 135 % of nominal rms current"), true),
            new Limit(1.35, Source.published("IEEE Std 18: 135 % of rated reactive power"), true));

    /** Where IEC 60871-1 is not known to state a limit, that of IEEE Std 18 is shown as a warning line. */
    private static final ContinuousLimits IEC = new ContinuousLimits(
            new Limit(1.10, Source.unchecked("IEC 60871-1: 1.10 U_N, 12 h in 24 h"), true),
            new Limit(1.20, Source.published("IEEE Std 18; not known of IEC 60871-1"), false),
            new Limit(1.30, Source.unchecked("IEC 60871-1: 1.30 I_N"), true),
            new Limit(1.35, Source.published("IEEE Std 18; not known of IEC 60871-1"), false));

    /** The limits of a standard. */
    public static ContinuousLimits of(Standard standard) {
        return switch (standard) {
            case IEEE -> IEEE;
            case IEC -> IEC;
        };
    }

    /** One limit held against one value. */
    public record Judged(String quantity, double value, Limit limit) {
        public Verdict verdict() {
            return limit.judge(value);
        }

        /** How near the limit: 1 is at it. */
        public double use() {
            return value / limit.value();
        }
    }

    /** The four values against their limits, in the order rms voltage, crest, rms current, reactive power. */
    public List<Judged> judge(Stress stress) {
        return List.of(
                new Judged("rms voltage", stress.voltage(), voltage),
                new Judged("crest voltage", stress.crest(), crest),
                new Judged("rms current", stress.current(), current),
                new Judged("reactive power", stress.reactivePower(), reactivePower));
    }

    /** The worst verdict of the four. */
    public Verdict verdict(Stress stress) {
        Verdict worst = Verdict.PASS;
        for (Judged judged : judge(stress)) {
            if (judged.verdict().compareTo(worst) > 0) {
                worst = judged.verdict();
            }
        }
        return worst;
    }
}
