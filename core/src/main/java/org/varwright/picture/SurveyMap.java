package org.varwright.picture;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;
import org.varwright.survey.LegSurvey;
import org.varwright.survey.Survey;
import org.varwright.survey.UnitSurvey;
import org.varwright.survey.UnitVerdict;
import org.varwright.svg.Box;
import org.varwright.svg.FontWidths;
import org.varwright.svg.Lettering;
import org.varwright.svg.Pen;
import org.varwright.svg.Sheet;
import org.varwright.svg.Tone;

/** Every unit of a bank at its place: verdict as letter and pattern, deviation in percent and as a tone. */
public final class SurveyMap {
    private static final Lettering TITLE = new Lettering(Tone.INK, 14.0, true);
    private static final Lettering HEAD = new Lettering(Tone.INK, 12.0, true);
    private static final Lettering TEXT = new Lettering(Tone.INK, 11.0, false);
    private static final Lettering QUIET = new Lettering(Tone.QUIET, 10.5, false);
    private static final Lettering LETTER = new Lettering(Tone.INK, 11.5, true);
    private static final Lettering NUMBER = new Lettering(Tone.INK, 10.5, false);
    private static final Pen CELL = Pen.full(Tone.RULE, 0.8);
    private static final Pen HEAVY = Pen.full(Tone.INK, 2.2);

    private static final double MARGIN = 8.0;
    private static final double GAP = 6.0;
    private static final double BETWEEN = 12.0;
    private static final double CELL_HEIGHT = 29.0;
    private static final double NARROWEST = 38.0;
    private static final double WIDEST = 58.0;
    private static final double STRIP = 7.0;

    private final Survey survey;
    private final Sheet sheet = new Sheet();
    private final double width;
    private final Map<UnitPosition, UnitSurvey> units = new LinkedHashMap<>();
    private double y = MARGIN;

    private SurveyMap(Survey survey, Width width) {
        this.survey = survey;
        this.width = width.units();
        survey.units().forEach(u -> units.put(u.position(), u));
    }

    /** The whole bank as the text of an SVG file. */
    public static String draw(Survey survey, Width width) {
        return drawn(survey, survey.bank().stages(), width).svg();
    }

    /** One stage, for pages that take a picture each. */
    public static String draw(Survey survey, Stage stage, Width width) {
        return drawn(survey, List.of(stage), width).svg();
    }

    /** A picture with its words. */
    record Drawn(Sheet sheet, Width width, double height, String title, String description) {
        String svg() {
            return sheet.svg(width.units(), height, width.millimetres(), title, description);
        }
    }

    static Drawn drawn(Survey survey, List<Stage> stages, Width width) {
        SurveyMap map = new SurveyMap(survey, width);
        String title = survey.bank().name()
                + (stages.size() == 1 ? ", " + stages.getFirst().name() : "") + ": units by deviation";
        map.lines(title, TITLE);
        map.y += 2.0;
        stages.forEach(map::stage);
        map.legend(stages);
        return new Drawn(map.sheet, width, map.y + MARGIN, title, map.inWords(stages));
    }

    private void lines(String text, Lettering lettering) {
        for (String line : FontWidths.wrap(text, lettering.size(), lettering.bold(), width - 2.0 * MARGIN)) {
            sheet.text(MARGIN, y + 0.94 * lettering.size(), line, lettering);
            y += lettering.line();
        }
    }

    private void stage(Stage stage) {
        lines(
                stage.name() + ", " + survey.bank().words().connection(stage.connection()) + ", unit "
                        + stage.unit().name(),
                HEAD);
        y += 3.0;
        List<String> legs = stage.hasThreePhaseUnits() ? List.of("") : stage.legs();
        int columns = columns(stage, legs);
        double wide = (width - 2.0 * MARGIN - (columns - 1) * BETWEEN) / columns;
        for (int first = 0; first < legs.size(); first += columns) {
            double bottom = y;
            for (int c = 0; c < columns && first + c < legs.size(); c++) {
                double left = MARGIN + c * (wide + BETWEEN);
                bottom = Math.max(bottom, leg(stage, legs.get(first + c), left, wide));
            }
            y = bottom + GAP;
        }
        y += GAP;
    }

