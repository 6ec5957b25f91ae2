package org.varwright.plot;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.varwright.svg.Box;
import org.varwright.svg.Hatching;
import org.varwright.svg.Lettering;
import org.varwright.svg.Pen;
import org.varwright.svg.Segment;
import org.varwright.svg.Sheet;
import org.varwright.svg.Tone;

/** Draws one panel into its place. */
final class PanelPainter {
    private static final Pen GRID = Pen.full(Tone.GRID, 0.7);
    private static final Pen FINE = Pen.full(Tone.FINE, 0.6);
    private static final Pen FRAME = Pen.full(Tone.RULE, 1.0);
    private static final Pen LIMIT = new Pen(Tone.LIMIT, 1.3, "11 3 3 3");
    private static final Pen LEADER = Pen.full(Tone.QUIET, 0.7);
    private static final Pen EDGE = new Pen(Tone.QUIET, 0.6, "2 2");
    private static final double AWAY = 9.0;
    private static final double HATCH = 3.5;
    private static final double TICK_GAP = 5.0;
    private static final int MOST_MARKERS = 40;
    private static final int FEW_MARKERS = 12;

    private final Sheet sheet;
    private final Panel panel;
    private final List<Styled> curves;
    private final List<Trace> traces;
    private final Ruler x;
    private final Ruler y;
    private final Box room;
    private final double widestEnd;
    private final Labels labels;
    private final List<Note> notes;

    /**
     * A painter of one panel.
     *
     * @param room between the axes
     * @param widestEnd room for names to the right of it
     * @param notes takes texts that find no room; their numbers go on from it
     */
    PanelPainter(
            Sheet sheet,
            Panel panel,
            List<Styled> curves,
            Ruler x,
            Ruler y,
            Box room,
            double widestEnd,
            List<Note> notes) {
        this.sheet = sheet;
        this.panel = panel;
        this.curves = curves;
        this.traces = curves.stream()
                .map(c -> Trace.of(c.curve().points(), x, y, room))
                .toList();
        this.x = x;
        this.y = y;
        this.room = room;
        this.widestEnd = widestEnd;
        this.labels = new Labels(room);
        this.notes = notes;
    }

    void draw(List<Tick> xTicks, List<Tick> yTicks) {
        panel.bands().forEach(this::shade);
        grid(xTicks, yTicks);
        panel.bars().forEach(this::bars);
        panel.limits().forEach(this::limit);
        for (int i = 0; i < curves.size(); i++) {
            curve(curves.get(i), traces.get(i));
        }
        keepFree();
        for (Callout callout : panel.callouts()) {
            callout.marker().draw(sheet, x.at(callout.x()), y.at(callout.y()), Tone.INK);
        }
        panel.limits().forEach(this::name);
        panel.callouts().forEach(this::name);
        names();
        panel.bands().forEach(this::name);
        if (isEmpty()) {
            sheet.centred(room.midX(), room.midY(), "nothing to show", ChartPainter.QUIET);
        }
    }

    private boolean isEmpty() {
        return traces.stream().allMatch(t -> t.lines().isEmpty())
                && panel.limits().isEmpty()
                && panel.callouts().isEmpty()
                && panel.bars().isEmpty()
                && panel.bands().isEmpty();
    }

    private void grid(List<Tick> xTicks, List<Tick> yTicks) {
        StringBuilder fine = new StringBuilder();
        StringBuilder strong = new StringBuilder();
        for (Tick tick : xTicks) {
            (tick.isFine() ? fine : strong)
                    .append('M')
                    .append(Sheet.at(x.at(tick), room.top()))
                    .append('L')
                    .append(Sheet.at(x.at(tick), room.bottom()));
        }
        for (Tick tick : yTicks) {
            (tick.isFine() ? fine : strong)
                    .append('M')
                    .append(Sheet.at(room.left(), y.at(tick)))
                    .append('L')
                    .append(Sheet.at(room.right(), y.at(tick)));
            Lettering small = ChartPainter.SMALL;
            sheet.flushRight(room.left() - TICK_GAP, y.at(tick) + 0.36 * small.size(), tick.label(), small);
        }
        if (fine.length() > 0) {
            sheet.path(fine.toString(), FINE);
        }
        if (strong.length() > 0) {
            sheet.path(strong.toString(), GRID);
        }
        if (y.axis().scale() != Axis.Scale.LOG && y.holds(0.0)) {
            sheet.line(room.left(), y.at(0.0), room.right(), y.at(0.0), FRAME);
        }
        sheet.frame(room, FRAME);
    }

    private void shade(Band band) {
        List<Point> outline = outline(band);
        if (outline.size() > 2) {
            StringBuilder data = new StringBuilder();
            for (Point p : outline) {
                data.append(data.isEmpty() ? 'M' : 'L').append(Sheet.at(p.x(), p.y()));
            }
            sheet.area(data + "Z", Tone.SHADE);
            sheet.path(data + "Z", EDGE);
        }
    }

