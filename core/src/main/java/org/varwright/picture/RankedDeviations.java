package org.varwright.picture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.varwright.plot.Axis;
import org.varwright.plot.Band;
import org.varwright.plot.Bars;
import org.varwright.plot.Callout;
import org.varwright.plot.Chart;
import org.varwright.plot.Marker;
import org.varwright.plot.Panel;
import org.varwright.plot.Point;
import org.varwright.plot.Shape;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;
import org.varwright.survey.Survey;
import org.varwright.survey.UnitSurvey;
import org.varwright.survey.UnitVerdict;

/** Units from the lowest to the highest deviation, with the meter's band and the verdicts. */
public final class RankedDeviations {
    /** Bars beyond this part are cut. */
    private static final double CUT = 0.4;

    /** Above and below the bars there is room for words. */
    private static final double ROOM = 1.3;

    private static final int MOST_NAMED = 16;
    /** The second panel is enlarged to so many times the meter's band, where the first one hides it. */
    private static final double ENLARGED = 3.0;

    private RankedDeviations() {}

    /** Whether any unit has a reading that can be held against something. */
    public static boolean has(Survey survey) {
        return survey.units().stream().anyMatch(u -> Deviation.of(u).isPresent());
    }

    /**
     * The picture.
     *
     * @throws VarwrightException {@code NOTHING_TO_DRAW} where no unit has a reading and a reference
     */
    public static Chart of(Survey survey) {
        if (!has(survey)) {
            throw new VarwrightException(
                    Message.NOTHING_TO_DRAW,
                    Place.NOWHERE,
                    "no unit has a reading that can be held against a reference");
        }
        List<UnitSurvey> ranked = new ArrayList<>(
                survey.units().stream().filter(u -> Deviation.of(u).isPresent()).toList());
        ranked.sort(Comparator.comparingDouble(u -> Deviation.of(u).orElseThrow()));
        double meter = survey.settings().meterLimit();
        double largest = ranked.stream()
                .mapToDouble(u -> Math.abs(Deviation.of(u).orElseThrow()))
                .max()
                .orElseThrow();
        double high = Math.min(CUT, Math.max(largest, 2.0 * meter));
        boolean enlarged = high > 2.0 * ENLARGED * meter;
        Panel all = bars(
                axis("deviation from the reference").from(-ROOM * high).to(ROOM * high),
                ranked,
                meter,
                high,
                !enlarged);
        List<UnitSurvey> named = named(ranked);
        for (UnitSurvey unit : named) {
            double off = Deviation.of(unit).orElseThrow();
            all = all.with(Callout.at(
                            ranked.indexOf(unit) + 1.0,
                            Math.max(-high, Math.min(high, off)),
                            VerdictMark.letter(unit.verdict()) + " "
                                    + unit.position().name() + " " + Deviation.percent(off) + (off >= 9.0 ? "" : " %"))
                    .with(Marker.NONE));
        }
        Axis x = Axis.whole("units, from the lowest").from(0.0).to(ranked.size() + 1.0);
        Chart chart =
                Chart.of(survey.bank().name() + ": deviations, ranked", x, all).shape(Shape.SQUARE);
        if (enlarged) {
            chart = chart.under(bars(
                    axis("the same, enlarged").from(-ENLARGED * meter).to(ENLARGED * meter),
                    ranked,
                    meter,
                    ENLARGED * meter,
                    true));
        }
        return chart.caption(caption(survey, ranked, named, largest));
    }

    private static Axis axis(String title) {
        return Axis.linear(title, Dimension.FRACTION);
    }

    private static Panel bars(Axis axis, List<UnitSurvey> ranked, double meter, double high, boolean named) {
        String name = "meter \u00b1" + Dimension.digits(100.0 * meter, 3) + " %";
        Panel panel = Panel.of(axis).with(Band.across(-meter, meter, named ? name : ""));
        for (UnitVerdict verdict : UnitVerdict.values()) {
            List<Point> points = new ArrayList<>();
            for (int i = 0; i < ranked.size(); i++) {
                if (ranked.get(i).verdict() == verdict) {
                    double off = Deviation.of(ranked.get(i)).orElseThrow();
                    points.add(new Point(i + 1.0, Math.max(-high, Math.min(high, off))));
                }
            }
            if (!points.isEmpty()) {
                panel = panel.with(new Bars(points, 0.8, VerdictMark.fill(verdict)));
            }
        }
        return panel;
    }

    /** All that are not healthy, the farthest first where there are too many. */
    private static List<UnitSurvey> named(List<UnitSurvey> ranked) {
        return ranked.stream()
                .filter(u -> u.verdict() != UnitVerdict.HEALTHY)
                .sorted(Comparator.comparingDouble(
                        u -> -Math.abs(Deviation.of(u).orElseThrow())))
                .limit(MOST_NAMED)
                .toList();
    }

    private static String caption(Survey survey, List<UnitSurvey> ranked, List<UnitSurvey> named, double largest) {
        long notHealthy =
                ranked.stream().filter(u -> u.verdict() != UnitVerdict.HEALTHY).count();
        int without = survey.units().size() - ranked.size();
        return "Bars: grey healthy, hatched (W) watch, solid (R) replace, open (M) measure again."
                + (notHealthy > named.size() ? " The " + named.size() + " farthest off are named." : "")
                + (largest > CUT ? " Bars beyond \u00b140 % are cut." : "")
                + (without > 0
                        ? " " + without + (without == 1 ? " unit has" : " units have") + " no reading that can be used."
                        : "");
    }
}
