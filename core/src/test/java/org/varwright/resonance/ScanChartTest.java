package org.varwright.resonance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.plot.Chart;
import org.varwright.plot.Curve;
import org.varwright.plot.Width;

class ScanChartTest {
    /** Two stages of which nothing is damped: a tuned one and a bare one. */
    private static final Bank UNDAMPED = BankText.bank(BankText.system("11", "200", ""), """
            unit-types: [{name: U, rating: 250 kvar, voltage: 7.2 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}]
            stages:
              - {name: tuned, connection: wye-ungrounded, groups: 1, units: 3, unit: U, reactor: {inductance: 7 mH, position: line, purpose: filter}}
              - {name: bare, connection: wye-ungrounded, groups: 1, units: 2, unit: U}
            """);

    @Test
    void curvesShowEveryResonanceNamed() {
        Resonance resonance = Resonance.of(UNDAMPED, ResonanceQuestion.PLAIN);
        Chart chart = ScanChart.of(resonance);
        // The bus alone, both together, each alone.
        assertEquals(4, chart.panels().getFirst().curves().size());
        CombinationResult both = resonance.combinations().getLast();
        Curve curve = chart.panels().getFirst().curves().get(1);
        assertEquals(both.combination().name(), curve.label());
        for (Peak peak : both.peaks()) {
            assertTrue(
                    peak.order() > 20.0
                            || curve.points().stream()
                                    .anyMatch(p -> Math.abs(p.x() - peak.order()) < 1e-9 && p.y() > 1e3),
                    peak.toString());
        }
        String svg = chart.svg(Width.PAGE);
        assertTrue(svg.contains("Impedance scan"), svg);
        assertTrue(!svg.contains("NaN") && !svg.contains("Infinity"));
    }
}