    /** How many legs stand side by side: as many as have room for their cells, evenly shared out. */
    private int columns(Stage stage, List<String> legs) {
        int across = 1;
        for (int n = 2; n <= Math.min(4, legs.size()); n++) {
            double wide = (width - 2.0 * MARGIN - (n - 1) * BETWEEN) / n;
            boolean fits = true;
            for (String leg : legs) {
                LegLayout layout = stage.layoutOf(leg);
                fits &= layout.units() * NARROWEST + lead(layout) <= wide;
            }
            across = fits && legs.size() % n == 0 ? n : across;
        }
        return across;
    }

    /** Room for the names of rows. */
    private static double lead(LegLayout layout) {
        return layout.strings() > 1 && layout.groups() > 1
                ? 34.0
                : layout.strings() > 1 || layout.groups() > 1 ? 22.0 : 0.0;
    }

    /** Draws one leg; gives its lower end. */
    private double leg(Stage stage, String leg, double left, double wide) {
        LegLayout layout = stage.layoutOf(leg);
        double top = y;
        if (!leg.isEmpty()) {
            String name = "leg " + leg
                    + survey.legs().stream()
                            .filter(l ->
                                    l.stage().equals(stage.name()) && l.leg().equals(leg))
                            .findFirst()
                            .map(SurveyMap::sum)
                            .orElse("");
            for (String line : FontWidths.wrap(name, TEXT.size(), false, wide)) {
                sheet.text(left, top + 0.94 * TEXT.size(), line, TEXT);
                top += TEXT.line();
            }
        }
        double lead = lead(layout);
        int across = Math.max(1, (int) Math.min(layout.units(), Math.floor((wide - lead) / NARROWEST)));
        int rows = (layout.units() + across - 1) / across;
        across = (layout.units() + rows - 1) / rows;
        double cell = Math.min(WIDEST, (wide - lead) / across);
        if (layout.units() > 1) {
            for (int u = 0; u < across && rows == 1; u++) {
                sheet.centred(left + lead + (u + 0.5) * cell, top + 0.94 * QUIET.size(), "u" + (u + 1), QUIET);
            }
            top += rows == 1 ? QUIET.line() : 0.0;
        }
        for (int s = 1; s <= layout.strings(); s++) {
            for (int g = 1; g <= layout.groups(); g++) {
                String row = (layout.strings() > 1 ? "s" + s : "") + (layout.groups() > 1 ? "g" + g : "");
                sheet.text(left, top + 0.5 * CELL_HEIGHT + 4.0, row, QUIET);
                for (int u = 1; u <= layout.units(); u++) {
                    double cellLeft = left + lead + (u - 1) % across * cell;
                    int line = (u - 1) / across;
                    double cellTop = top + line * CELL_HEIGHT;
                    Box box = new Box(cellLeft, cellTop, cellLeft + cell, cellTop + CELL_HEIGHT);
                    unit(stage, leg, s, g, u)
                            .ifPresent(found -> cell(
                                    found,
                                    box,
                                    rows > 1 ? "u" + found.position().unit() : ""));
                }
                top += rows * CELL_HEIGHT;
            }
            top += layout.strings() > 1 && layout.groups() > 1 ? 3.0 : 0.0;
        }
        return top;
    }

    private static String sum(LegSurvey leg) {
        return ": " + Dimension.CAPACITANCE.format(leg.capacitanceFarads()) + ", " + Deviation.percent(leg.deviation())
                + " % off the mean" + (leg.assumed() > 0 ? ", " + leg.assumed() + " assumed" : "");
    }

    private Optional<UnitSurvey> unit(Stage stage, String leg, int s, int g, int u) {
        return units.values().stream()
                .filter(v -> v.position().stage().equals(stage.name())
                        && v.position().leg().equals(leg)
                        && v.position().string() == s
                        && v.position().group() == g
                        && v.position().unit() == u)
                .findFirst();
    }

