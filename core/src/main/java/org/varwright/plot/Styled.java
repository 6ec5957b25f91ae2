package org.varwright.plot;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A curve with the pattern in which it is drawn. */
record Styled(Curve curve, Dash dash, Marker marker) {
    /**
     * Of each panel the curves. Patterns go through the chart in turn, a name keeps its pattern from panel to panel, and curves beyond the last pattern get
     * marks as well.
     */
    static List<List<Styled>> of(Chart chart) {
        List<List<Styled>> all = new ArrayList<>();
        Map<String, Integer> numbers = new LinkedHashMap<>();
        for (Panel panel : chart.panels()) {
            all.add(panel.curves().stream().map(c -> of(c, numbers)).toList());
        }
        return all;
    }

    private static Styled of(Curve curve, Map<String, Integer> numbers) {
        if (curve.dash().isPresent()) {
            return new Styled(curve, curve.dash().get(), curve.marker());
        }
        int next = numbers.size();
        int number = numbers.computeIfAbsent(curve.label().isBlank() ? "\u0000" + next : curve.label(), label -> next);
        int round = number / Dash.patterns();
        Marker marker = round == 0 || curve.marker() != Marker.NONE ? curve.marker() : Marker.inTurn(round - 1);
        return new Styled(curve, Dash.inTurn(number), marker);
    }
}