    private List<Point> outline(Band band) {
        return switch (band) {
            case Band.Across across -> {
                double top = y.at(y.held(across.high()));
                double bottom = y.at(y.held(across.low()));
                yield List.of(
                        new Point(room.left(), top),
                        new Point(room.right(), top),
                        new Point(room.right(), bottom),
                        new Point(room.left(), bottom));
            }
            case Band.Upright upright -> {
                double left = x.at(x.held(upright.low()));
                double right = x.at(x.held(upright.high()));
                yield List.of(
                        new Point(left, room.top()),
                        new Point(right, room.top()),
                        new Point(right, room.bottom()),
                        new Point(left, room.bottom()));
            }
            case Band.Between between -> {
                List<Point> around = new ArrayList<>(edge(between.high()));
                around.addAll(edge(between.low()).reversed());
                yield around;
            }
        };
    }

    /** An edge of a band, held to the panel. */
    private List<Point> edge(List<Point> points) {
        List<Point> line = new ArrayList<>();
        for (Point p : points) {
            if (x.axis().takes(p.x()) && Double.isFinite(p.y())) {
                line.add(new Point(x.at(x.held(p.x())), y.at(y.held(p.y()))));
            }
        }
        return Trace.thinned(line);
    }

    private void bars(Bars bars) {
        for (Point p : bars.points()) {
            bar(bars, p).ifPresent(box -> {
                switch (bars.fill()) {
                    case SOLID -> sheet.fill(box, Tone.INK);
                    case GREY -> sheet.fill(box, Tone.GRID);
                    case OPEN -> {
                        sheet.fill(box, Tone.PAPER);
                        sheet.frame(box, Pen.full(Tone.INK, 0.8));
                    }
                    case HATCHED -> {
                        sheet.fill(box, Tone.PAPER);
                        sheet.path(Hatching.of(box, HATCH), Pen.full(Tone.INK, 0.8));
                        sheet.frame(box, Pen.full(Tone.INK, 0.8));
                    }
                }
            });
        }
    }

    /** What is seen of a bar. */
    private Optional<Box> bar(Bars bars, Point p) {
        if (!x.axis().takes(p.x()) || !Double.isFinite(p.y())) {
            return Optional.empty();
        }
        double foot = y.at(y.held(0.0));
        double tip = y.at(y.held(p.y()));
        double left = x.at(p.x() - bars.width() / 2.0);
        double right = x.at(p.x() + bars.width() / 2.0);
        boolean seen = right > room.left() && left < room.right() && foot != tip;
        return seen
                ? Optional.of(new Box(
                        Math.max(left, room.left()),
                        Math.min(foot, tip),
                        Math.min(right, room.right()),
                        Math.max(foot, tip)))
                : Optional.empty();
    }

    private Segment line(Limit limit) {
        return switch (limit) {
            case Limit.Across across ->
                new Segment(room.left(), y.at(across.value()), room.right(), y.at(across.value()));
            case Limit.Upright upright ->
                new Segment(x.at(upright.value()), room.top(), x.at(upright.value()), room.bottom());
        };
    }

    private boolean isSeen(Limit limit) {
        return switch (limit) {
            case Limit.Across across -> y.holds(across.value());
            case Limit.Upright upright -> x.holds(upright.value());
        };
    }

    private void limit(Limit limit) {
        if (isSeen(limit)) {
            Segment line = line(limit);
            sheet.line(line.x1(), line.y1(), line.x2(), line.y2(), LIMIT);
        }
    }

    private void curve(Styled styled, Trace trace) {
        if (trace.lines().isEmpty()) {
            return;
        }
        Dash dash = styled.dash();
        sheet.group(styled.curve().label(), () -> {
            if (dash != Dash.NONE) {
                sheet.path(trace.data(), new Pen(dash.tone(), dash.width(), dash.pattern()));
            }
            markers(styled).forEach(p -> styled.marker().draw(sheet, p.x(), p.y(), dash.tone()));
        });
    }

    /** Where a curve has its marks: at every point, or at a few where there are too many. */
    private List<Point> markers(Styled styled) {
        if (styled.marker() == Marker.NONE) {
            return List.of();
        }
        List<Point> seen = styled.curve().points().stream()
                .filter(p -> x.holds(p.x()) && y.holds(p.y()))
                .map(p -> new Point(x.at(p.x()), y.at(p.y())))
                .toList();
        int every = seen.size() <= MOST_MARKERS ? 1 : seen.size() / FEW_MARKERS;
        List<Point> marks = new ArrayList<>();
        for (int i = every / 2; i < seen.size(); i += every) {
            marks.add(seen.get(i));
        }
        return marks;
    }

