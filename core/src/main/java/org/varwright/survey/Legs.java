package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Bank;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;

/** Puts the units of each leg together: parallel units, groups in series, strings in parallel (SRV-12). */
final class Legs {
    private Legs() {}

    /** Legs of every stage of single-phase units, in order. */
    static List<LegSurvey> of(Bank bank, Map<UnitPosition, UnitSurvey> units) {
        List<LegSurvey> legs = new ArrayList<>();
        for (Stage stage : bank.stages()) {
            if (stage.hasThreePhaseUnits()) {
                continue;
            }
            List<LegSurvey> ofStage = new ArrayList<>();
            for (String leg : stage.legs()) {
                ofStage.add(leg(stage, leg, units));
            }
            for (LegSurvey leg : ofStage) {
                LegLayout layout = stage.layoutOf(leg.leg());
                double mean = ofStage.stream()
                        .filter(other -> stage.layoutOf(other.leg()).equals(layout))
                        .mapToDouble(LegSurvey::capacitanceFarads)
                        .average()
                        .orElseThrow();
                legs.add(new LegSurvey(
                        leg.stage(),
                        leg.leg(),
                        leg.capacitanceFarads(),
                        leg.capacitanceFarads() / mean - 1.0,
                        leg.units(),
                        leg.assumed()));
            }
        }
        return legs;
    }

    private static LegSurvey leg(Stage stage, String leg, Map<UnitPosition, UnitSurvey> units) {
        LegLayout layout = stage.layoutOf(leg);
        double[][] groups = new double[layout.strings()][layout.groups()];
        int assumed = 0;
        int count = 0;
        for (UnitPosition position : stage.positions()) {
            if (!position.leg().equals(leg)) {
                continue;
            }
            UnitSurvey unit = units.get(position);
            double farads = stage.unit().capacitanceFarads();
            boolean judged = false;
            if (unit != null) {
                judged = unit.verdict() != UnitVerdict.MEASURE_AGAIN
                        && unit.capacitanceFarads().isPresent();
                farads = judged
                        ? unit.capacitanceFarads().getAsDouble()
                        : unit.referenceFarads().orElse(farads);
            }
            count++;
            assumed += judged ? 0 : 1;
            groups[position.string() - 1][position.group() - 1] += farads;
        }
        double whole = 0.0;
        for (double[] string : groups) {
            double elastance = 0.0;
            for (double group : string) {
                elastance += 1.0 / group;
            }
            whole += 1.0 / elastance;
        }
        return new LegSurvey(stage.name(), leg, whole, 0.0, count, assumed);
    }
}
