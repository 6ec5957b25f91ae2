package org.varwright.plot;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.varwright.svg.Box;
import org.varwright.svg.Lettering;
import org.varwright.svg.Pen;
import org.varwright.svg.Segment;
import org.varwright.svg.Sheet;
import org.varwright.svg.Tone;

/** Writes the names of a panel where they cover nothing; what finds no room becomes a numbered note under the chart. */
final class PanelNames {
    private static final Pen LEADER = Pen.full(Tone.QUIET, 0.7);
    private static final double AWAY = 9.0;

    private final Sheet sheet;
    private final PanelPlaces places;
    private final Box room;
    private final double widestEnd;
    private final Labels labels;
    private final List<Note> notes;

    /**
     * A writer of one panel's names.
     *
     * @param widestEnd room for names to the right of the panel
     * @param notes takes texts that find no room; their numbers go on from it
     */
    PanelNames(Sheet sheet, PanelPlaces places, double widestEnd, List<Note> notes) {
        this.sheet = sheet;
        this.places = places;
        this.room = places.room();
        this.widestEnd = widestEnd;
        this.labels = new Labels(places.room());
        this.notes = notes;
    }

    void write() {
        keepFree();
        places.panel().limits().forEach(this::name);
        places.panel().callouts().forEach(this::name);
        names();
        places.panel().bands().forEach(this::name);
    }

    /** Curves, limits, marks and the ends of curves are not written over. */
    private void keepFree() {
        for (int i = 0; i < places.curves().size(); i++) {
            Styled styled = places.curves().get(i);
            if (styled.dash() != Dash.NONE) {
                labels.avoid(places.traces().get(i).segments());
            }
            places.markers(styled).forEach(p -> labels.take(styled.marker().box(p.x(), p.y())));
            places.traces().get(i).end().ifPresent(p -> labels.take(Marker.DOT.box(p.x(), p.y())));
        }
        for (Bars bars : places.panel().bars()) {
            bars.points().forEach(p -> places.bar(bars, p).ifPresent(labels::take));
        }
        places.panel().limits().stream().filter(places::isSeen).forEach(l -> labels.avoid(List.of(places.line(l))));
        places.panel()
                .callouts()
                .forEach(c -> labels.take(
                        c.marker().box(places.x().at(c.x()), places.y().at(c.y()))));
    }

    private void name(Limit limit) {
        if (limit.label().isEmpty() || !places.isSeen(limit)) {
            return;
        }
        TextBlock text = TextBlock.even(limit.label(), ChartPainter.LIMIT, 0.7 * room.width());
        Segment line = places.line(limit);
        Optional<Box> free = labels.first(along(line, text));
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
    private List<Box> along(Segment line, TextBlock text) {
        double w = text.width();
        double h = text.height();
        List<Box> boxes = new ArrayList<>();
        boolean across = line.y1() == line.y2();
        int steps = 24;
        for (int i = 0; i <= steps; i++) {
            double part = (double) i / steps;
            double left = across ? room.right() - w - 3.0 - part * (room.width() - w - 6.0) : line.x1() + 4.0;
            double top = across ? line.y1() - h - 2.0 : room.top() + 3.0 + part * (room.height() - h - 6.0);
            boxes.add(new Box(left, top, left + w, top + h));
            boxes.add(
                    across
                            ? new Box(left, line.y1() + 3.0, left + w, line.y1() + 3.0 + h)
                            : new Box(line.x1() - 4.0 - w, top, line.x1() - 4.0, top + h));
        }
        return boxes;
    }

    private void name(Callout callout) {
        if (places.x().holds(callout.x()) && places.y().holds(callout.y())) {
            place(
                    callout.text(),
                    ChartPainter.SMALL,
                    0.45 * room.width(),
                    places.x().at(callout.x()),
                    places.y().at(callout.y()));
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
        for (int i = 0; i < places.curves().size(); i++) {
            Styled styled = places.curves().get(i);
            String label = styled.curve().label();
            Optional<Point> end = places.traces().get(i).end();
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
        List<Point> outline = places.outline(band);
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
        List<Box> boxes = new ArrayList<>();
        for (int row = 0; row <= 8; row++) {
            for (int column = 0; column <= 12; column++) {
                double top = box.top() + 1.0 + row / 8.0 * (box.height() - h - 2.0);
                double left = box.right() - 3.0 - w - column / 12.0 * (box.width() - w - 6.0);
                boxes.add(new Box(left, top, left + w, top + h));
            }
        }
        return boxes.stream();
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
