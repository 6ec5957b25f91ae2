package org.varwright.bankfile;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.varwright.bank.TransformerRatio;
import org.varwright.quantity.Dimension;
import org.varwright.quantity.Reading;

/** Values as the writer puts them down: every number with enough digits that it is read back as the very same double. */
final class Written {
    private static final Set<String> WORDS_OF_YAML =
            Set.of("null", "true", "false", "yes", "no", "on", "off", "y", "n", "~");

    private Written() {}

    /** The text with the shortest number in one of the usual units that is read back as this value. */
    static String quantity(double si, Dimension dimension) {
        String shortest = "";
        for (String unit : usualUnits(dimension)) {
            if (dimension.parse("1 " + unit) instanceof Reading.Value factor) {
                String text = exact(si, si / factor.si(), unit, dimension);
                if (!text.isEmpty() && (shortest.isEmpty() || text.indexOf(' ') < shortest.indexOf(' '))) {
                    shortest = text;
                }
            }
        }
        if (shortest.isEmpty()) {
            throw new IllegalStateException("no text is read back as " + si + " " + dimension);
        }
        return shortest;
    }

    private static String exact(double si, double scaled, String unit, Dimension dimension) {
        for (double near : new double[] {scaled, Math.nextUp(scaled), Math.nextDown(scaled)}) {
            BigDecimal whole = new BigDecimal(near);
            for (int digits = 1; digits <= 17; digits++) {
                String text = whole.round(new MathContext(digits))
                                .stripTrailingZeros()
                                .toPlainString() + " " + unit;
                if (dimension.parse(text) instanceof Reading.Value value && value.si() == si) {
                    return text;
                }
            }
        }
        return "";
    }

    private static List<String> usualUnits(Dimension dimension) {
        return switch (dimension) {
            case VOLTAGE -> List.of("kV", "V");
            case CURRENT -> List.of("A", "kA", "mA");
            case REACTIVE_POWER -> List.of("kvar", "Mvar", "var");
            case ACTIVE_POWER -> List.of("MW", "kW", "W");
            case APPARENT_POWER -> List.of("MVA", "kVA", "VA");
            case CAPACITANCE -> List.of("µF", "nF", "pF", "F");
            case RESISTANCE -> List.of("MΩ", "kΩ", "Ω");
            case INDUCTANCE -> List.of("µH", "mH", "H");
            case FREQUENCY -> List.of("Hz");
            case TIME -> List.of("min", "s", "ms");
            case ENERGY -> List.of("kJ", "J");
            case CURRENT_SQUARED_TIME -> List.of("A²s");
            case CURRENT_FREQUENCY -> List.of("kA·kHz", "A·Hz");
            case MASS -> List.of("kg");
            case LENGTH -> List.of("m");
            case FRACTION -> List.of("%");
            case TEMPERATURE -> List.of("°C");
        };
    }

    /** A plain number. */
    static String number(double value) {
        return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
    }

    static String ratio(TransformerRatio ratio) {
        return "\"" + number(ratio.primary()) + ":" + number(ratio.secondary()) + "\"";
    }

    /** Text, in quotes wherever YAML or a careless reader of YAML could take it for something else. */
    static String text(String text) {
        return isPlain(text) ? text : quoted(text);
    }

    private static boolean isPlain(String text) {
        if (text.isEmpty() || WORDS_OF_YAML.contains(text.toLowerCase(Locale.ROOT))) {
            return false;
        }
        boolean letter = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean edge = i == 0 || i == text.length() - 1;
            if (c < 0x80 && Character.isLetter(c)) {
                letter = true;
            } else if (!Character.isDigit(c) || c >= 0x80) {
                if ("µΩ".indexOf(c) < 0 && (edge || " ._+-/()".indexOf(c) < 0)) {
                    return false;
                }
            }
        }
        return letter && !text.matches("[0-9.]+[eE][0-9]+|0[xo][0-9a-fA-F]+|[0-9]{4}-.*");
    }

    private static String quoted(String text) {
        StringBuilder out = new StringBuilder("\"");
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\n' -> out.append("\\n");
                case '\r' -> out.append("\\r");
                case '\t' -> out.append("\\t");
                default -> out.append(c);
            }
        }
        return out.append('"').toString();
    }

    static String list(List<String> texts) {
        return texts.stream().map(Written::text).collect(Collectors.joining(", ", "[", "]"));
    }
}
