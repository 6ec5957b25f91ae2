package org.varwright.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.varwright.comtrade.Analog;
import org.varwright.comtrade.Measure;
import org.varwright.comtrade.Ratio;
import org.varwright.comtrade.Recording;
import org.varwright.comtrade.RecordingText;
import org.varwright.comtrade.Samples;
import org.varwright.comtrade.TimeBasis;
import org.varwright.plot.Axis;
import org.varwright.plot.Chart;
import org.varwright.plot.Curve;
import org.varwright.plot.Limit;
import org.varwright.plot.Panel;
import org.varwright.plot.Point;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;

/** Waveforms of a record: voltages above, currents below, against time. */
public final class RecordingChart {
    /** So many curves are told apart in one panel. */
    private static final int MOST = 6;
    /** Of more channels the first set of three phases is shown. */
    private static final int FIRST = 3;
    /** Points that are kept of a long curve: the least and the largest of each piece. */
    private static final int PIECES = 2000;
    /** A step so many times the one before is a gap. */
    private static final double GAP = 3.0;

    private final Recording recording;
    private final List<String> left = new ArrayList<>();

    private RecordingChart(Recording recording) {
        this.recording = recording;
    }

    /**
     * The picture of a recording; of many channels of a kind the first three. Values are primary where the record tells the ratios of all that are drawn
     * together, else as they are recorded.
     *
     * @throws VarwrightException {@code NOTHING_TO_DRAW} where it has no analog channel with a value
     */
    public static Chart of(Recording recording) {
        return new RecordingChart(recording).chart();
    }

    private Chart chart() {
        List<Panel> panels = new ArrayList<>();
        panel(Measure.VOLTS, "voltage").ifPresent(panels::add);
        panel(Measure.AMPERES, "current").ifPresent(panels::add);
        if (panels.isEmpty()) {
            panel(Measure.OTHER, "value").ifPresent(panels::add);
        }
        if (panels.isEmpty()) {
            throw new VarwrightException(
                    Message.NOTHING_TO_DRAW, Place.NOWHERE, "the record has no analog channel with a value");
        }
        Chart chart = Chart.of(RecordingText.title(recording), time(), panels.getFirst());
        for (Panel more : panels.subList(1, panels.size())) {
            chart = chart.under(more);
        }
        return left.isEmpty()
                ? chart
                : chart.caption(
                        "Not shown: " + String.join(", ", left) + ". Name channels with --channel to see them.");
    }

    private Axis time() {
        return recording.timing().basis() == TimeBasis.NONE
                ? Axis.whole("number of the sample, from 0")
                : Axis.linear("time after the first sample", Dimension.TIME);
    }

    private Optional<Panel> panel(Measure measure, String title) {
        List<Analog> all = recording.analogs().stream()
                .filter(a -> a.measure() == measure
                        && a.values().missing() < a.values().size())
                .toList();
        if (all.isEmpty()) {
            return Optional.empty();
        }
        List<Analog> drawn = all.size() <= MOST ? all : all.subList(0, FIRST);
        if (drawn.size() < all.size()) {
            left.add(all.size() - drawn.size() + " more of " + title);
        }
        boolean isPrimary = drawn.stream().allMatch(a -> Double.isFinite(a.toPrimarySi()));
        Panel panel = Panel.of(axis(measure, title + (isPrimary ? ", primary" : side(drawn)), drawn));
        for (Analog analog : drawn) {
            double factor = measure == Measure.OTHER ? 1.0 : isPrimary ? analog.toPrimarySi() : analog.toSi();
            panel = panel.with(Curve.of(analog.title(), points(analog.values(), v -> v * factor)));
        }
        if (recording.triggerSeconds().isPresent()
                && isInside(recording.triggerSeconds().getAsDouble())) {
            panel = panel.with(Limit.upright(recording.triggerSeconds().getAsDouble(), "trigger"));
        }
        return Optional.of(panel);
    }

    private boolean isInside(double seconds) {
        Samples times = recording.seconds();
        return recording.timing().basis() != TimeBasis.NONE
                && seconds >= times.at(0)
                && seconds <= times.at(times.size() - 1);
    }

    private static Axis axis(Measure measure, String title, List<Analog> drawn) {
        return switch (measure) {
            case VOLTS -> Axis.linear(title, Dimension.VOLTAGE);
            case AMPERES -> Axis.linear(title, Dimension.CURRENT);
            case OTHER -> {
                String unit = drawn.getFirst().unit().strip();
                boolean isOne = drawn.stream().allMatch(a -> a.unit().strip().equals(unit));
                yield Axis.linear(title, isOne ? unit : "");
            }
        };
    }

    private static String side(List<Analog> drawn) {
        Ratio.Side first = drawn.getFirst().ratio().side();
        if (!drawn.stream().allMatch(a -> a.ratio().side() == first)) {
            return ", each at its own side";
        }
        return switch (first) {
            case PRIMARY -> ", primary";
            case SECONDARY -> ", secondary";
            case UNKNOWN -> ", side not said";
        };
    }

    /** The least and the largest value of every piece in their order; NaN where values or times have a gap. */
    private List<Point> points(Samples values, ToDoubleFunction<Double> shown) {
        Samples times = recording.seconds();
        int step = Math.max(1, values.size() / PIECES);
        List<Point> points = new ArrayList<>();
        for (int from = 0; from < values.size(); from += step) {
            int least = from;
            int largest = from;
            for (int i = from; i < Math.min(values.size(), from + step); i++) {
                if (isGap(times, i) && !points.isEmpty()) {
                    points.add(new Point(times.at(i), Double.NaN));
                }
                least = !(values.at(least) <= values.at(i)) ? i : least;
                largest = !(values.at(largest) >= values.at(i)) ? i : largest;
            }
            int first = Math.min(least, largest);
            int second = Math.max(least, largest);
            points.add(new Point(times.at(first), shown.applyAsDouble(values.at(first))));
            if (second != first) {
                points.add(new Point(times.at(second), shown.applyAsDouble(values.at(second))));
            }
        }
        return points;
    }

    private static boolean isGap(Samples times, int index) {
        return index >= 2
                && times.at(index) - times.at(index - 1) > GAP * (times.at(index - 1) - times.at(index - 2))
                && index + 1 < times.size()
                && times.at(index) - times.at(index - 1) > GAP * (times.at(index + 1) - times.at(index));
    }
}
