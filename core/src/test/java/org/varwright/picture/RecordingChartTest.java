package org.varwright.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.comtrade.Instant;
import org.varwright.comtrade.Ratio;
import org.varwright.comtrade.RecordDraft;
import org.varwright.plot.Chart;
import org.varwright.plot.Curve;
import org.varwright.plot.Point;
import org.varwright.problem.VarwrightException;

class RecordingChartTest {
    private static final Instant START = new Instant(2024, 3, 9, 14, 5, 7, 0);

    private static RecordDraft draft() {
        return new RecordDraft("Plover Hill", "REC 1", 60.0, 1000.0, START);
    }

    @Test
    void voltagesStandAboveCurrentsInSiUnits() {
        Chart chart = RecordingChart.of(draft().analog("IA", "A", "A", Ratio.UNKNOWN, 1.0, 2.0, 3.0)
                .analog("VA", "A", "kV", Ratio.UNKNOWN, 8.0, 0.0, -8.0)
                .triggered(0.001)
                .build());
        assertEquals(
                List.of("voltage, side not said", "current, side not said"),
                chart.panels().stream().map(p -> p.y().title()).toList());
        assertEquals(
                8000.0,
                chart.panels()
                        .getFirst()
                        .curves()
                        .getFirst()
                        .points()
                        .getFirst()
                        .y());
        assertEquals(0.001, chart.panels().getFirst().limits().getFirst().value());
    }

    /** A neutral voltage at its relay's side beside phase voltages at theirs would look sixty times too small. */
    @Test
    void sidesAreNotMixedInOnePanelWhereTheRatiosAreKnown() {
        Chart chart = RecordingChart.of(
                draft().analog("VA", "A", "kV", new Ratio(Ratio.Side.PRIMARY, 7200.0, 120.0), 7.0, -7.0)
                        .analog("VN", "N", "V", new Ratio(Ratio.Side.SECONDARY, 7200.0, 120.0), 30.0, -30.0)
                        .build());
        assertEquals("voltage, primary", chart.panels().getFirst().y().title());
        assertEquals(
                1800.0,
                chart.panels().getFirst().curves().get(1).points().getFirst().y(),
                1e-9);
    }

    @Test
    void ofManyChannelsTheFirstThreeAreShownAndTheOthersCounted() {
        RecordDraft draft = draft();
        for (int i = 1; i <= 9; i++) {
            draft.analog("I" + i, "", "A", Ratio.UNKNOWN, 1.0, 2.0);
        }
        Chart chart = RecordingChart.of(draft.build());
        assertEquals(
                List.of("I1", "I2", "I3"),
                chart.panels().getFirst().curves().stream().map(Curve::label).toList());
        assertEquals("Not shown: 6 more of current. Name channels with --channel to see them.", chart.caption());
    }

    @Test
    void aLongRecordKeepsItsPeak() {
        double[] values = new double[100_000];
        values[77_777] = 40.0;
        Chart chart = RecordingChart.of(
                draft().analog("I", "", "A", Ratio.UNKNOWN, values).build());
        List<Point> points = chart.panels().getFirst().curves().getFirst().points();
        assertTrue(points.size() < 5000, points.size() + " points");
        assertEquals(
                1, points.stream().filter(p -> p.y() == 40.0 && p.x() == 77.777).count());
    }

    @Test
    void aRecordOfStatesAloneHasNoPicture() {
        assertThrows(
                VarwrightException.class,
                () -> RecordingChart.of(draft().status("S", "", true).build()));
    }
}
