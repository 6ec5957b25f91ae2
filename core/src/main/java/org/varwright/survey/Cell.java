package org.varwright.survey;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.quantity.Dimension;
import org.varwright.quantity.Reading;

/** Reads one cell as a number with or without a unit. */
final class Cell {
    /** No meter shows less in any unit, and what divides by less than this leaves the numbers. */
    private static final double SMALLEST = 1e-18;

    private static final Pattern NUMBER =
            Pattern.compile("([<>≤≥]?)\\s*([+\\-−]?[0-9][0-9.,' ]*(?:[eE][+\\-]?[0-9]+)?|[+\\-−]?[.,][0-9]+)\\s*(.*)");
    private static final List<String> OVER =
            List.of("ol", "o.l", "o.l.", "0l", "overrange", "over range", "over-range", "∞", "inf", "infinite", "open");
    private static final List<String> BLANK = List.of("", "-", "–", "—", "n/a", "na", "not measured", "none");

    private Cell() {}

    /** What came of reading a cell. */
    sealed interface Result {
        record Good(Measured measured) implements Result {}

        record Blank() implements Result {}

        record Bad(Problem problem) implements Result {}
    }

    /** How the numbers of a table are written. */
    enum Decimal {
        POINT,
        COMMA
    }

    /** Whether a cell's number shows a decimal comma, a decimal point, or neither for sure. */
    static Optional<Decimal> decimalOf(String cell) {
        Matcher matcher = NUMBER.matcher(cell);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        String number = matcher.group(2);
        int comma = number.lastIndexOf(',');
        int point = number.lastIndexOf('.');
        if (comma >= 0 && point >= 0) {
            return Optional.of(comma > point ? Decimal.COMMA : Decimal.POINT);
        }
        if (comma >= 0 && number.indexOf(',') == comma && !couldGroup(number, ',')) {
            return Optional.of(Decimal.COMMA);
        }
        if (point >= 0 && number.indexOf('.') == point && !couldGroup(number, '.')) {
            return Optional.of(Decimal.POINT);
        }
        return Optional.empty();
    }

    /** A separator followed by exactly three digits may group thousands, unless a lone zero stands before it. */
    private static boolean couldGroup(String number, char separator) {
        return number.matches("[+\\-−]?[1-9][0-9]{0,2}\\" + separator + "[0-9]{3}");
    }

    static Result read(
            Quantity quantity, String raw, String columnUnit, Decimal decimal, boolean decided, Place place) {
        String text = raw.strip();
        String lower = text.toLowerCase(Locale.ROOT);
        if (BLANK.contains(lower)) {
            return new Result.Blank();
        }
        if (OVER.contains(lower)) {
            return new Result.Good(new Measured.OverRange(raw));
        }
        String example = quantity.dimension() == Dimension.CAPACITANCE
                ? "12.71"
                : quantity.dimension().example();
        if (text.startsWith("=")) {
            return bad(Message.CELL_FORMULA, place, quantity.word(), raw);
        }
        Matcher matcher = NUMBER.matcher(text);
        if (!matcher.matches()) {
            return bad(Message.CELL_NOT_A_NUMBER, place, quantity.word(), raw, example);
        }
        String number = matcher.group(2).replace(" ", "").replace("'", "");
        boolean comma = number.indexOf(',') >= 0;
        boolean point = number.indexOf('.') >= 0;
        if (comma && !point && decimal == Decimal.POINT && couldGroup(number, ',')) {
            return bad(Message.CELL_AMBIGUOUS, place, quantity.word(), raw);
        }
        if (point && !comma && decimal == Decimal.COMMA && decided && couldGroup(number, '.')) {
            return bad(Message.CELL_AMBIGUOUS, place, quantity.word(), raw);
        }
        if (comma && point) {
            number = number.lastIndexOf(',') > number.lastIndexOf('.')
                    ? number.replace(".", "").replace(',', '.')
                    : number.replace(",", "");
        } else {
            number = number.replace(',', '.');
        }
        String unit = matcher.group(3).isEmpty() ? columnUnit : matcher.group(3);
        Reading reading = quantity.dimension().parse(number + " " + unit);
        return switch (reading) {
            case Reading.Value value -> ranged(quantity, value.si(), matcher.group(1), raw, place);
            case Reading.WrongUnit wrong ->
                bad(
                        Message.CELL_WRONG_UNIT,
                        place,
                        quantity.word(),
                        raw,
                        wrong.unit(),
                        String.join(", ", quantity.dimension().units()));
            case Reading.NotANumber ignored -> bad(Message.CELL_NOT_A_NUMBER, place, quantity.word(), raw, example);
            case Reading.DecimalComma ignored -> bad(Message.CELL_NOT_A_NUMBER, place, quantity.word(), raw, example);
            case Reading.NoUnit ignored -> bad(Message.CELL_NOT_A_NUMBER, place, quantity.word(), raw, example);
        };
    }

    private static Result ranged(Quantity quantity, double si, String sign, String raw, Place place) {
        if (si < 0.0 && quantity.least() == 0.0) {
            return bad(Message.CELL_NEGATIVE, place, quantity.word(), raw);
        }
        boolean vanishes = si != 0.0 && Math.abs(si) < SMALLEST;
        if (si > quantity.most() || si < quantity.least() || vanishes) {
            return bad(
                    Message.CELL_OUT_OF_RANGE,
                    place,
                    quantity.word(),
                    raw,
                    quantity.dimension().format(vanishes ? SMALLEST : quantity.least()),
                    quantity.dimension().format(quantity.most()));
        }
        return new Result.Good(
                switch (sign) {
                    case ">", "≥" -> new Measured.Above(si, raw);
                    case "<", "≤" -> new Measured.Below(si, raw);
                    default -> new Measured.Value(si, raw);
                });
    }

    private static Result bad(Message message, Place place, String... arguments) {
        return new Result.Bad(Problem.of(message, place, arguments));
    }
}
