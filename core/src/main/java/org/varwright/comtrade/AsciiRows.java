package org.varwright.comtrade;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.varwright.problem.Message;

/** Samples written as text, one a line: number, stamp, values, states. */
final class AsciiRows implements Rows {
    private static final int LEAST_LINE_BYTES = 1 << 16;
    private static final int FIELD_BYTES = 64;
    private static final int HEAD_FIELDS = 2;
    /** Exact in a double. */
    private static final int WHOLE_DIGITS = 15;

    private static final double MARK_1999 = 99_999.0;
    private static final double MARK_1991 = 999_999.0;
    /** Thirty years of microseconds. */
    private static final double LARGEST_STAMP = 1e15;

    private final Source source;
    private final TextRows rows;
    private final int fields;
    private final int statuses;
    private final boolean[] mark1999;
    private final boolean[] mark1991;
    private final boolean ownMark1999;
    private final boolean ownMark1991;
    private final Remarks remarks;
    private final NumberScanner scanner = new NumberScanner();

    /** What is forgiven in the shape of lines is said on the first way through only. */
    private boolean judging = true;

    private int blankLines;
    private int rowFields;
    private double number;
    private double stamp;
    private int valuesFrom;
    private double wholeValue;

    AsciiRows(Source source, Configuration configuration, Remarks remarks) {
        List<Analog> analogs = configuration.analogs();
        this.source = source;
        this.statuses = configuration.statuses().size();
        this.fields = HEAD_FIELDS + analogs.size() + configuration.statuses().size();
        this.rows =
                new TextRows(source, (int) Math.min(1L << 28, Math.max(LEAST_LINE_BYTES, (long) FIELD_BYTES * fields)));
        this.remarks = remarks;
        this.mark1999 = new boolean[analogs.size()];
        this.mark1991 = new boolean[analogs.size()];
        this.ownMark1999 = configuration.revision() == Revision.C1999;
        this.ownMark1991 = configuration.revision() == Revision.C1991;
        for (int i = 0; i < analogs.size(); i++) {
            double largest = analogs.get(i).scale().largest();
            mark1999[i] = isMark(MARK_1999, largest, ownMark1999);
            mark1991[i] = isMark(MARK_1991, largest, ownMark1991);
        }
    }

    /** Whether a number marks a missing value: that of the own edition unless the declared range goes beyond it, another's unless it reaches it. */
    private static boolean isMark(double mark, double largest, boolean own) {
        return own ? !(largest > mark) : !(largest >= mark);
    }

    @Override
    public void rewind() {
        rows.rewind();
    }

    @Override
    public boolean next() {
        while (rows.next()) {
            if (rows.isBlank()) {
                blankLines++;
            } else if (isSample()) {
                return true;
            }
        }
        if (judging && blankLines > 0) {
            remarks.add(Message.RECORD_BLANK_LINES, source.whole(), Integer.toString(blankLines));
        }
        judging = false;
        return false;
    }

    /** Whether the line is a sample; its number and stamp are read then. */
    private boolean isSample() {
        byte[] buffer = rows.buffer();
        rowFields = rows.commas() + 1;
        int first = comma(rows.start());
        number = scanner.scan(buffer, rows.start(), first);
        boolean numbered = scanner.isNumber();
        int second = first < rows.end() ? comma(first + 1) : first;
        double written = first < rows.end() ? scanner.scan(buffer, first + 1, second) : Double.NaN;
        stamp = Math.abs(written) <= LARGEST_STAMP ? written : Double.NaN;
        valuesFrom = Math.min(second + 1, rows.end());
        if (rowFields < fields && !rows.isEnded()) {
            if (judging) {
                remarks.add(
                        Message.RECORD_ROW_CUT,
                        source.at(rows.line(), 1),
                        Integer.toString(rowFields),
                        Integer.toString(fields));
            }
            return false;
        }
        if ((!numbered && Double.isNaN(stamp)) || rowFields < Math.min(3, fields)) {
            if (judging) {
                remarks.add(Message.RECORD_NOT_A_ROW, source.at(rows.line(), 1), excerpt(rows.start(), rows.end()));
            }
            return false;
        }
        boolean commaAtEnd = rowFields == fields + 1 && buffer[rows.end() - 1] == ',';
        if (judging && rowFields != fields && !commaAtEnd) {
            remarks.add(
                    Message.RECORD_ROW_FIELDS,
                    source.at(rows.line(), 1),
                    Integer.toString(rowFields),
                    Integer.toString(fields));
        }
        return true;
    }

