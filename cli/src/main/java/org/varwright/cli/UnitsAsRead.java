package org.varwright.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import org.varwright.bank.UnitPosition;
import org.varwright.discharge.UnitReadings;
import org.varwright.survey.Measured;
import org.varwright.survey.ReadingRow;
import org.varwright.survey.Survey;
import org.varwright.survey.UnitSurvey;

/** Capacitances and discharge resistances of a survey as the discharge wants them; a capacitance that can't be right is left out. */
final class UnitsAsRead {
    private UnitsAsRead() {}

    static UnitReadings of(Survey survey) {
        Map<UnitPosition, Double> farads = new LinkedHashMap<>();
        for (UnitSurvey unit : survey.units()) {
            if (unit.finding().isEmpty() && unit.capacitanceFarads().orElse(0.0) > 0.0) {
                farads.put(unit.position(), unit.capacitanceFarads().getAsDouble());
            }
        }
        Map<UnitPosition, Double> ohms = new LinkedHashMap<>();
        for (ReadingRow row : survey.readings().rows()) {
            row.resistance().ifPresent(read -> {
                switch (read) {
                    case Measured.Value value -> {
                        if (value.si() > 0.0) {
                            ohms.put(row.position(), value.si());
                        }
                    }
                    case Measured.Above above -> ohms.put(row.position(), Double.POSITIVE_INFINITY);
                    case Measured.OverRange over -> ohms.put(row.position(), Double.POSITIVE_INFINITY);
                    case Measured.Below below -> {
                        // leads that touch, or the wrong range: says nothing of a discharge
                    }
                }
            });
        }
        return new UnitReadings(ohms, farads);
    }
}
