package org.varwright.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.varwright.quantity.Complex;
import org.varwright.svg.Box;
import org.varwright.svg.Lettering;
import org.varwright.svg.Pen;
import org.varwright.svg.Segment;
import org.varwright.svg.Sheet;
import org.varwright.svg.Tone;

/**
 * Draws one dial. Magnitude and angle stand at the tips where there is room for all of them; else the tips carry names, and a table under the dial the
 * values.
 */
final class DialPainter {
    private static final Pen GRID = Pen.full(Tone.GRID, 0.7);
    private static final Pen FRAME = Pen.full(Tone.GRID, 0.9);
    private static final Pen LEADER = Pen.full(Tone.QUIET, 0.7);
    private static final double SIDE = 40.0;
    private static final double EDGE = 22.0;
    private static final double HEAD = 9.0;
    /** An arrow shorter than this is a point. */
    private static final double SHORTEST = 2.5;
    /** A label that must stand farther from its tip is better put into the table. */
    private static final double FARTHEST = 70.0;

    private static final int CHORDS = 48;
    private static final int RINGS = 3;

    private final Sheet sheet;
    private final Dial dial;
    private final Box room;
    private final double scale;
    private final double originX;
    private final double originY;

    DialPainter(Sheet sheet, Dial dial, Box room) {
        this.sheet = sheet;
        this.dial = dial;
        this.room = room;
        double left = 0.0;
        double right = 0.0;
        double low = 0.0;
        double high = 0.0;
        for (Phasor p : dial.phasors()) {
            for (Complex c : List.of(p.from(), p.end())) {
                left = Math.min(left, c.re());
                right = Math.max(right, c.re());
                low = Math.min(low, c.im());
                high = Math.max(high, c.im());
            }
        }
        for (Circle c : dial.circles()) {
            left = Math.min(left, c.centre().re() - c.radius());
            right = Math.max(right, c.centre().re() + c.radius());
            low = Math.min(low, c.centre().im() - c.radius());
            high = Math.max(high, c.centre().im() + c.radius());
        }
        double wide = room.width() - 2.0 * SIDE;
        double tall = room.height() - 2.0 * EDGE;
        double fitting = Math.min(
                right > left ? wide / (right - left) : Double.POSITIVE_INFINITY,
                high > low ? tall / (high - low) : Double.POSITIVE_INFINITY);
        scale = Double.isInfinite(fitting) ? 1.0 : fitting;
        originX = room.midX() - scale * (left + right) / 2.0;
        originY = room.midY() + scale * (low + high) / 2.0;
    }

    private double x(Complex value) {
        return originX + scale * value.re();
    }

    private double y(Complex value) {
        return originY - scale * value.im();
    }

    /** Such as {@code 7.967 kV ∠−120.0°}. */
    static String polar(Phasor phasor, Dial dial) {
        String magnitude = dial.dimension().format(phasor.value().magnitude());
        return phasor.value().magnitude() == 0.0 ? magnitude : magnitude + " " + angle(phasor.value());
    }

    private static String angle(Complex value) {
        String degrees = String.format(Locale.ROOT, "%.1f", value.degrees());
        return "\u2220" + (degrees.equals("-0.0") ? "0.0" : degrees.replace('-', '\u2212')) + "\u00b0";
    }

    /** What stands at the tips: the best for which all find room is taken. */
    private enum Tips {
        VALUES,
        NAMES,
        NUMBERS
    }

    /**
     * Words with their places.
     *
     * @param unnamed circles that found no room for theirs
     */
    private record Placing(Tips tips, List<Labels.Placed> labels, List<Circle> unnamed) {}

    /** Draws it; gives the lower end of what was drawn. */
    double draw() {
        List<Double> rings = rings();
        grid(rings);
        dial.circles().forEach(this::circle);
        dial.phasors().forEach(this::arrow);
        Placing placing = placed(Tips.VALUES).or(() -> placed(Tips.NAMES)).orElseGet(this::numbered);
        for (Labels.Placed label : placing.labels()) {
            label.leader().ifPresent(l -> sheet.line(l.x1(), l.y1(), l.x2(), l.y2(), LEADER));
            label.text().draw(sheet, label.box());
        }
        ringLabels(rings, placing.labels());
        return table(placing);
    }

    private Labels free() {
        Labels labels = new Labels(room);
        for (Phasor p : dial.phasors()) {
            labels.avoid(List.of(new Segment(x(p.from()), y(p.from()), x(p.end()), y(p.end()))));
            labels.take(Marker.DOT.box(x(p.end()), y(p.end())));
        }
        for (Circle c : dial.circles()) {
            labels.avoid(chords(c));
        }
        return labels;
    }

