package org.varwright.comtrade;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** One line of a configuration, cut at its commas before anything becomes text: no code page in use has a comma inside a character. */
final class ConfigurationLine {
    private final byte[] bytes;
    private final int number;
    private final List<int[]> fields;
    private final TextDecoder decoder;
    private final NumberScanner scanner = new NumberScanner();

    private ConfigurationLine(byte[] bytes, int number, List<int[]> fields, TextDecoder decoder) {
        this.bytes = bytes;
        this.number = number;
        this.fields = fields;
        this.decoder = decoder;
    }

    static ConfigurationLine cut(byte[] bytes, int from, int to, int number, TextDecoder decoder) {
        List<int[]> fields = new ArrayList<>();
        int start = from;
        for (int i = from; i <= to; i++) {
            if (i == to || bytes[i] == ',') {
                fields.add(new int[] {start, i, start - from + 1});
                start = i + 1;
            }
        }
        return new ConfigurationLine(bytes, number, fields, decoder);
    }

    int number() {
        return number;
    }

    /** Name of its code page. */
    String codePage() {
        return decoder.name();
    }

    int size() {
        return fields.size();
    }

    /** Column at which a field starts, from 1. */
    int column(int field) {
        return field < fields.size() ? fields.get(field)[2] : 0;
    }

    /** A field without blanks around it; empty where there is none. */
    String text(int field) {
        return field < fields.size() ? text(field, field) : "";
    }

    /** Fields from one to another, with the commas between them. */
    String text(int first, int last) {
        return decoder.decode(Arrays.copyOfRange(bytes, fields.get(first)[0], fields.get(last)[1]))
                .replace("\u001a", "")
                .replace("\u0000", "")
                .strip();
    }

    /** The whole line. */
    String all() {
        return text(0, fields.size() - 1);
    }

    /** A field as a number; NaN where it is none. */
    double numberAt(int field) {
        return field < fields.size() ? scanner.scan(bytes, fields.get(field)[0], fields.get(field)[1]) : Double.NaN;
    }
}
