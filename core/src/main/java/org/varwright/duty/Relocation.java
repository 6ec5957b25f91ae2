package org.varwright.duty;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitType;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Term;
import org.varwright.limit.ContinuousLimits;
import org.varwright.limit.Stress;
import org.varwright.network.Capacitances;
import org.varwright.resonance.StageModel;

/**
 * A stage put to another system, by the nameplates.
 *
 * @param stage its name
 * @param ratedVars by the nameplates [var]
 * @param varsHere at this system's nominal voltage and frequency [var]
 * @param varsThere at the other's [var]
 * @param stress of its units there, at nameplate capacitance, no harmonics
 * @param checks against the continuous limits
 */
public record Relocation(
        String stage, double ratedVars, double varsHere, double varsThere, Stress stress, List<Check> checks) {
    public Relocation {
        checks = List.copyOf(checks);
    }

    static List<Relocation> of(Bank bank, DutyQuestion.Elsewhere there) {
        Capacitances nameplate = Capacitances.nameplate(bank);
        return bank.stages().stream()
                .map(stage -> of(bank, stage, StageModel.of(stage, nameplate), there))
                .toList();
    }

    private static Relocation of(Bank bank, Stage stage, StageModel model, DutyQuestion.Elsewhere there) {
        UnitType type = stage.unit();
        double omega = 2.0 * Math.PI * there.hertz();
        double perRated = healthyUnitVolts(stage, there.volts()) * model.capacitorShare(omega) / type.legVolts();
        Stress stress = Stress.of(List.of(new Stress.Component(1.0, perRated)), there.hertz() / type.ratedHertz());
        ContinuousLimits limits = ContinuousLimits.of(bank.standard());
        List<Check> checks = new ArrayList<>();
        for (ContinuousLimits.Judged judged : limits.judge(stress)) {
            checks.add(new Check(
                    stage.name() + " there: " + judged.quantity() + " over rated",
                    judged.value(),
                    judged.limit().value(),
                    "",
                    judged.verdict(),
                    new Basis(
                            "DUT-3",
                            "Q = Q_r·(V/V_r)²·f/f_r, I = I_r·V/V_r·f/f_r",
                            List.of(
                                    new Term("V_bus", "line to line, there", there.volts(), "V"),
                                    new Term("f", "there", there.hertz(), "Hz"),
                                    new Term("V_r", "rated voltage of a unit's leg", type.legVolts(), "V"),
                                    new Term("f_r", "rated frequency", type.ratedHertz(), "Hz")),
                            judged.limit().source())));
        }
        return new Relocation(
                stage.name(),
                stage.ratedVars(),
                model.vars(bank.system().nominalVolts(), bank.system().angularFrequency()),
                model.vars(there.volts(), omega),
                stress,
                checks);
    }

    /** Voltage across a unit's leg with all groups alike, no reactor [V]. */
    static double healthyUnitVolts(Stage stage, double lineVolts) {
        double phase = lineVolts / Math.sqrt(3.0);
        boolean delta = stage.connection() == Connection.DELTA;
        double leg = delta ? lineVolts : stage.connection().isBridge() ? 0.5 * phase : phase;
        return leg / stage.layout().groups();
    }
}
