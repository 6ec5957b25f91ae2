package org.varwright.fit;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Stage;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;

/** How the numbers of a fit come about, once for the whole plan. */
final class FitBases {
    static final String SPARES = "FIT-1";
    static final String UNBALANCE = "FIT-2";
    static final String SEARCH = "FIT-3";
    static final String VOLTAGE = "FIT-7";
    static final String ALARM = "FIT-8";
    static final String LEGS = "FIT-9";

    private FitBases() {}

    static List<Basis> of(Bank bank) {
        List<Basis> bases = new ArrayList<>();
        bases.add(new Basis(
                SPARES,
                "same phases, Hz, kV, C = Q/(2·π·f·V²), bushings, element fuses; BIL not lower; measured C inside the"
                        + " nameplate's tolerance",
                List.of(
                        new Term("dV", "rated voltages may differ by (rounding)", FitLimits.SAME_VOLTS, ""),
                        new Term("dC", "nameplate capacitances may differ by (rounding)", FitLimits.SAME_FARADS, "")),
                Source.commonPractice("like for like")));
        for (Stage stage : bank.stages()) {
            StageModel model = StageModel.of(bank, stage);
            UnbalanceSignal.Kind kind = model.signals.getFirst().kind();
            bases.add(new Basis(
                    UNBALANCE,
                    formula(kind, stage.connection()),
                    List.of(
                            new Term(
                                    "V",
                                    "system voltage to neutral",
                                    bank.system().phaseVolts(),
                                    "V"),
                            new Term("C0", "capacitance of a leg by the nameplates", model.nameplateLegFarads, "F")),
                    Source.FIRST_PRINCIPLES));
        }
        bases.add(new Basis(
                SEARCH,
                "limits, then lifts, then unbalance; only the sums in the groups count",
                List.of(),
                Source.FIRST_PRINCIPLES));
        return bases;
    }

    private static String formula(UnbalanceSignal.Kind kind, Connection connection) {
        return switch (kind) {
            case NEUTRAL_VOLTS -> "Vn = V·|ΣC·e|/ΣC, e = 1∠0°, 1∠−120°, 1∠120°";
            case NEUTRAL_AMPERES -> "In = ω·V·|ΣC·e|";
            case BETWEEN_NEUTRALS -> "I = ω·V·|Σ1 C·e − (ΣC·e)·(Σ1 C)/(ΣC)|, Σ1 over the first wye";
            case DIFFERENTIAL -> "I = ω·V·|Σ1 C·e − Σ2 C·e|";
            case BRIDGE ->
                "I = ω·Vp·|Cul·Clr − Cll·Cur|/(Cul + Cll + Cur + Clr), worst phase"
                        + (connection.isGrounded() ? ", Vp = V" : ", Vp = V·|e − ΣC·e/ΣC|");
            case TAP -> "Vt = Vleg·|share below the tap − its share when alike|, worst leg";
            case LEG_DEVIATION -> "d = max|C − mean C|/mean C over the legs";
        };
    }
}
