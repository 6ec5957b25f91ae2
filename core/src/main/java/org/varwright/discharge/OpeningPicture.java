package org.varwright.discharge;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.plot.Axis;
import org.varwright.plot.Chart;
import org.varwright.plot.Curve;
import org.varwright.plot.Limit;
import org.varwright.plot.Panel;
import org.varwright.plot.Point;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;

/** The opening of a stage as a picture: voltage across one leg of every phase, from half a cycle before the first pole clears. */
public final class OpeningPicture {
    private static final int SAMPLES = 240;
    private static final double CYCLES_BEFORE = 0.5;
    private static final double CYCLES_AFTER = 1.0;

    private OpeningPicture() {}

    /**
     * The picture as the text of an SVG file.
     *
     * @param discharge of a bank
     * @param index of the stage in the order of the file
     * @param width of the sheet
     */
    public static String svg(Discharge discharge, int index, Width width) {
        Bank bank = discharge.bank();
        StageDischarge stage = discharge.stages().get(index);
        StageCourse course = discharge.courses().get(index);
        StageCircuit circuit = StageCircuit.of(
                new UnitValues(bank, discharge.question().readings()), stage.stage(), stage.resistance());
        PoleOpening worst = course.worst();
        double cycle = 1.0 / bank.system().frequencyHertz();
        double[] seconds = new double[SAMPLES + 1];
        for (int i = 0; i <= SAMPLES; i++) {
            seconds[i] = cycle * (-CYCLES_BEFORE + (CYCLES_BEFORE + CYCLES_AFTER) * i / SAMPLES);
        }
        double[][] volts = Opening.simulation(bank, circuit, stage.opening().phasePeakVolts(circuit.isDelta()))
                .legVolts(List.of("A", "B", "C").indexOf(worst.firstPole()), seconds);
        Panel panel = Panel.of(Axis.linear("voltage across a leg", Dimension.VOLTAGE));
        List<String> drawn = new ArrayList<>();
        for (int l = 0; l < circuit.legs().size(); l++) {
            String phase = circuit.legs().get(l).name().substring(0, 1);
            if (!drawn.contains(phase)) {
                drawn.add(phase);
                List<Point> points = new ArrayList<>();
                for (int i = 0; i <= SAMPLES; i++) {
                    points.add(new Point(seconds[i], volts[l][i]));
                }
                PoleOpening.LegHold hold = worst.legs().get(l);
                panel = panel.with(Curve.of(
                        hold.leg() + ": " + Dimension.digits(hold.perPeak(), 3).replace('-', '−') + " × peak", points));
            }
        }
        for (PoleOpening.Clearing clearing : worst.clearings()) {
            panel = panel.with(Limit.upright(clearing.seconds(), String.join(" and ", clearing.poles()) + " cleared"));
        }
        return Chart.of(
                        bank.name() + ", " + stage.stage().name() + ": opening pole by pole",
                        Axis.linear("time after the first pole cleared", Dimension.TIME)
                                .from(seconds[0])
                                .to(seconds[SAMPLES]),
                        panel)
                .svg(width);
    }
}
