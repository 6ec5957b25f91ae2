package org.varwright.resonance;

import java.util.List;
import java.util.Optional;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;

/**
 * One combination of stages at harmonics.
 *
 * @param combination which stages
 * @param vars that it gives at nominal voltage [var]
 * @param simpleOrder resonance by the rule {@code √(S_sc/Q)} (RES-1), which leaves reactors and load out
 * @param peaks parallel resonances with no load, by rising order
 * @param tunedOrders series resonances of its stages up to order 50, by rising order
 * @param amplifications at the orders looked at
 * @param duty with the harmonics given, least damped; empty where none are
 * @param mildest the same in the load case and with the source resistance that damp most
 * @param checks what was held against a limit
 * @param reasons to avoid it, in words; empty where nothing speaks against it
 */
public record CombinationResult(
        Combination combination,
        double vars,
        double simpleOrder,
        List<Peak> peaks,
        List<Double> tunedOrders,
        List<Amplification> amplifications,
        Optional<HarmonicDuty> duty,
        Optional<HarmonicDuty> mildest,
        List<Check> checks,
        List<String> reasons) {
    public CombinationResult {
        peaks = List.copyOf(peaks);
        tunedOrders = List.copyOf(tunedOrders);
        amplifications = List.copyOf(amplifications);
        checks = List.copyOf(checks);
        reasons = List.copyOf(reasons);
    }

    /** Whether something speaks against it. */
    public boolean isToAvoid() {
        return !reasons.isEmpty();
    }

    /** The worst verdict of its checks. */
    public Verdict verdict() {
        Verdict worst = Verdict.PASS;
        for (Check check : checks) {
            if (check.verdict().compareTo(worst) > 0) {
                worst = check.verdict();
            }
        }
        return worst;
    }

    /** The highest amplification at an order that was looked at. */
    public double highestAmplification() {
        return amplifications.stream().mapToDouble(Amplification::factor).max().orElse(0.0);
    }
}
