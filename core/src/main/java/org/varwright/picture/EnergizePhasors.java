package org.varwright.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Stage;
import org.varwright.basis.Verdict;
import org.varwright.energize.Band;
import org.varwright.energize.Comparison;
import org.varwright.energize.Energize;
import org.varwright.energize.ExpectedCurrent;
import org.varwright.energize.ExpectedSensor;
import org.varwright.plot.Circle;
import org.varwright.plot.Dash;
import org.varwright.plot.Dial;
import org.varwright.plot.Phasor;
import org.varwright.plot.PhasorDiagram;
import org.varwright.quantity.Complex;
import org.varwright.quantity.Dimension;

/** Currents and sensor readings to expect, with the circle within which each may lie, and what was measured. */
public final class EnergizePhasors {
    private EnergizePhasors() {}

    /** All stages. */
    public static PhasorDiagram of(Energize energize) {
        return of(energize, energize.bank().stages());
    }

    /** Some stages, for pages that hold only so many. */
    public static PhasorDiagram of(Energize energize, List<Stage> stages) {
        List<Dial> dials = new ArrayList<>();
        for (Stage stage : stages) {
            Dial lines = Dial.of("Line currents, " + stage.name(), Dimension.CURRENT);
            for (ExpectedCurrent current : energize.currents()) {
                if (current.stage().equals(stage.name()) && current.line()) {
                    lines = current(energize, lines, current);
                }
            }
            dials.add(lines);
            for (ExpectedSensor sensor : energize.sensors()) {
                if (sensor.stage().equals(stage.name())) {
                    dials.add(sensor(energize, sensor));
                }
            }
        }
        boolean measured = !energize.comparison().isEmpty();
        return PhasorDiagram.of(energize.bank().name() + ": first energization", dials)
                .caption("Dashed: expected; dotted circles: how far a reading may be off. "
                        + (measured
                                ? "Meters show no angle: a measured current is drawn at the angle expected, a measured sensor value as a circle. "
                                : "")
                        + Phasors.AGAINST);
    }

    private static Dial current(Energize energize, Dial dial, ExpectedCurrent current) {
        Complex expected = Complex.polar(current.amperes().expected(), current.degrees());
        Dial all = dial.with(Phasor.of(current.place() + " expected", expected).with(Dash.DASHED))
                .with(Circle.band(expected, reach(current.amperes()), ""));
        Optional<Comparison> read = read(energize, current.name());
        return read.map(c -> all.with(Phasor.of(
                        current.place() + " measured" + verdict(c), Complex.polar(c.measured(), current.degrees()))))
                .orElse(all);
    }

    private static Dial sensor(Energize energize, ExpectedSensor sensor) {
        Band band = sensor.read();
        Dial dial = Dial.of(
                sensor.name() + (sensor.secondary().isPresent() ? ", at the relay" : ", primary"),
                sensor.senses().dimension());
        Complex expected = Complex.polar(band.expected(), sensor.degrees());
        Dial all = dial.with(Phasor.of("expected", expected).with(Dash.DASHED))
                .with(Circle.band(expected, reach(band), ""));
        return read(energize, sensor.name())
                .map(c -> all.with(Circle.reading(
                        c.measured(), "measured " + dial.dimension().format(c.measured()) + verdict(c))))
                .orElse(all);
    }

    private static double reach(Band band) {
        return Math.max(band.high() - band.expected(), band.expected() - band.low());
    }

    private static Optional<Comparison> read(Energize energize, String name) {
        return energize.comparison().stream().filter(c -> c.name().equals(name)).findFirst();
    }

    private static String verdict(Comparison comparison) {
        return comparison.verdict() == Verdict.PASS ? "" : ", OUTSIDE";
    }
}
