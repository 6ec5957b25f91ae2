package org.varwright.switching;

import java.util.ArrayList;
import java.util.List;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;

/**
 * Inrush or outrush by formula.
 *
 * @param peakAmperes largest peak, all poles closing together at the peak of the voltage, nothing trapped [A]
 * @param hertz its frequency [Hz]
 * @param farads capacitance that swings [F]
 * @param henries inductance that it swings against [H]
 * @param ohms resistance in the loop [Ω]
 * @param basis how it came about
 */
public record ClosedForm(double peakAmperes, double hertz, double farads, double henries, double ohms, Basis basis) {
    private static final org.varwright.basis.Source PUBLISHED =
            Source.published("IEEE Std C37.012; IEEE Std C37.99; its constants agree within 1 %");

    /**
     * Inrush into a stage that is switched on with no other on (SWI-1).
     *
     * <p><b>Model.</b> {@code Î = √(2/3)·V·√(C/L)}, {@code f = 1/(2π√(LC))}, L of source and stage; the same as {@code √2·√(I_sc·I_1)} and
     * {@code f_s·√(I_sc/I_1)} where the stage adds no inductance.
     * <p><b>Not modelled.</b> Damping, the current at power frequency on top, poles that close apart, trapped charge.
     * <p><b>Accuracy.</b> Exact for one L and C at a constant voltage; the time domain lies 1 to 3 % off for usual sources.
     * <p><b>Source.</b> IEEE Std C37.012.
     *
     * @param lineVolts [V rms]
     * @param farads of one phase [F]
     * @param henries of one phase [H], above 0
     * @param ohms of one phase [Ω]
     * @param terms where these come from
     */
    static ClosedForm isolated(double lineVolts, double farads, double henries, double ohms, List<Term> terms) {
        return of("SWI-1", "Î = √(2/3)·V·√(C/L); f = 1/(2π√(L·C))", lineVolts, farads, henries, ohms, terms, PUBLISHED);
    }

    /**
     * Inrush into a stage that is switched on beside others (SWI-2).
     *
     * <p><b>Model.</b> {@code Î = √(2/3)·V·√(C_eq/L_eq)}, {@code C_eq = C·C_on/(C + C_on)}, {@code L_eq = L + 1/Σ(1/L_on)}.
     * <p><b>Not modelled.</b> The source, damping, poles that close apart, trapped charge; stages of unlike L·C among those that are on.
     * <p><b>Source.</b> IEEE Std C37.012, IEEE Std C37.99.
     */
    static ClosedForm backToBack(double lineVolts, double farads, double henries, double ohms, List<Term> terms) {
        return of(
                "SWI-2",
                "Î = √(2/3)·V·√(C_eq/L_eq); f = 1/(2π√(L_eq·C_eq)); C_eq = C·C_on/(C + C_on); L_eq = L + 1/Σ(1/L_on)",
                lineVolts,
                farads,
                henries,
                ohms,
                terms,
                PUBLISHED);
    }

    /** Outrush of one stage into a fault at the bus (SWI-5): {@code Î·f = √(2/3)·V/(2πL)}. */
    static ClosedForm outrush(double lineVolts, double farads, double henries, double ohms, List<Term> terms) {
        return of(
                "SWI-5",
                "Î = √(2/3)·V·√(C/L); f = 1/(2π√(L·C)); Î·f = √(2/3)·V/(2π·L)",
                lineVolts,
                farads,
                henries,
                ohms,
                terms,
                Source.FIRST_PRINCIPLES);
    }

    private static ClosedForm of(
            String id,
            String formula,
            double lineVolts,
            double farads,
            double henries,
            double ohms,
            List<Term> more,
            Source source) {
        List<Term> terms = new ArrayList<>();
        terms.add(new Term("V", "line to line", lineVolts, "V"));
        terms.addAll(more);
        terms.add(new Term("C", "capacitance that swings, one phase", farads, "F"));
        terms.add(new Term("L", "inductance that it swings against, one phase", henries, "H"));
        return new ClosedForm(
                Math.sqrt(2.0 / 3.0) * lineVolts * Math.sqrt(farads / henries),
                1.0 / (2.0 * Math.PI * Math.sqrt(henries * farads)),
                farads,
                henries,
                ohms,
                new Basis(id, formula, terms, source));
    }

    /** Peak times frequency [A·Hz]. */
    public double product() {
        return peakAmperes * hertz;
    }

    /** Peak where the stage holds {@code trapped} of the peak voltage, against the voltage at closing [A]. */
    public double peakAmperes(double trapped) {
        return peakAmperes * (1.0 + trapped);
    }

    /**
     * Integral of the squared current (SWI-6).
     *
     * <p><b>Model.</b> {@code i = Î·e^(−αt)·sin ωt}, {@code α = R/(2L)}; exactly
     * {@code Î²/2·[(1 − e^(−2αT))/(2α) − Re((1 − e^((−2α+2jω)T))/(2α − 2jω))]}, which is {@code Î²·L/(2R)} when all has died away.
     * <p><b>Not modelled.</b> The current at power frequency; resistance that grows with frequency (it would make the result smaller).
     * <p><b>Source.</b> First principles.
     *
     * @param seconds T, above 0
     * @return [A²s]
     */
    public double ampereSquaredSeconds(double seconds) {
        double a = ohms / henries;
        double w = 4.0 * Math.PI * hertz;
        double decay = Math.exp(-a * seconds);
        double mean = a * seconds < 1e-9 ? seconds : (1.0 - decay) / a;
        // Re of (1 − e^(−aT)(cos wT + j sin wT))/(a − jw)
        double re = 1.0 - decay * Math.cos(w * seconds);
        double im = -decay * Math.sin(w * seconds);
        double ripple = (re * a - im * w) / (a * a + w * w);
        return peakAmperes * peakAmperes / 2.0 * (mean - ripple);
    }

    /** Least inductance for which the peak stays at {@code amperes} (SWI-7) [H]. */
    public double henriesForPeak(double amperes) {
        return henries * (peakAmperes / amperes) * (peakAmperes / amperes);
    }

    /** Least inductance for which peak times frequency stays at {@code product} [A·Hz] (SWI-7) [H]. */
    public double henriesForProduct(double limit) {
        return henries * product() / limit;
    }
}