    /** Words at every tip, and at the circles that have room for them; empty where a tip has none near by. */
    private Optional<Placing> placed(Tips tips) {
        Labels labels = free();
        List<Labels.Placed> all = new ArrayList<>();
        for (int i = 0; i < dial.phasors().size(); i++) {
            Optional<Labels.Placed> place = atTip(i, tips, labels);
            if (place.isEmpty() || (tips == Tips.VALUES && place.get().cost() > FARTHEST)) {
                return Optional.empty();
            }
            all.add(place.get());
        }
        return Optional.of(new Placing(tips, all, circles(labels, all)));
    }

    /** Numbers at the tips that have room for one. */
    private Placing numbered() {
        Labels labels = free();
        List<Labels.Placed> all = new ArrayList<>();
        for (int i = 0; i < dial.phasors().size(); i++) {
            atTip(i, Tips.NUMBERS, labels).ifPresent(all::add);
        }
        return new Placing(Tips.NUMBERS, all, circles(labels, all));
    }

    private Optional<Labels.Placed> atTip(int number, Tips tips, Labels labels) {
        Phasor p = dial.phasors().get(number);
        Lettering lettering = new Lettering(p.dash().tone(), ChartPainter.SMALL.size(), tips == Tips.NUMBERS);
        double widest = 0.4 * room.width();
        List<TextBlock> shapes = switch (tips) {
            case VALUES -> {
                List<String> lines = new ArrayList<>(
                        TextBlock.even(p.label(), lettering, widest).lines());
                lines.add(polar(p, dial));
                yield List.of(
                        new TextBlock(lines, lettering),
                        TextBlock.of(p.label() + " " + polar(p, dial), lettering, 0.6 * room.width()));
            }
            case NAMES -> TextBlock.shapes(p.label(), lettering, widest);
            case NUMBERS -> List.of(TextBlock.of(Integer.toString(number + 1), lettering, widest));
        };
        return labels.near(x(p.end()), y(p.end()), shapes, false);
    }

    /** Names the circles that have room for it; gives the others. */
    private List<Circle> circles(Labels labels, List<Labels.Placed> placed) {
        List<Circle> unnamed = new ArrayList<>();
        for (Circle c : dial.circles()) {
            if (!c.label().isBlank()) {
                named(c, labels).ifPresentOrElse(placed::add, () -> unnamed.add(c));
            }
        }
        return unnamed;
    }

    /** At the point of the circle where the words stand nearest. */
    private Optional<Labels.Placed> named(Circle circle, Labels labels) {
        Lettering lettering = new Lettering(
                circle.kind() == Circle.Kind.LIMIT ? Tone.LIMIT : Tone.INK, ChartPainter.SMALL.size(), false);
        List<TextBlock> shapes = TextBlock.shapes(circle.label(), lettering, 0.5 * room.width());
        double radius = scale * circle.radius();
        for (int i : new int[] {3, 5, 11, 13, 4, 12, 2, 6, 10, 14, 1, 7, 9, 15, 0, 8}) {
            double angle = 2.0 * Math.PI * i / 16.0;
            double px = x(circle.centre()) + radius * Math.cos(angle);
            double py = y(circle.centre()) - radius * Math.sin(angle);
            if (room.holds(px, py)) {
                Optional<Labels.Placed> near = labels.near(px, py, shapes, false);
                if (near.isPresent()) {
                    return near;
                }
            }
        }
        return Optional.empty();
    }

    private List<Segment> chords(Circle circle) {
        List<Segment> chords = new ArrayList<>();
        double radius = scale * circle.radius();
        for (int i = 0; i < CHORDS; i++) {
            double a = 2.0 * Math.PI * i / CHORDS;
            double b = 2.0 * Math.PI * (i + 1) / CHORDS;
            chords.add(new Segment(
                    x(circle.centre()) + radius * Math.cos(a),
                    y(circle.centre()) - radius * Math.sin(a),
                    x(circle.centre()) + radius * Math.cos(b),
                    y(circle.centre()) - radius * Math.sin(b)));
        }
        return chords;
    }

    /** Radii of the rings of the grid, in the unit of the dial: round values that fit. */
    private List<Double> rings() {
        double widest = 0.0;
        for (Phasor p : dial.phasors()) {
            widest = Math.max(widest, Math.max(p.end().magnitude(), p.from().magnitude()));
        }
        for (Circle c : dial.circles()) {
            widest = Math.max(widest, c.centre().magnitude() + c.radius());
        }
        List<Double> rings = new ArrayList<>();
        if (widest > 0.0) {
            double step = Ticks.step(0.0, widest, RINGS);
            for (int i = 1; i <= RINGS + 1; i++) {
                double r = scale * step * i;
                if (room.holds(new Box(originX, originY, originX, originY).grown(r))) {
                    rings.add(step * i);
                }
            }
        }
        return rings;
    }

