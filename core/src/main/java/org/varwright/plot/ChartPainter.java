package org.varwright.plot;

import java.util.ArrayList;
import java.util.List;
import org.varwright.svg.Box;
import org.varwright.svg.Lettering;
import org.varwright.svg.Pen;
import org.varwright.svg.Sheet;
import org.varwright.svg.Tone;

/** Lays a chart out and draws it. */
final class ChartPainter {
    static final double TEXT_SIZE = 12.0;
    static final Lettering TEXT = new Lettering(Tone.INK, TEXT_SIZE, false);
    static final Lettering SMALL = new Lettering(Tone.INK, 11.5, false);
    static final Lettering QUIET = new Lettering(Tone.QUIET, 11.5, false);
    static final Lettering LIMIT = new Lettering(Tone.LIMIT, 11.5, false);
    static final Lettering NUMBER = new Lettering(Tone.INK, 11.5, true);
    private static final Lettering TITLE = new Lettering(Tone.INK, 14.0, true);

    private static final double MARGIN = 8.0;
    private static final double GAP = 6.0;
    private static final double TICK_ROOM = 19.0;
    /** Names at the ends of curves take at most this part of the width. */
    private static final double WIDEST_END = 0.27;

    private static final double TICK_HEIGHT = 34.0;
    private static final int MOST_X_TICKS = 10;

    private final Chart chart;
    private final Width width;
    private final Sheet sheet = new Sheet();
    private final List<List<Styled>> styled;
    private final List<Note> notes = new ArrayList<>();

    private ChartPainter(Chart chart, Width width) {
        this.chart = chart;
        this.width = width;
        this.styled = Styled.of(chart);
    }

    static Drawn draw(Chart chart, Width width) {
        return new ChartPainter(chart, width).drawn();
    }

    private Drawn drawn() {
        double inner = width.units() - 2.0 * MARGIN;
        double y = MARGIN;
        TextBlock title = TextBlock.of(chart.title(), TITLE, inner);
        title.draw(sheet, MARGIN, y);
        y += title.height() + GAP;

        int panels = chart.panels().size();
        double[] heights = heights();
        List<Ticks.Ends> yEnds = new ArrayList<>();
        double left = 0.0;
        for (int i = 0; i < panels; i++) {
            int most = most(heights[i]);
            Ticks.Ends ends = yRange(chart.panels().get(i)).ends(true, most);
            yEnds.add(ends);
            Ruler ruler = Ruler.of(chart.panels().get(i).y(), ends, heights[i], 0.0);
            left = Math.max(
                    left,
                    ruler.ticks(most).stream()
                            .mapToDouble(t -> SMALL.width(t.label()))
                            .max()
                            .orElse(0.0));
        }
        left += MARGIN + GAP;
        Ticks.Ends xEnds = xRange().ends(false, MOST_X_TICKS);
        double ending = ending(xEnds);
        double right = width.units() - MARGIN - (ending > 0.0 ? ending + 11.0 : 6.0);
        Ruler x = Ruler.of(chart.x(), xEnds, left, right);
        List<Tick> xTicks = xTicks(x);

        for (int i = 0; i < panels; i++) {
            Panel panel = chart.panels().get(i);
            TextBlock name =
                    TextBlock.of(Ruler.of(panel.y(), yEnds.get(i), 0.0, 1.0).title(), TEXT, inner);
            name.draw(sheet, MARGIN, y);
            y += name.height() + GAP;
            Box room = new Box(left, y, right, y + heights[i]);
            Ruler up = Ruler.of(panel.y(), yEnds.get(i), room.bottom(), room.top());
            new PanelPainter(sheet, new PanelPlaces(panel, styled.get(i), x, up, room), ending, notes)
                    .draw(xTicks, up.ticks(most(heights[i])));
            y = room.bottom() + (i < panels - 1 ? 2.0 * GAP : 0.0);
        }
        y = xAxis(x, xTicks, y);
        y = notes(y, inner);
        TextBlock caption = TextBlock.of(chart.caption(), QUIET, inner);
        if (!caption.isEmpty()) {
            caption.draw(sheet, MARGIN, y + GAP);
            y += GAP + caption.height();
        }
        return new Drawn(sheet, width, y + MARGIN, chart.title(), Description.of(chart));
    }

    /** The first panel is the larger one. */
    private double[] heights() {
        double all = chart.shape().height() * (width == Width.PHONE ? 1.25 : 1.0) * width.units();
        int panels = chart.panels().size();
        double[] heights = new double[panels];
        for (int i = 0; i < panels; i++) {
            heights[i] = panels == 1 ? all : all * 1.35 * (i == 0 ? 0.6 : 0.4 / (panels - 1));
        }
        return heights;
    }

    private static int most(double height) {
        return Math.max(2, (int) Math.floor(height / TICK_HEIGHT));
    }

