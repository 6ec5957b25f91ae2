package org.varwright.quantity;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A kind of physical quantity with the units in which people write it.
 *
 * <p>{@link #parse(String)} reads text such as {@code 13.8 kV}, {@code 12.6 µF}, {@code 4.2 Mohm} into SI; {@link #format(double)} prints SI with a
 * sensible prefix and four significant digits. Unit letters are case-sensitive where the case decides a factor ({@code mH} against {@code MH}) and
 * lenient elsewhere ({@code KV} is read as {@code kV}).
 */
public enum Dimension {
    /** Volts. */
    VOLTAGE("V", "13.8 kV", prefixed("V", "m", "", "k", "M")),
    /** Amperes. */
    CURRENT("A", "65 A", prefixed("A", "µ", "m", "", "k")),
    /** Reactive power [var]. */
    REACTIVE_POWER(
            "var", "300 kvar", with(prefixed("var", "", "k", "M"), "kVAR", 1e3, "MVAR", 1e6, "kVAr", 1e3, "MVAr", 1e6)),
    /** Active power [W]. */
    ACTIVE_POWER("W", "2.4 MW", prefixed("W", "m", "", "k", "M", "G")),
    /** Apparent power [VA]. */
    APPARENT_POWER("VA", "280 MVA", prefixed("VA", "", "k", "M", "G")),
    /** Farads. */
    CAPACITANCE("F", "12.6 µF", prefixed("F", "p", "n", "µ", "m")),
    /** Ohms. */
    RESISTANCE(
            "Ω",
            "4.2 MΩ",
            with(prefixed("Ω", "µ", "m", "", "k", "M", "G", "T"), prefixed("ohm", "µ", "m", "", "k", "M", "G", "T"))),
    /** Henries. */
    INDUCTANCE("H", "40 µH", prefixed("H", "n", "µ", "m", "", "k")),
    /** Hertz. */
    FREQUENCY("Hz", "60 Hz", prefixed("Hz", "", "k")),
    /** Seconds. */
    TIME("s", "5 min", with(prefixed("s", "m", ""), "min", 60.0, "h", 3600.0)),
    /** Joules. */
    ENERGY("J", "15 kJ", prefixed("J", "m", "", "k", "M")),
    /**
     * Ampere-squared seconds. A prefix is not read: kA²s is (kA)²s by the rules of SI and a thousand A²s on many data sheets, a factor of a thousand
     * apart.
     */
    CURRENT_SQUARED_TIME("A²s", "4200 A²s", units("A²s", 1.0, "A²·s", 1.0, "A2s", 1.0, "A^2s", 1.0, "A^2·s", 1.0)),
    /** Amperes times hertz: peak and frequency of a transient, multiplied. */
    CURRENT_FREQUENCY("A·Hz", "20 kA·kHz", products()),
    /** Kilograms. */
    MASS("kg", "58 kg", units("kg", 1.0, "g", 1e-3, "lb", 0.45359237)),
    /** Metres. */
    LENGTH("m", "12 m", units("m", 1.0, "mm", 1e-3, "cm", 1e-2, "ft", 0.3048)),
    /** A part of one, written in percent. */
    FRACTION("%", "0.05 %", units("%", 1e-2)),
    /** Degrees Celsius (an offset scale: kept in °C inside as well). */
    TEMPERATURE("°C", "25 °C", units("°C", 1.0, "C", 1.0, "degC", 1.0));

    private static final Pattern SHAPE = Pattern.compile("([+\\-−]?[0-9]*[.,]?[0-9]*(?:[eE][+\\-]?[0-9]+)?)\\s*(.*)");

    private final String symbol;
    private final String example;

    @SuppressWarnings("ImmutableEnumChecker") // unmodifiable from the constructor on
    private final Map<String, Double> factors;

    Dimension(String symbol, String example, Map<String, Double> factors) {
        this.symbol = symbol;
        this.example = example;
        this.factors = Collections.unmodifiableMap(factors);
    }

    /** What an SI unit measures, such as {@link #VOLTAGE} of {@code V}; empty for a plain number and a unit that is none of these. */
    public static Optional<Dimension> of(String unit) {
        return Arrays.stream(values())
                .filter(d -> d != FRACTION && d.symbol.equals(unit))
                .findFirst();
    }

    /** The SI unit (for {@link #FRACTION} the percent sign) as printed. */
    public String symbol() {
        return symbol;
    }

    /** A well-formed example, for messages. */
    public String example() {
        return example;
    }

    /** Units that are read, as written. */
    public List<String> units() {
        return List.copyOf(factors.keySet());
    }

    /**
     * Reads a number with its unit.
     *
     * @param text what was written, such as {@code 13.8 kV}
     * @return the value in SI, or why it can't be read; never NaN or infinite
     */
    public Reading parse(String text) {
        String trimmed = text.strip().replace('\u00a0', ' ').replace('\u202f', ' ');
        Matcher matcher = SHAPE.matcher(trimmed);
        if (trimmed.isEmpty() || !matcher.matches() || matcher.group(1).isEmpty()) {
            return new Reading.NotANumber(text);
        }
        String number = matcher.group(1).replace('−', '-');
        String unit = matcher.group(2).strip();
        if (number.indexOf(',') >= 0) {
            return new Reading.DecimalComma(text, trimmed.replace(',', '.'));
        }
        double value;
        try {
            value = Double.parseDouble(number);
        } catch (NumberFormatException e) {
            return new Reading.NotANumber(text);
        }
        if (unit.isEmpty()) {
            return new Reading.NoUnit(text);
        }
        Double factor = factor(unit);
        if (factor == null) {
            return new Reading.WrongUnit(text, unit);
        }
        double si = value * factor;
        return Double.isFinite(si) ? new Reading.Value(si) : new Reading.NotANumber(text);
    }

    private @Nullable Double factor(String written) {
        String unit = written.replace('\u03bc', 'µ').replace('\u2126', 'Ω').replace('\u03a9', 'Ω');
        if (this == CURRENT_FREQUENCY || this == CURRENT_SQUARED_TIME) {
            unit = unit.replaceAll("\\s*[\u00d7\u22c5\u2219*]\\s*", "·");
        }
        Double exact = factors.get(unit);
        if (exact != null) {
            return exact;
        }
        if (unit.startsWith("u") && factors.containsKey("µ" + unit.substring(1))) {
            return factors.get("µ" + unit.substring(1));
        }
        Double samePrefix = onlyFactor(unit, true);
        return samePrefix != null ? samePrefix : onlyFactor(unit, false);
    }

    /** The one factor of the units that differ from the written one by case alone (with {@code samePrefix}, not in the first letter). */
    private @Nullable Double onlyFactor(String unit, boolean samePrefix) {
        Double found = null;
        for (Map.Entry<String, Double> entry : factors.entrySet()) {
            String known = entry.getKey();
            if (known.equalsIgnoreCase(unit) && (!samePrefix || known.charAt(0) == unit.charAt(0))) {
                if (found != null && !found.equals(entry.getValue())) {
                    return null;
                }
                found = entry.getValue();
            }
        }
        return found;
    }

    /** Prints with a prefix that leaves 1 to 999 before the point, four significant digits, trailing zeros dropped. */
    public String format(double si) {
        return format(si, 4);
    }

    /**
     * Prints with a prefix that leaves 1 to 999 before the point where there is one.
     *
     * @param si value in SI
     * @param digits significant digits, 1 to 15
     */
    public String format(double si, int digits) {
        if (!Double.isFinite(si)) {
            return "not known";
        }
        String bestUnit = symbol;
        double bestFactor = factors.get(symbol) == null ? 1.0 : factors.get(symbol);
        if (this == TIME) {
            return formatTime(si, digits);
        }
        if (this == CURRENT_FREQUENCY && Math.abs(si) >= 1e4) {
            return digits(si / 1e6, digits) + " kA·kHz";
        }
        if (hasPrefixes() && si != 0.0) {
            double smallest = Double.POSITIVE_INFINITY;
            boolean fits = false;
            for (Map.Entry<String, Double> entry : factors.entrySet()) {
                if (!entry.getKey().endsWith(symbol) || entry.getKey().length() > symbol.length() + 1) {
                    continue;
                }
                double scaled = roundTo(Math.abs(si) / entry.getValue(), digits);
                boolean good = scaled >= 1.0 && scaled < 1000.0;
                double distance = Math.abs(Math.log10(Math.max(scaled, 1e-300)) - 1.0);
                if ((good && !fits) || (good == fits && distance < smallest)) {
                    fits = good;
                    smallest = distance;
                    bestUnit = entry.getKey();
                    bestFactor = entry.getValue();
                }
            }
        }
        return digits(si / bestFactor, digits) + " " + bestUnit;
    }

    /** Whether it is printed with a prefix that suits the size. */
    private boolean hasPrefixes() {
        return switch (this) {
            case FRACTION, TEMPERATURE, MASS, LENGTH, CURRENT_SQUARED_TIME, CURRENT_FREQUENCY -> false;
            case VOLTAGE,
                    CURRENT,
                    REACTIVE_POWER,
                    ACTIVE_POWER,
                    APPARENT_POWER,
                    CAPACITANCE,
                    RESISTANCE,
                    INDUCTANCE,
                    FREQUENCY,
                    TIME,
                    ENERGY -> true;
        };
    }

    private static String formatTime(double seconds, int digits) {
        if (Math.abs(seconds) >= 120.0 && seconds == Math.rint(seconds)) {
            long whole = Math.round(seconds);
            long minutes = whole / 60;
            long rest = whole % 60;
            if (minutes >= 120) {
                return minutes / 60 + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min")
                        + (rest == 0 ? "" : " " + rest + " s");
            }
            return minutes + " min" + (rest == 0 ? "" : " " + rest + " s");
        }
        if (Math.abs(seconds) >= 120.0) {
            return formatTime(Math.rint(seconds), digits);
        }
        return Math.abs(seconds) < 1.0 && seconds != 0.0
                ? digits(seconds * 1e3, digits) + " ms"
                : digits(seconds, digits) + " s";
    }

    /**
     * A plain number with so many significant digits, trailing zeros dropped, never in exponent form between 1e-9 and 1e15.
     *
     * @param value finite
     * @param digits significant digits, 1 to 15
     */
    public static String digits(double value, int digits) {
        if (value == 0.0) {
            return "0";
        }
        int magnitude = (int) Math.floor(Math.log10(Math.abs(roundTo(value, digits))));
        int decimals = Math.max(0, digits - 1 - magnitude);
        if (magnitude < -9 || magnitude > 15) {
            return String.format(Locale.ROOT, "%." + (digits - 1) + "e", value);
        }
        String text = String.format(Locale.ROOT, "%." + decimals + "f", roundTo(value, digits));
        if (text.indexOf('.') >= 0) {
            text = text.replaceAll("0+$", "").replaceAll("\\.$", "");
        }
        return text;
    }

    private static double roundTo(double value, int digits) {
        if (value == 0.0) {
            return 0.0;
        }
        double scale = Math.pow(10.0, digits - 1 - Math.floor(Math.log10(Math.abs(value))));
        double rounded = Math.rint(value * scale) / scale;
        return Double.isFinite(rounded) ? rounded : value;
    }

    private static Map<String, Double> prefixed(String unit, String... prefixes) {
        Map<String, Double> map = new LinkedHashMap<>();
        for (String prefix : prefixes) {
            map.put(prefix + unit, prefixFactor(prefix));
        }
        return map;
    }

    private static Map<String, Double> products() {
        Map<String, Double> map = new LinkedHashMap<>();
        for (String amperes : List.of("k", "")) {
            for (String hertz : List.of("k", "")) {
                double factor = prefixFactor(amperes) * prefixFactor(hertz);
                map.put(amperes + "A·" + hertz + "Hz", factor);
            }
        }
        return map;
    }

    private static double prefixFactor(String prefix) {
        return switch (prefix) {
            case "p" -> 1e-12;
            case "n" -> 1e-9;
            case "µ" -> 1e-6;
            case "m" -> 1e-3;
            case "" -> 1.0;
            case "k" -> 1e3;
            case "M" -> 1e6;
            case "G" -> 1e9;
            case "T" -> 1e12;
            default -> throw new IllegalArgumentException(prefix);
        };
    }

    private static Map<String, Double> units(Object... pairs) {
        return with(new LinkedHashMap<>(), pairs);
    }

    private static Map<String, Double> with(Map<String, Double> map, Object... pairs) {
        for (int i = 0; i < pairs.length; i += 2) {
            map.put((String) pairs[i], (Double) pairs[i + 1]);
        }
        return map;
    }

    private static Map<String, Double> with(Map<String, Double> map, Map<String, Double> more) {
        map.putAll(more);
        return map;
    }
}
