package org.varwright.switching;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.varwright.plot.Axis;
import org.varwright.plot.Callout;
import org.varwright.plot.Chart;
import org.varwright.plot.Curve;
import org.varwright.plot.Panel;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;
import org.varwright.transients.Wave;

/** A closing as a picture: current of every pole and, below it, voltage across every leg of the stage that closes. */
public final class InrushPicture {
    /** Oscillations that are shown; what follows is smaller. */
    private static final double OSCILLATIONS = 12.0;

    private InrushPicture() {}

    /** The closing with the largest current; empty where none could be simulated. */
    public static Optional<InrushCase> hardest(Inrush inrush) {
        return inrush.cases().stream()
                .filter(c -> c.main().isPresent())
                .max(Comparator.comparingDouble(
                        c -> c.main().map(Closing::peakAmperes).orElse(0.0)));
    }

    /**
     * The picture of a closing as the text of an SVG file; empty where it could not be simulated.
     *
     * @param inrush that holds the case
     * @param of poles together at the worst angle, or as asked for
     * @param width of the sheet
     */
    public static Optional<String> svg(Inrush inrush, InrushCase of, Width width) {
        return of.main().flatMap(main -> recorded(inrush, of, main)).map(closing -> draw(inrush, of, closing, width));
    }

    /** The same closing once more, with every step of its waveforms kept. */
    private static Optional<Closing> recorded(Inrush inrush, InrushCase of, Closing main) {
        InrushRequest again = new InrushRequest(
                Optional.of(of.stage()),
                Optional.of(of.alreadyOn()),
                inrush.request().trapped(),
                Optional.of(main.degrees()),
                false,
                inrush.request().restrikes());
        return Inrush.of(inrush.bank(), again)
                .cases()
                .getFirst()
                .main()
                .filter(c -> c.recorded().isPresent());
    }

    private static String draw(Inrush inrush, InrushCase of, Closing closing, Width width) {
        Closing.Recorded recorded = closing.recorded().orElseThrow();
        List<String> legs = inrush.bank().stage(of.stage()).orElseThrow().legs();
        double cycle = 1.0 / inrush.bank().system().frequencyHertz();
        double spread = (closing.degrees().stream().max(Double::compare).orElseThrow()
                        - closing.degrees().stream().min(Double::compare).orElseThrow())
                / 360.0
                * cycle;
        double end = Math.min(cycle + spread, spread + OSCILLATIONS / closing.hertz());
        Wave wave = recorded.wave();
        Panel currents = Panel.of(Axis.linear("current of the pole", Dimension.CURRENT));
        for (int p = 0; p < 3; p++) {
            currents = currents.with(curve("pole " + "ABC".charAt(p), wave, p, end));
        }
        currents = currents.with(peak(closing, wave, end));
        Panel volts = Panel.of(Axis.linear("voltage across the leg", Dimension.VOLTAGE));
        for (int leg = 0; leg < legs.size(); leg++) {
            volts = volts.with(curve("leg " + legs.get(leg), wave, 3 + legs.size() + leg, end));
        }
        return Chart.of(
                        inrush.bank().name() + ": " + of.title(),
                        Axis.linear("time after the first pole closed", Dimension.TIME)
                                .from(0.0)
                                .to(end),
                        currents)
                .under(volts)
                .caption("poles close at " + angles(closing.degrees()) + "; peak "
                        + Dimension.CURRENT.format(closing.peakAmperes(), 3) + " in pole " + closing.pole() + " at "
                        + Dimension.FREQUENCY.format(closing.hertz(), 3))
                .svg(width);
    }

    private static Curve curve(String label, Wave wave, int probe, double end) {
        int count = 0;
        while (count < wave.seconds().length && wave.seconds()[count] <= end) {
            count++;
        }
        double[] x = Arrays.copyOf(wave.seconds(), count);
        double[] y = Arrays.copyOf(wave.values()[probe], count);
        return Curve.of(label, x, y);
    }

    private static Callout peak(Closing closing, Wave wave, double end) {
        double[] amperes = wave.values()["ABC".indexOf(closing.pole())];
        int best = 0;
        for (int i = 0; i < amperes.length && wave.seconds()[i] <= end; i++) {
            best = Math.abs(amperes[i]) > Math.abs(amperes[best]) ? i : best;
        }
        return Callout.at(wave.seconds()[best], amperes[best], Dimension.CURRENT.format(Math.abs(amperes[best]), 3));
    }

    private static String angles(List<Double> degrees) {
        return String.join(
                ", ",
                List.of(
                        "A " + Dimension.digits(degrees.get(0), 4) + "°",
                        "B " + Dimension.digits(degrees.get(1), 4) + "°",
                        "C " + Dimension.digits(degrees.get(2), 4) + "°"));
    }
}