    private Range xRange() {
        Range range = new Range(chart.x());
        for (Panel panel : chart.panels()) {
            panel.curves()
                    .forEach(c -> c.points().stream()
                            .filter(p -> panel.y().takes(p.y()))
                            .forEach(p -> range.take(p.x())));
            panel.bars()
                    .forEach(b -> b.points().forEach(p -> {
                        range.take(p.x() - b.width() / 2.0);
                        range.take(p.x() + b.width() / 2.0);
                    }));
            panel.callouts().forEach(c -> range.take(c.x()));
            for (Limit limit : panel.limits()) {
                if (limit instanceof Limit.Upright upright) {
                    range.take(upright.value());
                }
            }
            for (Band band : panel.bands()) {
                switch (band) {
                    case Band.Across across -> {
                        // has no ends here
                    }
                    case Band.Upright upright -> {
                        range.take(upright.low());
                        range.take(upright.high());
                    }
                    case Band.Between between -> {
                        between.low().forEach(p -> range.take(p.x()));
                        between.high().forEach(p -> range.take(p.x()));
                    }
                }
            }
        }
        return range;
    }

    private Range yRange(Panel panel) {
        Range range = new Range(panel.y());
        panel.curves()
                .forEach(c -> c.points().stream().filter(p -> isInside(p.x())).forEach(p -> range.take(p.y())));
        panel.bars()
                .forEach(b -> b.points().forEach(p -> {
                    range.take(0.0);
                    range.take(p.y());
                }));
        panel.callouts().stream().filter(c -> isInside(c.x())).forEach(c -> range.take(c.y()));
        for (Limit limit : panel.limits()) {
            if (limit instanceof Limit.Across across) {
                range.takeLimit(across.value());
            }
        }
        for (Band band : panel.bands()) {
            switch (band) {
                case Band.Across across -> {
                    range.take(across.low());
                    range.take(across.high());
                }
                case Band.Upright upright -> {
                    // has no ends here
                }
                case Band.Between between -> {
                    between.low().forEach(p -> range.take(p.y()));
                    between.high().forEach(p -> range.take(p.y()));
                }
            }
        }
        return range;
    }

    /** What lies off an x axis of given ends has no say in the y axis. */
    private boolean isInside(double value) {
        return chart.x().takes(value)
                && value >= chart.x().from().orElse(Double.NEGATIVE_INFINITY)
                && value <= chart.x().to().orElse(Double.POSITIVE_INFINITY);
    }

    /** Width of the names beside curves that go on to the right edge; zero where none does. */
    private double ending(Ticks.Ends xEnds) {
        Ruler x = Ruler.of(chart.x(), xEnds, 0.0, 1.0);
        double most = WIDEST_END * width.units();
        double widest = 0.0;
        for (Panel panel : chart.panels()) {
            for (Curve curve : panel.curves()) {
                boolean reaches = curve.points().stream()
                        .anyMatch(p -> x.axis().takes(p.x()) && panel.y().takes(p.y()) && x.part(p.x()) > 0.985);
                if (reaches) {
                    widest = Math.max(
                            widest, TextBlock.even(curve.label(), TEXT, most).width());
                }
            }
        }
        return widest;
    }

    /** As many as fit without touching each other. */
    private static List<Tick> xTicks(Ruler x) {
        for (int most = MOST_X_TICKS; most > 2; most--) {
            List<Tick> ticks = x.ticks(most);
            if (isRoomy(ticks, x)) {
                return ticks;
            }
        }
        return x.ticks(2);
    }

    private static boolean isRoomy(List<Tick> ticks, Ruler x) {
        double last = Double.NEGATIVE_INFINITY;
        for (Tick tick : ticks) {
            if (!tick.isFine()) {
                double half = SMALL.width(tick.label()) / 2.0;
                if (x.at(tick) - half < last) {
                    return false;
                }
                last = x.at(tick) + half + 9.0;
            }
        }
        return true;
    }

    private double xAxis(Ruler x, List<Tick> ticks, double top) {
        StringBuilder marks = new StringBuilder();
        for (Tick tick : ticks) {
            if (!tick.isFine()) {
                marks.append('M').append(Sheet.at(x.at(tick), top)).append('L').append(Sheet.at(x.at(tick), top + 3.5));
                double half = SMALL.width(tick.label()) / 2.0;
                double middle = Math.max(MARGIN + half, Math.min(width.units() - MARGIN / 2.0 - half, x.at(tick)));
                sheet.centred(middle, top + TICK_ROOM - 2.0, tick.label(), SMALL);
            }
        }
        if (!marks.isEmpty()) {
            sheet.path(marks.toString(), Pen.full(Tone.RULE, 1.0));
        }
        TextBlock name = TextBlock.of(x.title(), TEXT, width.units() - 2.0 * MARGIN);
        double left = (x.start() + x.end() - name.width()) / 2.0;
        name.draw(sheet, Math.max(MARGIN, left), top + TICK_ROOM + 2.0);
        return top + TICK_ROOM + 2.0 + name.height();
    }

    private double notes(double top, double inner) {
        double y = top + (notes.isEmpty() ? 0.0 : GAP);
        for (Note note : notes) {
            double left = MARGIN + 24.0;
            if (note.dash().isPresent()) {
                Dash dash = note.dash().get();
                double middle = y + 0.58 * TEXT_SIZE;
                if (dash != Dash.NONE) {
                    sheet.line(left, middle, left + 34.0, middle, new Pen(dash.tone(), dash.width(), dash.pattern()));
                }
                note.marker().draw(sheet, left + 17.0, middle, dash.tone());
                left += 40.0;
            }
            sheet.text(MARGIN, y + 0.94 * SMALL.size(), note.number(), NUMBER);
            TextBlock text = TextBlock.of(note.text(), SMALL, inner + MARGIN - left);
            text.draw(sheet, left, y);
            y += text.height();
        }
        return y;
    }
}