    /** Curves, limits, marks and the ends of curves are not written over. */
    private void keepFree() {
        for (int i = 0; i < curves.size(); i++) {
            Styled styled = curves.get(i);
            if (styled.dash() != Dash.NONE) {
                labels.avoid(traces.get(i).segments());
            }
            markers(styled).forEach(p -> labels.take(styled.marker().box(p.x(), p.y())));
            traces.get(i).end().ifPresent(p -> labels.take(Marker.DOT.box(p.x(), p.y())));
        }
        for (Bars bars : panel.bars()) {
            bars.points().forEach(p -> bar(bars, p).ifPresent(labels::take));
        }
        panel.limits().stream().filter(this::isSeen).forEach(l -> labels.avoid(List.of(line(l))));
        panel.callouts().forEach(c -> labels.take(c.marker().box(x.at(c.x()), y.at(c.y()))));
    }

    private void name(Limit limit) {
        if (limit.label().isEmpty() || !isSeen(limit)) {
            return;
        }
        TextBlock text = TextBlock.even(limit.label(), ChartPainter.LIMIT, 0.7 * room.width());
        Segment line = line(limit);
        Optional<Box> free = labels.first(places(line, text));
        if (free.isPresent()) {
            text.draw(sheet, free.get());
            return;
        }
        boolean across = line.y1() == line.y2();
        place(
                limit.label(),
                ChartPainter.LIMIT,
                0.7 * room.width(),
                across ? room.midX() : line.x1(),
                across ? line.y1() : room.midY());
    }

    /** Along a line on both sides, from its upper or right end. */
    private List<Box> places(Segment line, TextBlock text) {
        double w = text.width();
        double h = text.height();
        List<Box> places = new ArrayList<>();
        boolean across = line.y1() == line.y2();
        int steps = 24;
        for (int i = 0; i <= steps; i++) {
            double part = (double) i / steps;
            double left = across ? room.right() - w - 3.0 - part * (room.width() - w - 6.0) : line.x1() + 4.0;
            double top = across ? line.y1() - h - 2.0 : room.top() + 3.0 + part * (room.height() - h - 6.0);
            places.add(new Box(left, top, left + w, top + h));
            places.add(
                    across
                            ? new Box(left, line.y1() + 3.0, left + w, line.y1() + 3.0 + h)
                            : new Box(line.x1() - 4.0 - w, top, line.x1() - 4.0, top + h));
        }
        return places;
    }

    private void name(Callout callout) {
        if (x.holds(callout.x()) && y.holds(callout.y())) {
            place(callout.text(), ChartPainter.SMALL, 0.45 * room.width(), x.at(callout.x()), y.at(callout.y()));
        } else if (!callout.text().isEmpty()) {
            notes.add(new Note("", callout.text() + " (off the chart)", Optional.empty(), Marker.NONE));
        }
    }

    private void place(String text, Lettering lettering, double widest, double atX, double atY) {
        if (text.isBlank()) {
            return;
        }
        Optional<Labels.Placed> placed = labels.near(atX, atY, TextBlock.shapes(text, lettering, widest), false);
        if (placed.isPresent()) {
            draw(placed.get());
        } else {
            note(text, atX, atY, Optional.empty(), Marker.NONE);
        }
    }

    private void draw(Labels.Placed placed) {
        placed.leader().ifPresent(l -> sheet.line(l.x1(), l.y1(), l.x2(), l.y2(), LEADER));
        placed.text().draw(sheet, placed.box());
    }

    /** Under the chart, with a number at its place. */
    private void note(String text, double atX, double atY, Optional<Dash> dash, Marker marker) {
        String number = Long.toString(
                1 + notes.stream().filter(n -> !n.number().isEmpty()).count());
        TextBlock digit = TextBlock.of(number, ChartPainter.NUMBER, 40.0);
        Optional<Labels.Placed> placed = labels.near(atX, atY, List.of(digit), true);
        placed.ifPresent(p -> {
            sheet.fill(p.box(), Tone.PAPER);
            draw(p);
        });
        notes.add(new Note(placed.isPresent() ? number : "", text, dash, marker));
    }

    /** A curve's name and where the curve ends. */
    private record Ending(Styled styled, Point at, TextBlock text) {
        double wantedTop() {
            return at.y() - text.height() / 2.0;
        }
    }

