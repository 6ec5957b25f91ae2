package org.varwright.plot;

import java.util.List;
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
    private static final Pen EDGE = new Pen(Tone.QUIET, 0.6, "2 2");
    private static final double HATCH = 3.5;
    private static final double TICK_GAP = 5.0;

    private final Sheet sheet;
    private final PanelPlaces places;
    private final Panel panel;
    private final Ruler x;
    private final Ruler y;
    private final Box room;
    private final PanelNames names;

    /**
     * A painter of one panel.
     *
     * @param widestEnd room for names to the right of the panel
     * @param notes takes texts that find no room; their numbers go on from it
     */
    PanelPainter(Sheet sheet, PanelPlaces places, double widestEnd, List<Note> notes) {
        this.sheet = sheet;
        this.places = places;
        this.panel = places.panel();
        this.x = places.x();
        this.y = places.y();
        this.room = places.room();
        this.names = new PanelNames(sheet, places, widestEnd, notes);
    }

    void draw(List<Tick> xTicks, List<Tick> yTicks) {
        panel.bands().forEach(this::shade);
        grid(xTicks, yTicks);
        panel.bars().forEach(this::bars);
        panel.limits().forEach(this::limit);
        for (int i = 0; i < places.curves().size(); i++) {
            curve(places.curves().get(i), places.traces().get(i));
        }
        for (Callout callout : panel.callouts()) {
            callout.marker().draw(sheet, x.at(callout.x()), y.at(callout.y()), Tone.INK);
        }
        names.write();
        if (isEmpty()) {
            sheet.centred(room.midX(), room.midY(), "nothing to show", ChartPainter.QUIET);
        }
    }

    private boolean isEmpty() {
        return places.traces().stream().allMatch(t -> t.lines().isEmpty())
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
        List<Point> outline = places.outline(band);
        if (outline.size() > 2) {
            StringBuilder data = new StringBuilder();
            for (Point p : outline) {
                data.append(data.isEmpty() ? 'M' : 'L').append(Sheet.at(p.x(), p.y()));
            }
            sheet.area(data + "Z", Tone.SHADE);
            sheet.path(data + "Z", EDGE);
        }
    }

    private void bars(Bars bars) {
        for (Point p : bars.points()) {
            places.bar(bars, p).ifPresent(box -> {
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

    private void limit(Limit limit) {
        if (places.isSeen(limit)) {
            Segment line = places.line(limit);
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
            places.markers(styled).forEach(p -> styled.marker().draw(sheet, p.x(), p.y(), dash.tone()));
        });
    }
}
