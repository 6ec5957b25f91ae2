package org.varwright.bankfile;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Connection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.UnitType;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;

/**
 * One stage as its nameplates have it, healthy and at nominal voltage. With a second wye of its own layout, legs are those of the first.
 *
 * @param stage the stage
 * @param units number of units: cans where they have three phases
 * @param ratedVars sum of the nameplates [var]
 * @param varsAtNominal reactive power at the system's nominal voltage and frequency, reactor included [var]
 * @param capacitanceFaradsPerLeg of a leg of the first wye, of a quarter in a bridge [F]
 * @param legAmperes rms current of that leg at nominal voltage [A]
 * @param unitVolts rms voltage on each unit at nominal voltage [V]; on each phase inside a three-phase unit
 * @param unitVoltsPerRated the same as a multiple of rated
 * @param basis how the numbers came about
 */
public record StageSummary(
        Stage stage,
        int units,
        double ratedVars,
        double varsAtNominal,
        double capacitanceFaradsPerLeg,
        double legAmperes,
        double unitVolts,
        double unitVoltsPerRated,
        List<Basis> basis) {
    public StageSummary {
        basis = List.copyOf(basis);
    }

    static StageSummary of(Stage stage, SupplySystem system) {
        UnitType unit = stage.unit();
        LegLayout layout = stage.layout();
        double omega = system.angularFrequency();
        double share = UnitDuty.reactorShare(stage, system);
        double legFarads = UnitDuty.legFarads(unit, layout);
        double legVolts = UnitDuty.legVolts(stage.connection(), system);
        double legAmperes = omega * legFarads * legVolts / (1.0 - share);
        double unitVolts = UnitDuty.unitVolts(stage, layout, system);
        double phaseFarads = UnitDuty.phaseFarads(stage);
        double vars = omega * phaseFarads * system.nominalVolts() * system.nominalVolts() / (1.0 - share);
        List<Basis> basis = new ArrayList<>();
        basis.add(nameplate(unit));
        basis.add(new Basis(
                "BNK-1",
                "C_leg = C·strings·units/groups",
                List.of(
                        new Term("C", "capacitance of a unit", unit.capacitanceFarads(), "F"),
                        new Term("strings", "strings in parallel", layout.strings(), ""),
                        new Term("units", "units in parallel in a group", layout.units(), ""),
                        new Term("groups", "groups in series", layout.groups(), "")),
                Source.FIRST_PRINCIPLES));
        basis.add(new Basis(
                "BNK-2",
                "V = V_leg/(groups·(1 − p)), I_leg = 2πf·C_leg·V_leg/(1 − p), Q = 2πf·C_phase·V_LL²/(1 − p)",
                List.of(
                        new Term("V_leg", "voltage across a leg at nominal voltage", legVolts, "V"),
                        new Term("groups", "groups in series", layout.groups(), ""),
                        new Term("p", "reactance of the reactor per that of the capacitors", share, ""),
                        new Term("f", "system frequency", system.frequencyHertz(), "Hz"),
                        new Term("C_leg", "capacitance of a leg", legFarads, "F"),
                        new Term("C_phase", "capacitance of a phase against the neutral", phaseFarads, "F"),
                        new Term("V_LL", "nominal voltage, line to line", system.nominalVolts(), "V")),
                Source.FIRST_PRINCIPLES));
        return new StageSummary(
                stage,
                stage.positions().size(),
                stage.ratedVars(),
                vars,
                legFarads,
                legAmperes,
                unitVolts,
                unitVolts / unit.legVolts(),
                basis);
    }

    private static Basis nameplate(UnitType unit) {
        return new Basis(
                "NET-1",
                "C = Q/(2π·f·V²), a third of it a leg where three phases are joined in delta inside",
                List.of(
                        new Term("Q", "rated reactive power", unit.ratedVars(), "var"),
                        new Term("f", "rated frequency", unit.ratedHertz(), "Hz"),
                        new Term("V", "rated voltage", unit.ratedVolts(), "V")),
                Source.FIRST_PRINCIPLES);
    }

    public String name() {
        return stage.name();
    }

    public Connection connection() {
        return stage.connection();
    }
}
