package org.varwright.comtrade;

import java.util.Optional;
import org.varwright.problem.Message;
import org.varwright.problem.Place;

/** Reads the two lines of date and time. */
final class MomentReader {
    /** Two digits from here on are of the last century: the format is of 1991, relays that record came in the eighties. */
    private static final int LAST_CENTURY = 70;

    private static final int NANO_DIGITS = 9;

    private final Revision revision;
    private final Remarks remarks;
    private boolean nanoseconds;

    MomentReader(Revision revision, Remarks remarks) {
        this.revision = revision;
        this.remarks = remarks;
    }

    /** Whether one of the lines read has nine digits of the second: then stamps are nanoseconds (C37.111-2013). */
    boolean isNanoseconds() {
        return nanoseconds;
    }

    /** Whether a line looks like a date with a time. */
    static boolean looksLikeOne(String line) {
        return line.indexOf(':') > 0 && line.indexOf('/') > 0;
    }

    Moment read(String line, Place place) {
        String text = line.strip();
        int comma = text.indexOf(',');
        int blank = comma >= 0 ? comma : text.indexOf(' ');
        if (blank <= 0) {
            return unknown(text, place);
        }
        String[] date = text.substring(0, blank).strip().split("[/.-]", -1);
        String[] time = text.substring(blank + 1).strip().replace(',', '.').split(":", -1);
        if (date.length != 3 || time.length != 3) {
            return unknown(text, place);
        }
        int point = time[2].indexOf('.');
        String whole = (point < 0 ? time[2] : time[2].substring(0, point)).strip();
        String fraction = point < 0 ? "" : time[2].substring(point + 1).strip();
        int[] d = {number(date[0]), number(date[1]), number(date[2])};
        int hour = number(time[0]);
        int minute = number(time[1]);
        int second = number(whole);
        int nanos = fraction(fraction);
        if (d[0] < 0 || d[1] < 0 || d[2] < 0 || hour < 0 || minute < 0 || second < 0 || nanos < 0) {
            return unknown(text, place);
        }
        nanoseconds |= fraction.length() >= NANO_DIGITS;
        if (!fraction.isEmpty() && fraction.length() < 6) {
            remarks.add(Message.RECORD_SHORT_FRACTION, place, fraction);
        }
        boolean monthFirst = revision == Revision.C1991;
        if (date[0].strip().length() == 4) {
            return moment(text, place, new int[] {d[0], d[1], d[2]}, hour, minute, second, nanos)
                    .orElseGet(() -> unknown(text, place));
        }
        int year = date[2].strip().length() > 2 ? d[2] : d[2] + (d[2] >= LAST_CENTURY ? 1900 : 2000);
        int[] usual = monthFirst ? new int[] {year, d[0], d[1]} : new int[] {year, d[1], d[0]};
        int[] swapped = {year, usual[2], usual[1]};
        if (Instant.exists(usual[0], usual[1], usual[2], hour, minute, second)) {
            return new Moment(
                    text, Optional.of(new Instant(usual[0], usual[1], usual[2], hour, minute, second, nanos)));
        }
        return moment(text, place, swapped, hour, minute, second, nanos).orElseGet(() -> unknown(text, place));
    }

    private Optional<Moment> moment(String text, Place place, int[] date, int hour, int minute, int second, int nanos) {
        if (!Instant.exists(date[0], date[1], date[2], hour, minute, second)) {
            return Optional.empty();
        }
        remarks.add(Message.RECORD_DATE_ORDER, place, text, Integer.toString(revision.year()));
        return Optional.of(
                new Moment(text, Optional.of(new Instant(date[0], date[1], date[2], hour, minute, second, nanos))));
    }

    private Moment unknown(String text, Place place) {
        remarks.add(Message.RECORD_DATE, place, text);
        return new Moment(text, Optional.empty());
    }

    /** A whole number of one to four digits; -1 where it is none. */
    private static int number(String text) {
        String digits = text.strip();
        if (digits.isEmpty() || digits.length() > 4) {
            return -1;
        }
        int value = 0;
        for (int i = 0; i < digits.length(); i++) {
            int digit = digits.charAt(i) - '0';
            if (digit < 0 || digit > 9) {
                return -1;
            }
            value = value * 10 + digit;
        }
        return value;
    }

    /** Nanoseconds of a decimal fraction; -1 where it is none. */
    private static int fraction(String text) {
        int nanos = 0;
        for (int i = 0; i < Math.max(NANO_DIGITS, text.length()); i++) {
            int digit = i < text.length() ? text.charAt(i) - '0' : 0;
            if (digit < 0 || digit > 9) {
                return -1;
            }
            nanos = i < NANO_DIGITS ? nanos * 10 + digit : nanos;
        }
        return nanos;
    }
}
