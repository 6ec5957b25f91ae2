package org.varwright.plot;

import java.util.ArrayList;
import java.util.List;
import org.varwright.quantity.Complex;
import org.varwright.quantity.Dimension;

/** Charts like those that the program draws. */
final class Samples {
    private Samples() {}

    /** Decay of a unit over minutes, with a limit and a wait. */
    static Chart decay() {
        List<Point> nominal = new ArrayList<>();
        List<Point> slow = new ArrayList<>();
        for (int s = 0; s <= 600; s += 5) {
            nominal.add(new Point(s, 11_268.0 * Math.exp(-s / 52.9)));
            slow.add(new Point(s, 11_268.0 * Math.exp(-s / 64.0)));
        }
        Panel volts = Panel.of(
                        Axis.log("voltage across the unit", Dimension.VOLTAGE).from(10.0))
                .with(Band.between(
                        Curve.of("", nominal), Curve.of("", slow), "resistor and capacitance at their tolerances"))
                .with(Curve.of("as rated", nominal))
                .with(Curve.of("slowest", slow))
                .with(Limit.across(50.0, "50 V: IEEE Std 18"))
                .with(Limit.upright(300.0, "5 min"))
                .with(Callout.at(346.6, 50.0, "slowest unit at 50 V after 5 min 47 s"));
        return Chart.of("Decay after opening, stage <2> & \"bay 3\"", Axis.linear("time", Dimension.TIME), volts)
                .caption(
                        "One unit, from the peak of the line voltage (DIS-1). Planning information, never a permission to touch.");
    }

    /** A damped waveform of many samples over two panels. */
    static Chart inrush(int samples) {
        double[] amperes = new double[samples];
        double[] volts = new double[samples];
        double step = 0.05 / samples;
        for (int i = 0; i < samples; i++) {
            double t = i * step;
            double ring = Math.exp(-t / 0.006) * Math.sin(2.0 * Math.PI * 733.0 * t);
            amperes[i] = 4_210.0 * ring + 118.0 * Math.cos(2.0 * Math.PI * 60.0 * t);
            volts[i] = 11_268.0 * Math.cos(2.0 * Math.PI * 60.0 * t)
                    - 11_268.0 * Math.exp(-t / 0.006) * Math.cos(2.0 * Math.PI * 733.0 * t);
        }
        double[] other = new double[samples];
        for (int i = 0; i < samples; i++) {
            other[i] = -0.5 * amperes[i];
        }
        return Chart.of(
                        "Stage 3 onto stages 1 and 2",
                        Axis.linear("time after closing", Dimension.TIME),
                        Panel.of(Axis.linear("current", Dimension.CURRENT))
                                .with(Curve.sampled("phase A", 0.0, step, amperes))
                                .with(Curve.sampled("phase B", 0.0, step, other))
                                .with(Limit.across(5_000.0, "switch: 5 kA peak"))
                                .with(Callout.at(0.00034, 4_010.0, "peak 4.01 kA at 733 Hz")))
                .under(Panel.of(Axis.linear("voltage at the stage", Dimension.VOLTAGE))
                        .with(Curve.sampled("phase A", 0.0, step, volts)));
    }

    /** Time against current on logarithmic axes. */
    static Chart fuse() {
        List<Point> melting = new ArrayList<>();
        List<Point> clearing = new ArrayList<>();
        for (double i = 60.0; i < 12_000.0; i *= 1.08) {
            melting.add(new Point(i, 4_200.0 * 50.0 / Math.pow(i, 2.1) * 10.0));
            clearing.add(new Point(i, 4_200.0 * 70.0 / Math.pow(i, 2.1) * 10.0 + 0.012));
        }
        return Chart.of(
                        "Link 40T and one unit",
                        Axis.log("current", Dimension.CURRENT).from(10.0),
                        Panel.of(Axis.log("time", Dimension.TIME).from(0.01).to(1_000.0))
                                .with(Curve.of("40T least melting time", melting))
                                .with(Curve.of("40T greatest clearing time", clearing))
                                .with(Curve.of(
                                        "case rupture, 10 % probability",
                                        new double[] {400.0, 900.0, 2_500.0, 9_000.0},
                                        new double[] {40.0, 1.0, 0.1, 0.016}))
                                .with(Limit.upright(43.5, "unit current 43.5 A"))
                                .with(Callout.at(3_100.0, 0.02, "outrush of the neighbours: 3.1 kA"))
                                .with(Callout.at(130.0, 600.0, "full short, ungrounded wye: three times 43.5 A")))
                .shape(Shape.TALL);
    }

    /** Impedance by order, with a band and many marks close together. */
    static Chart scan() {
        List<Point> ohms = new ArrayList<>();
        for (double h = 1.0; h <= 25.0; h += 0.02) {
            double reactive = 1.0 / (1.0 / (0.68 * h) - h / 38.0);
            double z = 1.0 / Math.hypot(1.0 / reactive, 1.0 / 90.0);
            ohms.add(new Point(h, z));
        }
        Panel panel = Panel.of(Axis.log("impedance at the bus", Dimension.RESISTANCE))
                .with(Curve.of("all three stages", ohms))
                .with(Band.upright(6.5, 8.0, "within 10 % of the 7th"));
        for (int h : new int[] {5, 7, 11, 13, 17, 19, 23, 25}) {
            double reactive = 1.0 / (1.0 / (0.68 * h) - h / 38.0);
            panel = panel.with(Callout.at(h, 1.0 / Math.hypot(1.0 / reactive, 1.0 / 90.0), "h = " + h));
        }
        return Chart.of("Impedance scan", Axis.whole("order"), panel);
    }

    /** Three legs in good order and with the neutral moved, and the neutral by itself. */
    static PhasorDiagram displaced() {
        Complex neutral = Complex.polar(412.0, 178.0);
        Dial legs = Dial.of("Leg voltages, stage <2>", Dimension.VOLTAGE);
        String[] names = {"A", "B", "C"};
        for (int i = 0; i < 3; i++) {
            Complex terminal = Complex.polar(7_967.0, -120.0 * i);
            legs = legs.with(Phasor.of(names[i] + " healthy", terminal).with(Dash.DASHED))
                    .with(Phasor.of(names[i], terminal.minus(neutral)).from(neutral));
        }
        Dial sensor = Dial.of("Neutral voltage", Dimension.VOLTAGE)
                .with(Phasor.of("healthy", Complex.polar(21.0, 61.0)).with(Dash.DASHED))
                .with(Phasor.of("2 units out", neutral))
                .with(Circle.limit(300.0, "alarm 300 V"))
                .with(Circle.limit(520.0, "trip 520 V"));
        return PhasorDiagram.of("What two units out do to stage 2", List.of(legs, sensor))
                .caption("Angles against phase A to ground.");
    }

    /** One dial of two arrows and a circle. */
    static PhasorDiagram lone() {
        return PhasorDiagram.of(
                "Before and after",
                List.of(Dial.of("Neutral current", Dimension.CURRENT)
                        .with(Phasor.of("before", Complex.polar(0.82, 79.0)).with(Dash.DASHED))
                        .with(Phasor.of("after", Complex.polar(0.03, -100.0)))
                        .with(Circle.limit(1.1, "alarm 1.1 A"))));
    }
}
