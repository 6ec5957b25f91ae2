package org.varwright.fit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.bank.UnitPosition;
import org.varwright.survey.Survey;

/**
 * What readings say of the units as they stand now. Only what was measured, and can be right, counts as read; a unit that nobody measured is not in it.
 *
 * @param farads capacitance by position [F], more than 0
 * @param open positions whose unit conducts nothing by its reading or its fuse
 */
public record AsRead(Map<UnitPosition, Double> farads, List<UnitPosition> open) {
    /** Where there are no readings. */
    public static final AsRead NOTHING = new AsRead(Map.of(), List.of());

    public AsRead {
        farads = Collections.unmodifiableMap(new LinkedHashMap<>(farads));
        open = List.copyOf(open);
    }

    /** What the readings of a survey say. */
    public static AsRead of(Survey survey) {
        Map<UnitPosition, Double> farads = new LinkedHashMap<>();
        List<UnitPosition> open = new ArrayList<>();
        for (Fitted unit : FitInput.from(survey, List.of(), FitOptions.USUAL).units()) {
            if (unit.role() == Fitted.Role.CONDEMNED && !(unit.capacitanceFarads() > 0.0)) {
                open.add(unit.at());
            } else if (unit.isMeasured() && unit.capacitanceFarads() > 0.0) {
                farads.put(unit.at(), unit.capacitanceFarads());
            }
        }
        return new AsRead(farads, open);
    }

    /** A warning for each unit that conducts nothing: what is expected of the bank does not hold with it. */
    public List<String> warnings() {
        return open.stream()
                .map(
                        at -> at.name()
                                + " conducts nothing by its reading; it is counted with its earlier value: don't energize before it is replaced")
                .toList();
    }
}
