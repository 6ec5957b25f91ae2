package org.varwright.fuse;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import org.varwright.bank.Stage;
import org.varwright.basis.Check;
import org.varwright.plot.Axis;
import org.varwright.plot.Band;
import org.varwright.plot.Callout;
import org.varwright.plot.Chart;
import org.varwright.plot.Curve;
import org.varwright.plot.Dash;
import org.varwright.plot.Limit;
import org.varwright.plot.Panel;
import org.varwright.plot.Point;
import org.varwright.plot.Shape;
import org.varwright.quantity.Dimension;

/** Time against current of a stage's fuses, with the currents and times that matter there. */
public final class FusePlot {
    private static final int STEPS = 24;
    private static final double SHORT = 0.01;
    private static final double TENTH = 0.1;

    private FusePlot() {}

    /** The chart of a stage; empty where none of its fuses has a curve. */
    public static Optional<Chart> of(Fuses fuses, Stage stage) {
        List<FuseStudy> studies = fuses.studies().stream()
                .filter(s -> s.stage().name().equals(stage.name()))
                .filter(s -> s.link().isPresent())
                .toList();
        if (studies.isEmpty()) {
            return Optional.empty();
        }
        Panel panel = Panel.of(Axis.log("time", Dimension.TIME).from(0.01).to(1000.0));
        for (FuseStudy study : studies) {
            panel = curves(panel, study, studies.size() > 1);
        }
        panel = currents(panel, studies.getFirst());
        panel = times(panel, studies.getFirst());
        panel = inrush(panel, studies.getFirst());
        return Optional.of(Chart.of(
                        "Fuses of " + stage.name() + ", " + fuses.bank().name(),
                        Axis.log("current, rms", Dimension.CURRENT),
                        panel)
                .shape(Shape.TALL)
                .caption("Curves: " + LinkTable.SOURCE.print()
                        + "; cleared: the slowest link and one cycle of arcing (common"
                        + " practice). Outside 0.1 s to 300 s (600 s above 100 A) nothing is drawn. The rupture curve of the"
                        + " unit's case is not known here: ask its maker."));
    }

    /** The first stage with a fuse that has a curve. */
    public static Optional<Chart> first(Fuses fuses) {
        return fuses.studies().stream()
                .filter(s -> s.link().isPresent())
                .findFirst()
                .flatMap(s -> of(fuses, s.stage()));
    }

    private static Panel curves(Panel panel, FuseStudy study, boolean several) {
        Link link = study.link().orElseThrow();
        String name = several ? study.place().words() + " " + link.name() : link.name();
        Curve melts =
                Curve.of(name + ", quickest melts", points(link, Link.Point::leastAmperes, study.curve()::melting));
        Curve clears = Curve.of(
                name + ", slowest has cleared", points(link, Link.Point::mostAmperes, study.curve()::clearing));
        return panel.with(Band.between(melts, clears, "")).with(melts).with(clears);
    }

    /** Along a curve from the longest time of its table to the shortest. */
    private static List<Point> points(Link link, ToDoubleFunction<Link.Point> current, DoubleFunction<FuseTime> time) {
        List<Point> points = new ArrayList<>();
        double low = current.applyAsDouble(link.points().getFirst());
        double high = current.applyAsDouble(link.points().getLast());
        for (Link.Point corner : link.points()) {
            points.add(point(current.applyAsDouble(corner), time));
        }
        for (int i = 1; i < STEPS; i++) {
            points.add(point(low * Math.pow(high / low, i / (double) STEPS), time));
        }
        points.sort(Comparator.comparingDouble(Point::x));
        return points;
    }

    private static Point point(double amperes, DoubleFunction<FuseTime> time) {
        return new Point(amperes, time.apply(amperes).seconds());
    }

    private static Panel currents(Panel panel, FuseStudy study) {
        Panel with = panel;
        if (study.service().isPresent()) {
            double service = study.service().get().ruleAmperes();
            with = with.with(Limit.upright(service, "in service " + amperes(service)))
                    .with(Limit.upright(
                            study.neededAmperes().orElseThrow(),
                            "must carry " + amperes(study.neededAmperes().orElseThrow())));
        }
        OptionalDouble fault = study.faultAmperes();
        if (fault.isPresent()) {
            double amperes = fault.getAsDouble();
            with = with.with(Limit.upright(amperes, "a unit shorted " + amperes(amperes)));
            FuseTime clearing = study.curve().clearing(amperes);
            if (clearing.bound() == FuseTime.Bound.ABOUT) {
                with = with.with(Callout.at(
                        amperes, clearing.seconds(), "cleared within " + Dimension.TIME.format(clearing.seconds(), 2)));
            }
        }
        return with;
    }

    /** The inrush as its I²t: a current that carries as much in the time read off. */
    private static Panel inrush(Panel panel, FuseStudy study) {
        OptionalDouble i2t = study.inrushAmpereSquaredSeconds();
        if (i2t.isEmpty()) {
            return panel;
        }
        double value = i2t.getAsDouble();
        return panel.with(Curve.of(
                        "inrush " + Dimension.digits(value, 3) + " A²s",
                        List.of(new Point(Math.sqrt(value / SHORT), SHORT), new Point(Math.sqrt(value / TENTH), TENTH)))
                .with(Dash.FINE));
    }

    /** How long the others bear their voltage, and when the bank trips. */
    private static Panel times(Panel panel, FuseStudy study) {
        Panel with = panel;
        for (Check check : study.checks()) {
            if (check.basis().id().equals("FUS-13") && check.unit().equals("s")) {
                with = with.with(Limit.across(
                        check.limit(), "the others bear it for " + Dimension.TIME.format(check.limit(), 2)));
            }
            if (check.basis().id().equals("FUS-17")) {
                with = with.with(
                        Limit.across(check.limit(), "the bank trips after " + Dimension.TIME.format(check.limit(), 2)));
            }
        }
        return with;
    }

    private static String amperes(double value) {
        return Dimension.CURRENT.format(value, 3);
    }
}
