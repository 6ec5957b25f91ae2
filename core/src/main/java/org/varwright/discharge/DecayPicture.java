package org.varwright.discharge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.varwright.page.Enumeration;
import org.varwright.plot.Axis;
import org.varwright.plot.Callout;
import org.varwright.plot.Chart;
import org.varwright.plot.Curve;
import org.varwright.plot.Limit;
import org.varwright.plot.Panel;
import org.varwright.plot.Point;
import org.varwright.plot.Shape;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;

/** The decay of a bank's units as a picture: one curve a kind of unit, safe voltage, 5 min, least wait; below it a string with one open resistor. */
public final class DecayPicture {
    /** How the voltages are drawn. */
    public enum Scale {
        LOGARITHMIC,
        LINEAR
    }

    /** Units that decay as alike as this are one curve. */
    private static final double ALIKE = 0.05;

    private static final int SAMPLES = 120;
    private static final int MOST_CURVES = 6;
    private static final double LEAST_SECONDS = 600.0;

    private DecayPicture() {}

    /** Units that are drawn as one curve: the slowest of them. */
    private record Kind(UnitDecay unit, List<String> stages, String which) {
        boolean isLike(UnitDecay other) {
            return near(unit.initialVolts(), other.initialVolts()) && near(tau(unit), tau(other));
        }

        private static double tau(UnitDecay unit) {
            return unit.ohms().orElse(0.0) * unit.farads();
        }

        private static boolean near(double a, double b) {
            return Math.abs(a - b) <= ALIKE * Math.max(Math.abs(a), Math.abs(b));
        }

        Kind and(String stage) {
            List<String> all = new ArrayList<>(stages);
            if (!all.contains(stage)) {
                all.add(stage);
            }
            return new Kind(unit, all, which);
        }

        String label() {
            return Enumeration.of(stages) + which;
        }
    }

    /**
     * The picture as the text of an SVG file.
     *
     * @param discharge of a bank
     * @param scale of the upper panel
     * @param width of the sheet
     */
    public static String svg(Discharge discharge, Scale scale, Width width) {
        double wait = discharge.longestWaitSeconds();
        double end = Math.max(LEAST_SECONDS, 1.5 * wait);
        Axis volts = scale == Scale.LOGARITHMIC
                ? Axis.log("voltage on a unit", Dimension.VOLTAGE).from(1.0)
                : Axis.linear("voltage on a unit", Dimension.VOLTAGE).withZero();
        Panel panel = Panel.of(volts);
        for (Kind kind : kinds(discharge)) {
            panel = panel.with(curve(kind, end));
        }
        DischargeRule rule = discharge.stages().getFirst().chosen();
        panel = panel.with(Limit.across(rule.volts(), Dimension.VOLTAGE.format(rule.volts()) + ", " + rule.standard()))
                .with(Limit.upright(300.0, "5 min"));
        if (wait != 300.0) {
            panel = panel.with(Limit.upright(wait, "least wait " + Dimension.TIME.format(wait)));
        }
        for (int i = 0; i < discharge.courses().size(); i++) {
            Optional<Residual> after = discharge.courses().get(i).after();
            if (after.isPresent() && after.get().volts() > 1.0 && after.get().seconds() <= end) {
                panel = panel.with(Callout.at(
                        after.get().seconds(),
                        after.get().volts(),
                        discharge.stages().get(i).stage().name() + " after "
                                + after.get().print() + ": "
                                + Dimension.VOLTAGE.format(after.get().volts(), 3)));
            }
        }
        Chart chart = Chart.of(
                        discharge.bank().name() + ": decay after opening",
                        Axis.linear("time after opening", Dimension.TIME)
                                .from(0.0)
                                .to(end),
                        panel)
                .caption(
                        "The end of the wait is no permission to touch: prove dead, discharge every unit by stick, short.");
        Optional<StringCase.Case> string = string(discharge);
        if (string.isPresent()) {
            chart = chart.under(strings(string.get(), end, wait)).shape(Shape.TALL);
        }
        return chart.svg(width);
    }

    private static Curve curve(Kind kind, double end) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i <= SAMPLES; i++) {
            double t = end * i / SAMPLES;
            points.add(new Point(t, kind.unit().voltsAfter(t)));
        }
        return Curve.of(kind.label(), points);
    }

    /** The slowest unit of every stage, its quickest where that differs, and every unit whose resistor is open; alike ones of several stages once. */
    private static List<Kind> kinds(Discharge discharge) {
        List<Kind> kinds = new ArrayList<>();
        for (int i = 0; i < discharge.stages().size(); i++) {
            String stage = discharge.stages().get(i).stage().name();
            List<UnitDecay> units = discharge.courses().get(i).units();
            List<UnitDecay> draining =
                    units.stream().filter(u -> u.ohms().isPresent()).toList();
            Optional<UnitDecay> slowest = draining.stream()
                    .max(Comparator.comparingDouble(u -> u.secondsToSafe().orElseThrow()));
            Optional<UnitDecay> quickest = draining.stream()
                    .min(Comparator.comparingDouble(u -> u.secondsToSafe().orElseThrow()));
            if (slowest.isPresent() && quickest.isPresent()) {
                boolean one = new Kind(slowest.get(), List.of(stage), "").isLike(quickest.get());
                add(kinds, slowest.get(), stage, one ? "" : ", slowest");
                if (!one) {
                    add(kinds, quickest.get(), stage, ", quickest");
                }
            }
            units.stream()
                    .filter(u -> u.ohms().isEmpty())
                    .findFirst()
                    .ifPresent(u -> add(kinds, u, stage, ", resistor open"));
        }
        return kinds.size() > MOST_CURVES ? kinds.subList(0, MOST_CURVES) : kinds;
    }

    private static void add(List<Kind> kinds, UnitDecay unit, String stage, String which) {
        for (int k = 0; k < kinds.size(); k++) {
            if (kinds.get(k).which().equals(which) && kinds.get(k).isLike(unit)) {
                kinds.set(k, kinds.get(k).and(stage));
                return;
            }
        }
        kinds.add(new Kind(unit, List.of(stage), which));
    }

    /** The string that hides the most, where that is more than the safe voltage. */
    private static Optional<StringCase.Case> string(Discharge discharge) {
        return discharge.courses().stream()
                .flatMap(c -> c.string().stream())
                .map(StringCase::oneOpen)
                .filter(c ->
                        c.hiddenVolts() > discharge.stages().getFirst().chosen().volts())
                .max(Comparator.comparingDouble(StringCase.Case::hiddenVolts));
    }

    private static Panel strings(StringCase.Case string, double end, double wait) {
        List<StringCase.Sample> samples =
                string.samples().stream().filter(s -> s.seconds() <= end).toList();
        return Panel.of(Axis.linear("string with an open resistor", Dimension.VOLTAGE)
                        .withZero())
                .with(Curve.of(
                        "its group, " + string.at().name(),
                        samples.stream()
                                .map(s -> new Point(s.seconds(), s.slowVolts()))
                                .toList()))
                .with(Curve.of(
                        "next in series",
                        samples.stream()
                                .map(s -> new Point(s.seconds(), s.mateVolts()))
                                .toList()))
                .with(Curve.of(
                        "ends of the string",
                        samples.stream()
                                .map(s -> new Point(s.seconds(), s.endsVolts()))
                                .toList()))
                .with(Limit.upright(wait, "ends joined"));
    }
}
