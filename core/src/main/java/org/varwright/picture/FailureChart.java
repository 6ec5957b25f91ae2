package org.varwright.picture;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.varwright.bank.Bank;
import org.varwright.bank.Protection;
import org.varwright.plot.Axis;
import org.varwright.plot.Chart;
import org.varwright.plot.Curve;
import org.varwright.plot.Limit;
import org.varwright.plot.Marker;
import org.varwright.plot.Panel;
import org.varwright.plot.Point;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;
import org.varwright.unbalance.FailureRow;
import org.varwright.unbalance.SettingStudy;
import org.varwright.unbalance.Unbalance;
import org.varwright.unbalance.VoltageLimit;

/** The failure table of one stage: the highest voltage left behind and what the sensor sees, by the number of failures in one group. */
public final class FailureChart {
    /** Two curves that differ by less than this part are drawn as one. */
    private static final double ALIKE = 0.03;

    private FailureChart() {}

    /**
     * The picture.
     *
     * @param unbalance the whole table
     * @param stage name; the first one where it is not given
     * @throws VarwrightException {@code NOTHING_TO_DRAW} where the bank has no such stage, or no failure of it has an effect that can be worked out
     */
    public static Chart of(Unbalance unbalance, Optional<String> stage) {
        Bank bank = unbalance.bank();
        String name = stage.orElse(bank.stages().getFirst().name());
        if (bank.stage(name).isEmpty()) {
            throw new VarwrightException(
                    Message.NOTHING_TO_DRAW,
                    new Place("", 0, 0, "--stage"),
                    "the bank has no stage \"" + name + "\"; it has "
                            + String.join(
                                    ", ",
                                    bank.stages().stream().map(s -> s.name()).toList()));
        }
        Optional<SettingStudy> study = unbalance.settings().stream()
                .filter(s -> s.protection().stage().equals(name))
                .findFirst();
        List<FailureRow> rows = unbalance.failures().stream()
                .filter(r -> r.stage().equals(name) && r.effect().isPresent())
                .toList();
        if (rows.isEmpty()) {
            throw new VarwrightException(
                    Message.NOTHING_TO_DRAW,
                    Place.NOWHERE,
                    "no failure of " + name + " has an effect that can be worked out");
        }
        Set<String> kinds = new LinkedHashSet<>();
        rows.forEach(r -> kinds.add(r.kind()));
        String kind = study.map(SettingStudy::kind)
                .filter(kinds::contains)
                .orElse(rows.getFirst().kind());
        List<FailureRow> own = rows.stream().filter(r -> r.kind().equals(kind)).toList();
        int most = own.stream().mapToInt(FailureRow::count).max().orElseThrow();
        Axis x = Axis.whole(words(kind) + " in one place").from(0.0).to(most + 0.5);
        VoltageLimit limit = VoltageLimit.of(bank.standard());
        Panel volts = Panel.of(Axis.linear("highest voltage left on a unit or section, of rated", Dimension.FRACTION))
                .with(curve("", own, r -> r.effect().orElseThrow().highestPerRated()))
                .with(Limit.across(
                        limit.multiple(), Dimension.FRACTION.format(limit.multiple()) + ", continuous limit"));
        Chart chart = Chart.of(bank.name() + ", " + name + ": what failures do", x, volts);
        if (study.isPresent()) {
            chart = chart.under(signal(study.get(), own));
        }
        return chart.caption("Worst place for each count"
                + (study.isPresent()
                        ? "; the sensor's change from what it shows with nothing failed, primary, largest and smallest over the places"
                        : "")
                + (bank.stages().size() > 1 ? ". Other stages: --stage" : "") + ".");
    }

    private static String words(String kind) {
        return switch (kind) {
            case "unit-out" -> "units out";
            case "sections-shorted" -> "sections shorted";
            case "elements-out" -> "element fuses operated";
            default -> kind.replace('-', ' ');
        };
    }

    /** A value of a row. */
    private interface Reading {
        double of(FailureRow row);
    }

    private static Curve curve(String label, List<FailureRow> rows, Reading reading) {
        TreeMap<Integer, Double> largest = new TreeMap<>();
        rows.forEach(r -> largest.merge(r.count(), reading.of(r), Math::max));
        List<Point> points = new ArrayList<>();
        largest.forEach((count, value) -> points.add(new Point(count, value)));
        return Curve.of(label, points).with(Marker.DOT);
    }

    private static Panel signal(SettingStudy study, List<FailureRow> rows) {
        Protection protection = study.protection();
        Dimension dimension = protection.senses().dimension();
        Reading change = row -> row.effect().orElseThrow().changes().stream()
                .mapToDouble(c -> c.magnitude())
                .max()
                .orElse(0.0);
        Curve largest = curve("largest", rows, change);
        Curve negative = curve("smallest", rows, r -> -change.of(r));
        Curve smallest = Curve.of(
                        "smallest",
                        negative.points().stream()
                                .map(p -> new Point(p.x(), -p.y()))
                                .toList())
                .with(Marker.SQUARE);
        Panel panel = Panel.of(Axis.linear(study.name(), dimension).withZero());
        boolean same = true;
        for (int i = 0; i < largest.points().size(); i++) {
            double high = largest.points().get(i).y();
            same &= high - smallest.points().get(i).y() <= ALIKE * Math.abs(high);
        }
        panel = same
                ? panel.with(new Curve("", largest.points(), largest.dash(), Marker.DOT))
                : panel.with(largest).with(smallest);
        for (Setting set : Setting.of(protection)) {
            panel = panel.with(Limit.across(set.primary(), set.words()));
        }
        return panel;
    }
}
