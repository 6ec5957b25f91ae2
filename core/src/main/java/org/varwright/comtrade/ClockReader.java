package org.varwright.comtrade;

import java.util.Locale;
import java.util.OptionalInt;

/** Reads the last two lines of a configuration of 2013: time codes, quality of the clock, leap second. */
final class ClockReader {
    private ClockReader() {}

    static Clock read(String timeCode, String localCode, String quality, String leap) {
        return new Clock(timeCode, localCode, minutes(timeCode), quality, qualityText(quality), leap, leapText(leap));
    }

    /** Minutes of a code such as {@code -5h30}, {@code +10}, {@code 0h00}; empty for {@code x} and all else. */
    static OptionalInt minutes(String code) {
        String text = code.strip().toLowerCase(Locale.ROOT);
        int sign = text.startsWith("-") ? -1 : 1;
        String rest = text.startsWith("-") || text.startsWith("+") ? text.substring(1) : text;
        int h = rest.indexOf('h');
        int hours = number(h < 0 ? rest : rest.substring(0, h));
        int minutes = h < 0 || h == rest.length() - 1 ? 0 : number(rest.substring(h + 1));
        return hours < 0 || hours > 23 || minutes < 0 || minutes > 59
                ? OptionalInt.empty()
                : OptionalInt.of(sign * (hours * 60 + minutes));
    }

    private static int number(String text) {
        if (text.isEmpty() || text.length() > 2) {
            return -1;
        }
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) < '0' || text.charAt(i) > '9') {
                return -1;
            }
        }
        return Integer.parseInt(text);
    }

    /** Meaning of the time quality code (C37.111-2013, time quality indicator code; the codes are those of IEEE C37.118). */
    static String qualityText(String code) {
        String digits = code.strip().toUpperCase(Locale.ROOT);
        while (digits.length() > 1 && digits.startsWith("0")) {
            digits = digits.substring(1);
        }
        return switch (digits) {
            case "0" -> "clock locked";
            case "1" -> "clock unlocked, within 1 ns";
            case "2" -> "clock unlocked, within 10 ns";
            case "3" -> "clock unlocked, within 100 ns";
            case "4" -> "clock unlocked, within 1 µs";
            case "5" -> "clock unlocked, within 10 µs";
            case "6" -> "clock unlocked, within 100 µs";
            case "7" -> "clock unlocked, within 1 ms";
            case "8" -> "clock unlocked, within 10 ms";
            case "9" -> "clock unlocked, within 100 ms";
            case "A" -> "clock unlocked, within 1 s";
            case "B" -> "clock unlocked, within 10 s";
            case "F" -> "clock failed: its time can't be trusted";
            default -> "";
        };
    }

    static String leapText(String code) {
        return switch (code.strip()) {
            case "0" -> "no leap second in the record";
            case "1" -> "a leap second was added in the record";
            case "2" -> "a leap second was taken out in the record";
            case "3" -> "the clock can't tell leap seconds";
            default -> "";
        };
    }
}
