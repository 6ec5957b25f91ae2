package org.varwright.bankfile;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.varwright.bank.TransformerRatio;
import org.varwright.problem.Message;
import org.varwright.quantity.Dimension;
import org.varwright.quantity.Reading;

/** Reads numbers with their units, plain numbers and counts; NaN or the lowest count stand in for what can't be read. */
final class Quantities {
    private static final Pattern COUNT = Pattern.compile("[0-9]{1,9}");
    private static final Pattern PLAIN = Pattern.compile("[+-]?([0-9]+(\\.[0-9]*)?|\\.[0-9]+)([eE][+-]?[0-9]+)?");

    private static final Pattern RATIO = Pattern.compile("([0-9]+(?:\\.[0-9]+)?)\\s*:\\s*([0-9]+(?:\\.[0-9]+)?)");

    private Quantities() {}

    static double read(Tree.Scalar scalar, Dimension dimension, double low, double high, Findings findings) {
        String shown = Shown.of(scalar.text());
        switch (dimension.parse(scalar.text())) {
            case Reading.Value value -> {
                if (value.si() >= low && value.si() <= high) {
                    return value.si() + 0.0; // -0 becomes 0
                }
                findings.error(
                        Message.OUT_OF_RANGE, scalar.place(), shown, dimension.format(low), dimension.format(high));
            }
            case Reading.NotANumber n ->
                findings.error(Message.NOT_A_QUANTITY, scalar.place(), shown, dimension.example());
            case Reading.DecimalComma comma ->
                findings.error(Message.DECIMAL_COMMA, scalar.place(), shown, Shown.of(comma.suggestion()));
            case Reading.NoUnit n ->
                findings.error(
                        Message.NO_UNIT, scalar.place(), shown, shown.strip() + " " + unitOf(dimension.example()));
            case Reading.WrongUnit wrong ->
                findings.error(
                        Message.WRONG_UNIT,
                        scalar.place(),
                        shown,
                        Shown.of(wrong.unit()),
                        Shown.words(dimension.units()),
                        dimension.example());
        }
        return Double.NaN;
    }

    private static String unitOf(String example) {
        return example.substring(example.indexOf(' ') + 1);
    }

    static double readPlain(Tree.Scalar scalar, String example, double low, double high, Findings findings) {
        String text = scalar.text().strip();
        String shown = Shown.of(text);
        if (!PLAIN.matcher(text).matches()) {
            if (text.matches("[0-9]+,[0-9]+")) {
                findings.error(Message.DECIMAL_COMMA, scalar.place(), shown, text.replace(',', '.'));
            } else {
                findings.error(Message.NOT_A_NUMBER, scalar.place(), shown, example);
            }
            return Double.NaN;
        }
        double value = Double.parseDouble(text);
        if (value >= low && value <= high) {
            return value;
        }
        findings.error(
                Message.OUT_OF_RANGE, scalar.place(), shown, Dimension.digits(low, 4), Dimension.digits(high, 4));
        return Double.NaN;
    }

    static Optional<TransformerRatio> readRatio(Tree.Scalar scalar, Findings findings) {
        Matcher matcher = RATIO.matcher(scalar.text().strip());
        if (matcher.matches()) {
            double primary = Double.parseDouble(matcher.group(1));
            double secondary = Double.parseDouble(matcher.group(2));
            if (primary > 0.0 && secondary > 0.0 && primary < 1e9 && secondary < 1e9) {
                return Optional.of(new TransformerRatio(primary, secondary));
            }
        }
        findings.error(Message.NOT_A_RATIO, scalar.place(), Shown.of(scalar.text()));
        return Optional.empty();
    }

    static int readCount(Tree.Scalar scalar, int low, int high, Findings findings) {
        String text = scalar.text().strip();
        if (COUNT.matcher(text).matches()) {
            int value = Integer.parseInt(text);
            if (value >= low && value <= high) {
                return value;
            }
        }
        findings.error(Message.NOT_A_COUNT, scalar.place(), Shown.of(text), String.valueOf(low), String.valueOf(high));
        return low;
    }
}