    private void names() {
        List<Ending> beside = new ArrayList<>();
        for (int i = 0; i < curves.size(); i++) {
            Styled styled = curves.get(i);
            String label = styled.curve().label();
            Optional<Point> end = traces.get(i).end();
            if (end.isEmpty() || label.isBlank()) {
                continue;
            }
            Lettering lettering = new Lettering(styled.dash().tone(), ChartPainter.TEXT_SIZE, false);
            if (room.right() - end.get().x() < 4.0) {
                beside.add(new Ending(styled, end.get(), TextBlock.even(label, lettering, widestEnd)));
            } else {
                Optional<Labels.Placed> placed = labels.near(
                        end.get().x(), end.get().y(), TextBlock.shapes(label, lettering, 0.45 * room.width()), false);
                if (placed.isPresent()) {
                    draw(placed.get());
                } else {
                    note(label, end.get().x(), end.get().y(), Optional.of(styled.dash()), styled.marker());
                }
            }
        }
        stack(beside);
    }

    /** Names to the right of the panel, each as near to its curve's end as the others let it; those for which there is no height become notes. */
    private void stack(List<Ending> endings) {
        List<Ending> order = new ArrayList<>(endings);
        order.sort(Comparator.comparingDouble(e -> e.at().y()));
        double height = order.stream().mapToDouble(e -> e.text().height()).sum();
        while (height > room.height() + 6.0 && !order.isEmpty()) {
            Ending last = order.removeLast();
            height -= last.text().height();
            note(
                    last.styled().curve().label(),
                    last.at().x() - 1.0,
                    last.at().y(),
                    Optional.of(last.styled().dash()),
                    last.styled().marker());
        }
        double[] tops = new double[order.size()];
        double free = room.top() - 3.0;
        for (int i = 0; i < tops.length; i++) {
            tops[i] = Math.max(free, order.get(i).wantedTop());
            free = tops[i] + order.get(i).text().height();
        }
        double floor = room.bottom() + 3.0;
        for (int i = tops.length - 1; i >= 0; i--) {
            tops[i] = Math.min(tops[i], floor - order.get(i).text().height());
            floor = tops[i];
        }
        for (int i = 0; i < tops.length; i++) {
            Ending e = order.get(i);
            double left = room.right() + AWAY;
            double middle = tops[i] + e.text().height() / 2.0;
            sheet.line(room.right() + 1.0, e.at().y(), left - 2.0, middle, LEADER);
            e.text().draw(sheet, left, tops[i]);
        }
    }

    private void name(Band band) {
        List<Point> outline = outline(band);
        if (band.label().isEmpty() || outline.size() < 3) {
            return;
        }
        TextBlock text = TextBlock.even(band.label(), ChartPainter.QUIET, 0.6 * room.width());
        Optional<Box> free = labels.first(inside(band, outline, text).toList());
        if (free.isPresent()) {
            text.draw(sheet, free.get());
            return;
        }
        Point middle = widest(band, outline);
        place(band.label(), ChartPainter.QUIET, 0.6 * room.width(), middle.x(), middle.y());
    }

    /** Places in a straight band, from the right for one that lies across and from the top for an upright one. */
    private static Stream<Box> inside(Band band, List<Point> outline, TextBlock text) {
        if (band instanceof Band.Between) {
            return Stream.of();
        }
        Box box = new Box(
                outline.getFirst().x(),
                outline.getFirst().y(),
                outline.get(2).x(),
                outline.get(2).y());
        double w = text.width();
        double h = text.height();
        if (w > box.width() - 6.0 || h > box.height() - 2.0) {
            return Stream.of();
        }
        List<Box> places = new ArrayList<>();
        for (int row = 0; row <= 8; row++) {
            for (int column = 0; column <= 12; column++) {
                double top = box.top() + 1.0 + row / 8.0 * (box.height() - h - 2.0);
                double left = box.right() - 3.0 - w - column / 12.0 * (box.width() - w - 6.0);
                places.add(new Box(left, top, left + w, top + h));
            }
        }
        return places.stream();
    }

    /** A point inside a band: the middle of a straight one, the middle of the greatest height of one between curves. */
    private static Point widest(Band band, List<Point> outline) {
        if (!(band instanceof Band.Between)) {
            Point a = outline.getFirst();
            Point b = outline.get(2);
            return new Point((a.x() + b.x()) / 2.0, (a.y() + b.y()) / 2.0);
        }
        Point best = outline.getFirst();
        double greatest = -1.0;
        for (Point p : outline) {
            for (int i = 1; i < outline.size(); i++) {
                Point a = outline.get(i - 1);
                Point b = outline.get(i);
                if (a.x() != b.x() && Math.min(a.x(), b.x()) <= p.x() && Math.max(a.x(), b.x()) >= p.x()) {
                    double crossing = a.y() + (b.y() - a.y()) * (p.x() - a.x()) / (b.x() - a.x());
                    if (Math.abs(crossing - p.y()) > greatest) {
                        greatest = Math.abs(crossing - p.y());
                        best = new Point(p.x(), (crossing + p.y()) / 2.0);
                    }
                }
            }
        }
        return best;
    }
}