    /** Index of the next comma, or of the line's end. */
    private int comma(int from) {
        byte[] buffer = rows.buffer();
        int end = rows.end();
        int at = from;
        while (at < end && buffer[at] != ',') {
            at++;
        }
        return at;
    }

    /** A few characters for a message. */
    private String excerpt(int from, int to) {
        return new String(rows.buffer(), from, Math.max(0, Math.min(24, to - from)), StandardCharsets.US_ASCII)
                .replace('\uFFFD', '?')
                .strip();
    }

    @Override
    public double number() {
        return number;
    }

    @Override
    public double stamp() {
        return stamp;
    }

    @Override
    public void read(double[] numbers, long[] states) {
        byte[] buffer = rows.buffer();
        int end = rows.end();
        int at = valuesFrom;
        for (int i = 0; i < numbers.length; i++) {
            int next = whole(buffer, at, end);
            double value = wholeValue;
            if (next < 0) {
                next = comma(at);
                value = scanner.scan(buffer, at, next);
                if (!scanner.isNumber() && !scanner.isEmpty()) {
                    remarks.add(Message.RECORD_VALUE, source.at(rows.line(), at - rows.start() + 1), excerpt(at, next));
                }
            }
            numbers[i] = isMissing(i, value) ? Double.NaN : value;
            at = Math.min(next + 1, end);
        }
        for (int i = 0; i < statuses; i++) {
            int next = at + 1;
            boolean plain = at < end && (buffer[at] | 1) == '1' && (next >= end || buffer[next] == ',');
            if (!plain) {
                next = comma(at);
            }
            if (plain ? buffer[at] == '1' : state(buffer, at, next)) {
                states[i >> 6] |= 1L << i;
            }
            at = Math.min(next + 1, end);
        }
    }

    /** Where a plain whole number ends, as nearly all fields are; -1 where the field is anything else. */
    private int whole(byte[] buffer, int from, int end) {
        int at = from;
        boolean negative = at < end && buffer[at] == '-';
        at += negative ? 1 : 0;
        int start = at;
        long value = 0L;
        while (at < end && buffer[at] >= '0' && buffer[at] <= '9') {
            value = value * 10L + (buffer[at] - '0');
            at++;
        }
        if (at == start || at - start > WHOLE_DIGITS || (at < end && buffer[at] != ',')) {
            return -1;
        }
        wholeValue = negative ? -(double) value : value;
        return at;
    }

    private boolean isMissing(int channel, double value) {
        if (value == MARK_1999 && mark1999[channel]) {
            foreignMark(ownMark1999, "99999");
            return true;
        }
        if (value == MARK_1991 && mark1991[channel]) {
            foreignMark(ownMark1991, "999999");
            return true;
        }
        return false;
    }

    private void foreignMark(boolean own, String mark) {
        if (!own) {
            remarks.add(Message.RECORD_MARK, source.at(rows.line(), 0), mark);
        }
    }

    private boolean state(byte[] buffer, int from, int to) {
        int start = from;
        int end = to;
        while (start < end && NumberScanner.isBlank(buffer[start])) {
            start++;
        }
        while (end > start && NumberScanner.isBlank(buffer[end - 1])) {
            end--;
        }
        boolean single = end - start == 1;
        if (single && buffer[start] == '1') {
            return true;
        }
        if (!single || buffer[start] != '0') {
            remarks.add(Message.RECORD_STATE, source.at(rows.line(), from - rows.start() + 1), excerpt(from, to));
        }
        return false;
    }
}
