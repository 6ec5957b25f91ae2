package org.varwright.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.plot.Axis;
import org.varwright.plot.Callout;
import org.varwright.plot.Chart;
import org.varwright.plot.Curve;
import org.varwright.plot.Panel;
import org.varwright.plot.Point;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;
import org.varwright.waveform.Signal;
import org.varwright.waveform.Thinned;

/** A record as a picture: currents of the stage that it is about and its sensor below them, with what was found marked where it was found. */
public final class RecordPicture {
    private static final int POINTS = 1200;

    /** Cycles that are shown before and after what matters most. */
    private static final double BEFORE_CYCLES = 4.0;

    private static final double AFTER_CYCLES = 8.0;

    private static final int MOST_MARKS = 5;

    private static final List<String> MARKED = List.of(
            "closed",
            "inrush",
            "opened",
            "restrike",
            "re-ignition",
            "fault",
            "pole-not-opened",
            "pole-not-closed",
            "pre-strike",
            "sensor",
            "trip-passed");

    private RecordPicture() {}

    /** The picture as the text of an SVG file; empty where no channel has a place at a bank. */
    public static Optional<String> svg(RecordStudy study, Width width) {
        return study.matching().flatMap(m -> subject(study, m).map(stage -> draw(study, m, stage, width)));
    }

    /** The stage with most that failed, else the first with a channel. */
    private static Optional<String> subject(RecordStudy study, ChannelMatching matching) {
        Map<String, Integer> weight = new LinkedHashMap<>();
        for (ChannelMatching.Assignment a : matching.assignments()) {
            stageOf(a.role()).ifPresent(s -> weight.merge(s, 0, Integer::sum));
        }
        study.findings()
                .forEach(f -> weight.replaceAll((stage, n) -> f.where().startsWith(stage)
                        ? n + (f.weight() == Finding.Weight.FAILED ? 3 : f.weight() == Finding.Weight.LOOK ? 1 : 0)
                        : n));
        return weight.entrySet().stream()
                .max(Comparator.comparingInt(Map.Entry::getValue))
                .flatMap(best -> weight.entrySet().stream()
                        .filter(e -> e.getValue().equals(best.getValue()))
                        .map(Map.Entry::getKey)
                        .findFirst());
    }

    private static Optional<String> stageOf(Role role) {
        return switch (role) {
            case Role.StageAmperes r -> Optional.of(r.stage());
            case Role.StageVolts r -> Optional.of(r.stage());
            case Role.Sensor r -> Optional.of(r.stage());
            case Role.BusVolts r -> Optional.empty();
            case Role.BusLineVolts r -> Optional.empty();
            case Role.BankAmperes r -> Optional.empty();
            case Role.None r -> Optional.empty();
        };
    }

    private static String draw(RecordStudy study, ChannelMatching matching, String stage, Width width) {
        List<Finding> marked = study.findings().stream()
                .filter(f -> MARKED.contains(f.kind()) && f.where().startsWith(stage))
                .sorted(Comparator.comparingInt((Finding f) -> f.weight() == Finding.Weight.FAILED ? 0 : 1)
                        .thenComparingDouble(Finding::seconds))
                .limit(MOST_MARKS)
                .toList();
        double[] span = span(study, marked);
        List<Panel> panels = new ArrayList<>();
        panel(
                        matching,
                        r -> r instanceof Role.StageAmperes a && a.stage().equals(stage),
                        Axis.linear("current of the pole", Dimension.CURRENT),
                        span,
                        marked)
                .ifPresent(panels::add);
        panel(
                        matching,
                        r -> r instanceof Role.Sensor s && s.stage().equals(stage) && s.isVolts(),
                        Axis.linear("sensor, primary", Dimension.VOLTAGE),
                        span,
                        marked)
                .or(() -> panel(
                        matching,
                        r -> r instanceof Role.Sensor s && s.stage().equals(stage) && !s.isVolts(),
                        Axis.linear("sensor, primary", Dimension.CURRENT),
                        span,
                        marked))
                .or(() -> panel(
                        matching,
                        r -> r instanceof Role.BusVolts,
                        Axis.linear("bus voltage", Dimension.VOLTAGE),
                        span,
                        marked))
                .ifPresent(panels::add);
        if (panels.isEmpty()) {
            panel(
                            matching,
                            r -> r instanceof Role.StageVolts v && v.stage().equals(stage),
                            Axis.linear("voltage behind the switch", Dimension.VOLTAGE),
                            span,
                            marked)
                    .ifPresent(panels::add);
        }
        Chart chart = Chart.of(
                study.bank().map(b -> b.name() + ": ").orElse("") + stage + " in the record",
                Axis.linear("time from the first sample", Dimension.TIME)
                        .from(span[0])
                        .to(span[1]),
                panels.getFirst());
        if (panels.size() > 1) {
            chart = chart.under(panels.get(1));
        }
        return chart.caption(caption(study, marked)).svg(width);
    }

