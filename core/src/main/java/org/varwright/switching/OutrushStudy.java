package org.varwright.switching;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.transients.Act;
import org.varwright.transients.Outcome;
import org.varwright.transients.Probe;
import org.varwright.transients.Setting;
import org.varwright.transients.Transient;
import org.varwright.transients.WorstAngle;

/** Outrush into a fault at the bus: by formula stage by stage, and all together in time. */
final class OutrushStudy {
    private OutrushStudy() {}

    static Outrush of(Source source, List<SwitchedStage> stages) {
        List<Outrush.StageOutrush> alone = new ArrayList<>();
        List<String> without = new ArrayList<>();
        List<SwitchedStage> with = new ArrayList<>();
        double product = 0.0;
        for (SwitchedStage stage : stages) {
            double henries = stage.path().henries(Path.LEAST_PER_METRE);
            if (!(henries > 0.0)) {
                without.add(stage.name());
                continue;
            }
            ClosedForm formula = ClosedForm.outrush(
                    source.lineVolts(),
                    stage.star().largest(),
                    henries,
                    stage.path().ohms(),
                    stage.path().terms(stage.name(), Path.LEAST_PER_METRE));
            alone.add(new Outrush.StageOutrush(stage.name(), formula));
            product += formula.product();
            with.add(stage);
        }
        if (source.behind().isEmpty() || with.isEmpty()) {
            return new Outrush(alone, without, product, Optional.empty(), 0.0);
        }
        BankCircuit bank = BankCircuit.withFault(source, with, Path.LEAST_PER_METRE);
        Setting setting = Setting.discharged(bank.circuit(), bank.faults());
        List<Act.Close> faults =
                bank.faults().stream().map(f -> new Act.Close(f, 0.0)).toList();
        List<Probe> probes = List.of(bank.outrush(0), bank.outrush(1), bank.outrush(2));
        double cycle = 1.0 / source.hertz();
        WorstAngle worst = WorstAngle.of(new WorstAngle.Memory(bank.circuit()), setting, faults, probes, cycle / 4.0)
                .getFirst();
        Outcome outcome = Transient.run(setting, worst.degrees(), List.copyOf(faults), probes, cycle / 4.0, false);
        return new Outrush(
                alone, without, product, Optional.of(outcome.swings().getFirst().magnitude()), outcome.hertz(0));
    }
}
