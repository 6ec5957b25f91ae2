package org.varwright.comtrade;

import java.nio.charset.StandardCharsets;

/** Reads decimal numbers out of bytes, correctly rounded, without making text of them where that can be avoided. */
final class NumberScanner {
    /** Powers of ten that a double holds exactly. */
    private static final double[] TENS = {
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
        1e20, 1e21, 1e22
    };

    /** Below it a whole number is exact in a double. */
    private static final long EXACT = 1L << 53;

    private boolean empty;
    private boolean number;

    /** Whether the last field had nothing but blanks. */
    boolean isEmpty() {
        return empty;
    }

    /** Whether the last field was a finite number. */
    boolean isNumber() {
        return number;
    }

    /** The number in {@code [from, to)}, blanks around it allowed; NaN where there is none. */
    double scan(byte[] bytes, int from, int to) {
        int start = from;
        int end = to;
        while (start < end && isBlank(bytes[start])) {
            start++;
        }
        while (end > start && isBlank(bytes[end - 1])) {
            end--;
        }
        empty = start == end;
        number = false;
        if (empty) {
            return Double.NaN;
        }
        int at = start;
        boolean negative = bytes[at] == '-';
        if (negative || bytes[at] == '+') {
            at++;
        }
        long mantissa = 0L;
        int digits = 0;
        int scale = 0;
        boolean point = false;
        boolean exact = true;
        for (; at < end; at++) {
            int c = bytes[at];
            if (c >= '0' && c <= '9') {
                digits++;
                if (mantissa < EXACT / 10) {
                    mantissa = mantissa * 10 + (c - '0');
                    scale -= point ? 1 : 0;
                } else {
                    exact = false;
                }
            } else if (c == '.' && !point) {
                point = true;
            } else {
                break;
            }
        }
        if (digits == 0) {
            return Double.NaN;
        }
        if (at < end) {
            int exponent = exponent(bytes, at, end);
            if (exponent == Integer.MIN_VALUE) {
                return Double.NaN;
            }
            scale += exponent;
        }
        double value;
        if (exact && scale >= -22 && scale <= 22) {
            value = scale < 0 ? mantissa / TENS[-scale] : mantissa * TENS[scale];
            value = negative ? -value : value;
        } else {
            value = Double.parseDouble(new String(bytes, start, end - start, StandardCharsets.ISO_8859_1));
        }
        number = Math.abs(value) <= Double.MAX_VALUE;
        return number ? value : Double.NaN;
    }

    /** Exponent that starts with its letter; the least integer where it is none. */
    private static int exponent(byte[] bytes, int from, int to) {
        int at = from;
        if (bytes[at] != 'e' && bytes[at] != 'E') {
            return Integer.MIN_VALUE;
        }
        at++;
        boolean negative = at < to && bytes[at] == '-';
        if (at < to && (negative || bytes[at] == '+')) {
            at++;
        }
        if (at == to) {
            return Integer.MIN_VALUE;
        }
        int exponent = 0;
        for (; at < to; at++) {
            if (bytes[at] < '0' || bytes[at] > '9') {
                return Integer.MIN_VALUE;
            }
            exponent = Math.min(exponent * 10 + (bytes[at] - '0'), 100_000);
        }
        return negative ? -exponent : exponent;
    }

    static boolean isBlank(byte b) {
        return b == ' ' || b == '\t' || b == 0x1A || b == 0;
    }
}
