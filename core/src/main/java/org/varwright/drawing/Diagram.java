package org.varwright.drawing;

import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;

/** The one-line diagram itself, laid out for one width of text. */
final class Diagram {
    private final Feeding feeding;
    private final Columns columns;
    private final Spans spans;
    private final List<Territory> territories;
    private final Wording wording;
    private final DrawingState state;
    private final Grid grid;
    private final Across across;

    Diagram(Bank bank, DrawingState state, double textWidth) {
        this.state = state;
        this.wording = new Wording(bank, state);
        this.feeding = Feeding.of(bank);
        Claims claims = Claims.of(bank, feeding);
        this.columns = Columns.of(bank, feeding, claims);
        this.spans = Spans.of(feeding, columns);
        this.territories = Territory.of(bank, feeding, claims, columns);
        this.across = new Across(bank, feeding, columns, spans, territories, wording, textWidth);
        this.grid = new Grid(feeding, columns, spans, territories, wording, across);
    }

    double width() {
        return across.width();
    }

    double height() {
        return grid.height();
    }

    void draw(Canvas canvas) {
        territories.forEach(t -> outline(canvas, t));
        for (String conductor : feeding.layers().keySet()) {
            canvas.thing("conductor", conductor, () -> bar(canvas, conductor));
        }
        feeding.feeders().forEach((conductor, feeder) -> {
            int head = columns.head(conductor);
            hang(canvas, feeder.device(), head, feeder.from(), conductor);
        });
        for (int c = 0; c < columns.all().size(); c++) {
            column(canvas, c, columns.all().get(c));
        }
    }

    private void column(Canvas canvas, int c, Column column) {
        String on = column.conductor();
        double x = across.wire(c);
        double bar = grid.bar(on);
        double top = grid.hangTop(feeding.layer(on));
        switch (column.hangs()) {
            case Column.Hangs.Legs legs ->
                canvas.thing("stage", legs.stage().name(), () -> {
                    wire(canvas, x, bar, x, top, on);
                    parts(canvas, c, top, across.parts(c));
                });
            case Column.Hangs.ToGround ground ->
                canvas.thing("device", ground.device().name(), () -> {
                    wire(canvas, x, bar, x, top, on);
                    parts(canvas, c, top, across.parts(c));
                });
            case Column.Hangs.Source source ->
                canvas.thing(
                        "source",
                        source.source().name(),
                        () -> source(canvas, c, across.parts(c).getFirst(), on));
            case Column.Hangs.Bond bond -> hang(canvas, bond.device(), c, on, bond.to());
            case Column.Hangs.Tie tie -> {
                if (spans.isStraight(c)) {
                    canvas.thing("device", tie.device().name(), () -> straightTie(canvas, c, bar, tie.device()));
                } else {
                    canvas.thing("device", tie.device().name(), () -> bentTie(canvas, c, bar, tie));
                }
            }
            case Column.Hangs.Visit visit -> {}
            case Column.Hangs.Nothing nothing -> {}
        }
    }

    /** A conductor: its bar with dots where things join it, its name and state, and its sources. */
    private void bar(Canvas canvas, String conductor) {
        Spans.Span span = spans.of(conductor);
        ConductorState ink = state.conductor(conductor);
        double y = grid.bar(conductor);
        int head = columns.head(conductor);
        double from = barEnd(span.first(), true);
        double to = barEnd(span.last(), false);
        wire(canvas, from, y, to, y, conductor);
        for (int c = (int) Math.ceil(span.first()); c <= span.last(); c++) {
            if (joins(conductor, c)) {
                canvas.dot(across.wire(c), y, ink);
            }
        }
        TextBlock label = across.wrapped(wording.conductor(conductor), head);
        label.draw(canvas, across.textLeft(head) - 4.0, y - 5.0 - label.height());
        across.sources(conductor)
                .forEach(s ->
                        canvas.thing("source", s.name(), () -> source(canvas, head, wording.source(s), conductor)));
    }

    private double barEnd(double column, boolean first) {
        long whole = Math.round(column);
        if (whole == column) {
            return across.wire((int) whole);
        }
        boolean before = column < whole;
        int c = (int) whole;
        if (first) {
            return before ? across.wire(c) - Grid.DROP : across.wire(c) + halfTie(c);
        }
        return before ? across.wire(c) - halfTie(c) : across.wire(c);
    }

    private double halfTie(int c) {
        return across.parts(c).getFirst().symbol().height() / 2.0;
    }

    /** Whether something joins the conductor in the column. */
    private boolean joins(String conductor, int c) {
        Column column = columns.all().get(c);
        if (columns.head(conductor) == c || feeding.children(conductor).stream().anyMatch(k -> columns.head(k) == c)) {
            return true;
        }
        if (spans.isStraight(c)) {
            return false;
        }
        return switch (column.hangs()) {
            case Column.Hangs.Bond bond ->
                column.conductor().equals(conductor) || bond.to().equals(conductor);
            case Column.Hangs.Visit visit -> false;
            case Column.Hangs.Nothing nothing -> false;
            case Column.Hangs.Legs legs -> column.conductor().equals(conductor);
            case Column.Hangs.ToGround ground -> column.conductor().equals(conductor);
            case Column.Hangs.Source source -> column.conductor().equals(conductor);
            case Column.Hangs.Tie tie -> column.conductor().equals(conductor);
        };
    }