    private void grid(List<Double> rings) {
        sheet.frame(room, FRAME);
        if (room.holds(originX, originY)) {
            sheet.line(room.left(), originY, room.right(), originY, GRID);
            sheet.line(originX, room.top(), originX, room.bottom(), GRID);
        }
        rings.forEach(r -> sheet.ring(originX, originY, scale * r, GRID));
    }

    /** The largest ring says what it stands for. */
    private void ringLabels(List<Double> rings, List<Labels.Placed> placed) {
        if (rings.isEmpty()) {
            return;
        }
        Labels labels = free();
        placed.forEach(p -> {
            labels.take(p.box());
            p.leader().ifPresent(l -> labels.avoid(List.of(l)));
        });
        double value = rings.getLast();
        TextBlock text = TextBlock.of(dial.dimension().format(value), ChartPainter.QUIET, room.width());
        List<Box> places = new ArrayList<>();
        for (int i : new int[] {14, 10, 2, 6, 15, 9, 13, 11, 1, 7, 3, 5}) {
            double angle = 2.0 * Math.PI * i / 16.0;
            double reach = scale * value + 4.0;
            double cx = originX + Math.cos(angle) * (reach + text.width() / 2.0);
            double cy = originY - Math.sin(angle) * (reach + text.height() / 2.0);
            places.add(new Box(
                    cx - text.width() / 2.0,
                    cy - text.height() / 2.0,
                    cx + text.width() / 2.0,
                    cy + text.height() / 2.0));
        }
        labels.first(places).ifPresent(box -> text.draw(sheet, box));
    }

    private void circle(Circle circle) {
        Pen pen = pen(circle.kind());
        sheet.ring(x(circle.centre()), y(circle.centre()), scale * circle.radius(), pen);
    }

    private static Pen pen(Circle.Kind kind) {
        return switch (kind) {
            case LIMIT -> new Pen(Tone.LIMIT, 1.3, "11 3 3 3");
            case READING -> new Pen(Tone.INK, 1.6, "");
            case BAND -> new Pen(Tone.QUIET, 1.0, "2 2");
        };
    }

    private void arrow(Phasor phasor) {
        double x1 = x(phasor.from());
        double y1 = y(phasor.from());
        double x2 = x(phasor.end());
        double y2 = y(phasor.end());
        double length = Math.hypot(x2 - x1, y2 - y1);
        Dash dash = phasor.dash();
        sheet.group(phasor.label() + ", " + polar(phasor, dial), () -> {
            if (length < SHORTEST) {
                sheet.ring(x1, y1, 3.4, Pen.full(dash.tone(), 1.4));
                return;
            }
            double head = Math.min(HEAD, 0.45 * length);
            double ux = (x2 - x1) / length;
            double uy = (y2 - y1) / length;
            double bx = x2 - 0.8 * head * ux;
            double by = y2 - 0.8 * head * uy;
            sheet.line(x1, y1, bx, by, new Pen(dash.tone(), dash.width(), dash.pattern()));
            sheet.area(
                    "M" + Sheet.at(x2, y2)
                            + "L" + Sheet.at(x2 - head * ux - 0.36 * head * uy, y2 - head * uy + 0.36 * head * ux)
                            + "L" + Sheet.at(x2 - head * ux + 0.36 * head * uy, y2 - head * uy - 0.36 * head * ux)
                            + "Z",
                    dash.tone());
        });
    }

    /** Under the dial, a row a phasor where the tips don't say it all; circles that could not be named on it. */
    private double table(Placing placing) {
        double y = room.bottom() + 5.0;
        int rows = 0;
        for (Phasor p : placing.tips() == Tips.VALUES ? List.<Phasor>of() : dial.phasors()) {
            rows++;
            sample(y, new Pen(p.dash().tone(), p.dash().width(), p.dash().pattern()));
            y = row(y, (placing.tips() == Tips.NUMBERS ? rows + "  " : "") + p.label(), polar(p, dial));
        }
        for (Circle c : placing.unnamed()) {
            sample(y, pen(c.kind()));
            y = row(y, c.label(), "");
        }
        return y;
    }

    private void sample(double top, Pen pen) {
        double middle = top + 0.6 * ChartPainter.SMALL.size();
        sheet.line(room.left(), middle, room.left() + 26.0, middle, pen);
    }

    private double row(double top, String name, String value) {
        Lettering small = ChartPainter.SMALL;
        double left = room.left() + 32.0;
        double valueWidth = value.isEmpty() ? 0.0 : small.width(value) + 8.0;
        TextBlock text = TextBlock.of(name, small, room.right() - left - valueWidth);
        text.draw(sheet, left, top);
        sheet.flushRight(room.right(), top + 0.94 * small.size(), value, small);
        return top + Math.max(text.height(), small.line());
    }
}
