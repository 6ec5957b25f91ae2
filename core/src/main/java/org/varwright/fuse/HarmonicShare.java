package org.varwright.fuse;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.basis.Unanswered;
import org.varwright.duty.Duty;
import org.varwright.duty.DutyQuestion;
import org.varwright.duty.StageDuty;
import org.varwright.problem.VarwrightException;

/**
 * By how much harmonics raise the rms current of each stage's units.
 *
 * @param factors rms current with the harmonics of the bank file over that without, worst combination of stages, by name of the stage; 1 where none are counted
 * @param missing why none are counted; empty where they are
 */
record HarmonicShare(Map<String, Double> factors, Optional<Unanswered> missing) {
    private static final String EFFECT =
            "what harmonics add to the current of service; none were counted beyond the rule's own allowance";

    HarmonicShare {
        factors = Map.copyOf(factors);
    }

    static HarmonicShare of(Bank bank) {
        if (bank.system().harmonics().isEmpty()) {
            return new HarmonicShare(Map.of(), Optional.of(new Unanswered("system.harmonics", EFFECT)));
        }
        if (bank.system().shortCircuitVoltAmperes().isEmpty()) {
            return new HarmonicShare(Map.of(), Optional.of(new Unanswered("system.short-circuit", EFFECT)));
        }
        List<StageDuty> duties;
        try {
            duties = Duty.of(bank, DutyQuestion.PLAIN).stages();
        } catch (VarwrightException e) {
            return new HarmonicShare(
                    Map.of(), Optional.of(new Unanswered("an answer of \"duty\" (" + e.getMessage() + ")", EFFECT)));
        }
        Map<String, Double> factors = new LinkedHashMap<>();
        for (Stage stage : bank.stages()) {
            double with = most(duties, stage, false);
            double without = most(duties, stage, true);
            if (without > 0.0 && Double.isFinite(with)) {
                factors.put(stage.name(), Math.max(1.0, with / without));
            }
        }
        return new HarmonicShare(factors, Optional.empty());
    }

    double factor(Stage stage) {
        return factors.getOrDefault(stage.name(), 1.0);
    }

    private static double most(List<StageDuty> duties, Stage stage, boolean fundamentalOnly) {
        return duties.stream()
                .filter(d -> d.stage().equals(stage.name()))
                .filter(d -> !fundamentalOnly || d.harmonics().equals("none"))
                .mapToDouble(StageDuty::unitAmperes)
                .max()
                .orElse(0.0);
    }
}