    private void cell(UnitSurvey unit, Box box, String number) {
        OptionalDouble off = Deviation.of(unit);
        UnitVerdict verdict = unit.verdict();
        sheet.group(
                unit.position().name() + unit.serial().map(s -> " (" + s + ")").orElse("") + ": " + verdict.words()
                        + ". " + unit.reason(),
                () -> {
                    sheet.fill(box, off.isPresent() ? Deviation.tone(off.getAsDouble()) : Tone.PAPER);
                    VerdictMark.strip(sheet, new Box(box.left(), box.top(), box.left() + STRIP, box.bottom()), verdict);
                    sheet.frame(box, CELL);
                    if (verdict == UnitVerdict.REPLACE || verdict == UnitVerdict.MEASURE_AGAIN) {
                        sheet.frame(box.grown(-1.1), HEAVY);
                    }
                    double middle = (box.left() + STRIP + box.right()) / 2.0;
                    String head = VerdictMark.letter(verdict);
                    double headWidth = LETTER.width(head) + (number.isEmpty() ? 0.0 : 3.0 + QUIET.width(number));
                    sheet.text(middle - headWidth / 2.0, box.top() + 12.5, head, LETTER);
                    if (!number.isEmpty()) {
                        sheet.text(middle + headWidth / 2.0 - QUIET.width(number), box.top() + 12.5, number, QUIET);
                    }
                    sheet.centred(
                            middle,
                            box.bottom() - 5.0,
                            off.isPresent() ? Deviation.percent(off.getAsDouble()) : "none",
                            off.isPresent() ? NUMBER : QUIET);
                });
    }

    private void legend(List<Stage> stages) {
        double x = MARGIN;
        for (UnitVerdict verdict : UnitVerdict.values()) {
            long count = count(stages, verdict);
            if (count == 0) {
                continue;
            }
            String words = VerdictMark.letter(verdict) + " " + verdict.words() + ": " + count;
            double need = STRIP + 4.0 + TEXT.width(words) + 14.0;
            if (x > MARGIN && x + need > width - MARGIN) {
                x = MARGIN;
                y += 19.0;
            }
            VerdictMark.strip(sheet, new Box(x, y, x + STRIP, y + 15.0), verdict);
            sheet.text(x + STRIP + 4.0, y + 11.5, words, TEXT);
            x += need;
        }
        y += 24.0;
        double box = (width - 2.0 * MARGIN) / Deviation.SCALE.size();
        for (int i = 0; i < Deviation.SCALE.size(); i++) {
            Deviation.Step step = Deviation.SCALE.get(i);
            Box place = new Box(MARGIN + i * box, y, MARGIN + (i + 1) * box, y + 16.0);
            sheet.fill(place, step.tone());
            sheet.frame(place, CELL);
            double size = Math.min(10.5, 10.5 * (box - 3.0) / NUMBER.width(step.words()));
            sheet.centred(place.midX(), y + 11.5, step.words(), new Lettering(Tone.INK, size, false));
        }
        y += 16.0 + GAP;
        lines(
                "Percent: capacitance read against the reference of the unit (factory value, earlier visit, mates or nameplate). u counts units in a group, g groups from the line end, s strings.",
                QUIET);
    }

    private long count(List<Stage> stages, UnitVerdict verdict) {
        return survey.with(verdict).stream()
                .filter(u -> stages.stream()
                        .anyMatch(s -> s.name().equals(u.position().stage())))
                .count();
    }

    private String inWords(List<Stage> stages) {
        List<String> parts = new ArrayList<>();
        for (UnitVerdict verdict : UnitVerdict.values()) {
            parts.add(count(stages, verdict) + " " + verdict.words());
        }
        StringBuilder words = new StringBuilder("Units: " + String.join(", ", parts) + ".");
        for (UnitVerdict verdict : List.of(UnitVerdict.REPLACE, UnitVerdict.MEASURE_AGAIN, UnitVerdict.WATCH)) {
            for (UnitSurvey unit : survey.with(verdict)) {
                if (stages.stream()
                        .anyMatch(s -> s.name().equals(unit.position().stage()))) {
                    words.append(' ')
                            .append(unit.position().name())
                            .append(": ")
                            .append(verdict.words())
                            .append('.');
                }
            }
        }
        return words.toString();
    }
}
