package org.varwright.unbalance;

import java.util.List;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;

/**
 * What a sensor may show although nothing failed, primary [V] or [A].
 *
 * @param bank from unequal legs: of the capacitances as measured, or of the assumed spread
 * @param system from unequal phase voltages
 * @param spread from one leg off by the assumed spread, whatever was measured
 * @param bankIsMeasured whether {@code bank} comes from measured capacitances of every unit
 * @param basis how it came about
 */
public record ErrorBudget(double bank, double system, double spread, boolean bankIsMeasured, Basis basis) {
    static ErrorBudget of(
            double inherent, double spread, double system, boolean measured, Assumptions assumptions, String unit) {
        double bank = measured ? inherent : spread;
        Basis basis = new Basis(
                "UNB-3",
                "e = e_bank + e_system, both from the network, added as if at their worst",
                List.of(
                        new Term(
                                "e_bank",
                                measured
                                        ? "sensor with the capacitances as measured"
                                        : "sensor with one leg off by the assumed spread",
                                bank,
                                unit),
                        new Term("δC", "assumed spread of a leg", measured ? 0.0 : assumptions.capacitanceSpread(), ""),
                        new Term("e_system", "sensor with one phase voltage off", system, unit),
                        new Term("δV", "assumed unbalance of the system", assumptions.systemUnbalance(), "")),
                measured ? Source.FIRST_PRINCIPLES : assumptions.source());
        return new ErrorBudget(bank, system, spread, measured, basis);
    }

    /** Both at their worst [V] or [A]. */
    public double total() {
        return bank + system;
    }
}