    private void source(Canvas canvas, int c, Part part, String conductor) {
        double x = across.wire(c);
        double top = grid.sourceBottom() - part.height(across.textWidth(c));
        new SymbolPainter(canvas).draw(part.symbol(), x, top);
        wire(canvas, x, top + part.symbol().height(), x, grid.bar(conductor), conductor);
        across.wrapped(part.rows(), c).draw(canvas, across.textLeft(c) - 4.0, top);
    }

    /** A device between the conductor above and the one below. */
    private void hang(Canvas canvas, Device device, int c, String above, String below) {
        canvas.thing("device", device.name(), () -> {
            double x = across.wire(c);
            double top = grid.hangTop(feeding.layer(above));
            Part part = wording.device(device);
            wire(canvas, x, grid.bar(above), x, top, above);
            new SymbolPainter(canvas).draw(part.symbol(), x, top);
            if (!below.equals(above)) {
                wire(canvas, x, top + part.symbol().height(), x, grid.bar(below), below);
            }
            across.wrapped(part.rows(), c).draw(canvas, across.textLeft(c), top);
        });
    }

    private void wire(Canvas canvas, double x1, double y1, double x2, double y2, String conductor) {
        canvas.wire(x1, y1, x2, y2, conductor, state.conductor(conductor));
    }

    private void straightTie(Canvas canvas, int c, double bar, Device device) {
        Part part = wording.device(device);
        double x = across.wire(c);
        double half = halfTie(c);
        canvas.turned(x, bar, () -> new SymbolPainter(canvas).draw(part.symbol(), x, bar - half));
        canvas.mark(Mark.Kind.SYMBOL, device.kind().code(), x - half, bar - 12.0, x + half, bar + 8.0);
        TextBlock block = across.wrapped(part.rows(), c);
        block.draw(canvas, across.left(c) + 8.0, bar - Grid.OVER_TIE - block.height());
    }

    /** Up from one bar, through the device, across above whatever lies between, and down to the other bar. */
    private void bentTie(Canvas canvas, int c, double bar, Column.Hangs.Tie tie) {
        Part part = wording.device(tie.device());
        double x = across.wire(c);
        double channel = grid.channel(c);
        double bottom = grid.conductorTop(feeding.layer(tie.to())) - Grid.DROP;
        double top = bottom - part.height(across.textWidth(c));
        double to = across.wire(columns.head(tie.to())) - Grid.DROP;
        String here = columns.all().get(c).conductor();
        String there = tie.to();
        new SymbolPainter(canvas).draw(part.symbol(), x, top);
        wire(canvas, x, top + part.symbol().height(), x, bar, here);
        wire(canvas, x, top, x, channel, there);
        wire(canvas, x, channel, to, channel, there);
        wire(canvas, to, channel, to, grid.bar(tie.to()), there);
        canvas.dot(to, grid.bar(there), state.conductor(there));
        across.wrapped(part.rows(), c).draw(canvas, across.textLeft(c), top);
    }

    /** Symbols one under another on one wire. */
    private void parts(Canvas canvas, int c, double top, List<Part> parts) {
        SymbolPainter painter = new SymbolPainter(canvas);
        double x = across.wire(c);
        double y = top;
        for (int i = 0; i < parts.size(); i++) {
            Part part = parts.get(i);
            painter.draw(part.symbol(), x, y);
            double next = y + part.height(across.textWidth(c));
            if (i + 1 < parts.size()) {
                canvas.line(x, y + part.symbol().height(), x, next, Ink.SYMBOL);
            }
            across.wrapped(part.rows(), c).draw(canvas, across.textLeft(c), y);
            y = next;
        }
    }

    private void outline(Canvas canvas, Territory territory) {
        double left = across.left(territory.firstColumn()) + 1.0;
        double right = across.right(territory.lastColumn()) - Grid.OUTLINE_GAP;
        double top = grid.rowTop(territory.firstRow(), territory.firstColumn());
        for (int c = territory.firstColumn(); c <= territory.lastColumn(); c++) {
            top = Math.min(top, grid.rowTop(territory.firstRow(), c));
        }
        double from = top;
        TextBlock foot = grid.foot(territory);
        double footTop = grid.footTop(territory);
        double bottom = grid.outlineBottom(territory);
        canvas.thing(
                territory.main() ? "compartment" : "compartment-part",
                territory.compartment().name(),
                () -> {
                    DoorPainter painter = new DoorPainter(canvas);
                    if (territory.main()) {
                        painter.frame(
                                left,
                                from,
                                right,
                                bottom,
                                state.door(territory.compartment().name()));
                    } else {
                        painter.part(left, from, right, bottom);
                    }
                    foot.draw(canvas, grid.footLeft(territory), footTop);
                });
    }
}
