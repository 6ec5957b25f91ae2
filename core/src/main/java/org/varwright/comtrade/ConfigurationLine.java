package org.varwright.comtrade;

import java.util.Arrays;

/** One line of a configuration, cut at its commas before anything becomes text: no code page in use has a comma inside a character. */
final class ConfigurationLine {
    private final byte[] bytes;
    private final int number;
    /** First byte of every field, and one behind the comma that would follow the last. */
    private final int[] starts;

    private final TextDecoder decoder;
    private final NumberScanner scanner;

    private ConfigurationLine(byte[] bytes, int number, int[] starts, TextDecoder decoder, NumberScanner scanner) {
        this.bytes = bytes;
        this.number = number;
        this.starts = starts;
        this.decoder = decoder;
        this.scanner = scanner;
    }

    static ConfigurationLine cut(
            byte[] bytes, int from, int to, int number, TextDecoder decoder, NumberScanner scanner) {
        int commas = 0;
        for (int i = from; i < to; i++) {
            commas += bytes[i] == ',' ? 1 : 0;
        }
        int[] starts = new int[commas + 2];
        starts[0] = from;
        int field = 1;
        for (int i = from; i <= to; i++) {
            if (i == to || bytes[i] == ',') {
                starts[field] = i + 1;
                field++;
            }
        }
        return new ConfigurationLine(bytes, number, starts, decoder, scanner);
    }

    int number() {
        return number;
    }

    /** Name of its code page. */
    String codePage() {
        return decoder.name();
    }

    int size() {
        return starts.length - 1;
    }

    /** Column at which a field starts, from 1. */
    int column(int field) {
        return field < size() ? starts[field] - starts[0] + 1 : 0;
    }

    /** A field without blanks around it; empty where there is none. */
    String text(int field) {
        return field < size() ? text(field, field) : "";
    }

    /** Fields from one to another, with the commas between them. */
    String text(int first, int last) {
        return decoder.decode(Arrays.copyOfRange(bytes, starts[first], starts[last + 1] - 1))
                .replace("\u001a", "")
                .replace("\u0000", "")
                .strip();
    }

    /** The whole line. */
    String all() {
        return text(0, size() - 1);
    }

    /** A field as a number; NaN where it is none. */
    double numberAt(int field) {
        return field < size() ? scanner.scan(bytes, starts[field], starts[field + 1] - 1) : Double.NaN;
    }
}
