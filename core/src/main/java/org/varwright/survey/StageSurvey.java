package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Stage;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;

/**
 * A stage as its units read.
 *
 * @param name of the stage
 * @param ratedVars by the nameplates at nominal voltage and frequency of the system [var]
 * @param vars by the readings, likewise [var]
 * @param spread largest over smallest capacitance of its phases
 * @param assumed units that were taken at their reference
 * @param check of the spread
 */
public record StageSurvey(String name, double ratedVars, double vars, double spread, int assumed, Check check) {
    /** Highest ratio of the phases' capacitances. */
    private static final double MOST_SPREAD = 1.08;

    /**
     * Reactive power and spread of every stage of single-phase units (SRV-20).
     *
     * <p><b>Model.</b> {@code Q = Σ 2πf·C·V²} over legs, {@code V} across each at nominal voltage; a bridge's quarters in series two by two.
     * <p><b>Not modelled.</b> The shift of a floating neutral, reactors.
     * <p><b>Source.</b> First principles; phases within 1.08: IEC 60871-1 (from memory, unchecked).
     */
    static List<StageSurvey> of(Bank bank, List<LegSurvey> legs) {
        List<StageSurvey> all = new ArrayList<>();
        for (Stage stage : bank.stages()) {
            if (!stage.hasThreePhaseUnits()) {
                all.add(of(
                        bank,
                        stage,
                        legs.stream()
                                .filter(leg -> leg.stage().equals(stage.name()))
                                .toList()));
            }
        }
        return List.copyOf(all);
    }

    private static StageSurvey of(Bank bank, Stage stage, List<LegSurvey> legs) {
        double volts = stage.connection() == Connection.DELTA
                ? bank.system().nominalVolts()
                : bank.system().phaseVolts();
        double[] phases = phases(
                stage, legs.stream().mapToDouble(LegSurvey::capacitanceFarads).toArray());
        double[] plates = phases(stage, nameplates(stage, legs));
        double omega = bank.system().angularFrequency();
        double vars = 0.0;
        double rated = 0.0;
        double most = 0.0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < phases.length; i++) {
            vars += omega * phases[i] * volts * volts;
            rated += omega * plates[i] * volts * volts;
            most = Math.max(most, phases[i]);
            least = Math.min(least, phases[i]);
        }
        double spread = most / least;
        Check check = new Check(
                stage.name() + ": largest over smallest phase",
                spread,
                MOST_SPREAD,
                "",
                spread > MOST_SPREAD ? Verdict.WARN : Verdict.PASS,
                new Basis(
                        "SRV-20",
                        "C_largest/C_smallest ≤ 1.08",
                        List.of(
                                new Term("C_largest", "largest phase", most, "F"),
                                new Term("C_smallest", "smallest phase", least, "F")),
                        Source.unchecked("IEC 60871-1")));
        return new StageSurvey(
                stage.name(),
                rated,
                vars,
                spread,
                legs.stream().mapToInt(LegSurvey::assumed).sum(),
                check);
    }

    private static double[] nameplates(Stage stage, List<LegSurvey> legs) {
        double[] plates = new double[legs.size()];
        for (int i = 0; i < plates.length; i++) {
            var layout = stage.layoutOf(legs.get(i).leg());
            plates[i] = stage.unit().capacitanceFarads() * layout.units() * layout.strings() / layout.groups();
        }
        return plates;
    }

    /** Legs of one phase put together, in the order of the stage's legs. */
    private static double[] phases(Stage stage, double[] legs) {
        double[] phases = new double[3];
        for (int i = 0; i < 3; i++) {
            if (stage.connection().isBridge()) {
                double left = 1.0 / (1.0 / legs[4 * i] + 1.0 / legs[4 * i + 1]);
                double right = 1.0 / (1.0 / legs[4 * i + 2] + 1.0 / legs[4 * i + 3]);
                phases[i] = left + right;
            } else {
                phases[i] = stage.connection().isDoubleWye() ? legs[i] + legs[i + 3] : legs[i];
            }
        }
        return phases;
    }
}