    /** Some cycles around the first mark of what failed, else around the first mark; the whole record where there is none. */
    private static double[] span(RecordStudy study, List<Finding> marked) {
        double cycle = 1.0 / study.cycles().hertz();
        double first = study.input().base().first();
        double last = study.input().base().last();
        if (marked.isEmpty()) {
            return new double[] {first, last};
        }
        // what failed stands first
        double anchor = marked.getFirst().seconds();
        double from = Math.max(first, anchor - BEFORE_CYCLES * cycle);
        return new double[] {from, Math.min(last, Math.max(anchor + AFTER_CYCLES * cycle, from + cycle))};
    }

    private static String caption(RecordStudy study, List<Finding> marked) {
        return marked.stream()
                .findFirst()
                .map(f -> study.located().stream()
                        .filter(l -> Math.abs(l.fromSeconds() - f.seconds())
                                < 2.0 / study.cycles().hertz())
                        .findFirst()
                        .map(RecordStudyText::sentence)
                        .orElse(f.words()))
                .orElse("");
    }

    /** Picks channels by what they measure. */
    private interface Wanted {
        boolean is(Role role);
    }

    private static Optional<Panel> panel(
            ChannelMatching matching, Wanted wanted, Axis axis, double[] span, List<Finding> marked) {
        List<ChannelMatching.Assignment> shown =
                matching.assignments().stream().filter(a -> wanted.is(a.role())).toList();
        if (shown.isEmpty()) {
            return Optional.empty();
        }
        Panel panel = Panel.of(axis);
        for (ChannelMatching.Assignment a : shown) {
            Thinned t = Thinned.of(a.primary(), span[0], span[1], POINTS);
            panel = panel.with(Curve.of(a.channel().name().strip(), t.seconds(), t.values()));
        }
        for (Finding finding : marked) {
            Optional<Point> at = place(finding, shown);
            if (at.isPresent() && at.get().x() >= span[0] && at.get().x() <= span[1]) {
                panel = panel.with(Callout.at(at.get(), label(finding)));
            }
        }
        return Optional.of(panel);
    }

    private static String label(Finding finding) {
        return finding.kind().equals("sensor") ? "new state" : finding.kind().replace('-', ' ');
    }

    /** Where a finding stands in a panel: on the channel that it rests on, at its time. */
    private static Optional<Point> place(Finding finding, List<ChannelMatching.Assignment> shown) {
        for (Evidence e : finding.evidence()) {
            for (ChannelMatching.Assignment a : shown) {
                if (a.channel().name().strip().equals(e.channel())) {
                    Signal signal = a.primary();
                    double value = signal.at(finding.seconds());
                    return Optional.of(new Point(finding.seconds(), Double.isFinite(value) ? value : 0.0));
                }
            }
        }
        return Optional.empty();
    }
}
