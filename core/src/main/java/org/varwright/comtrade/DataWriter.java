package org.varwright.comtrade;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;

/** Writes the samples of a recording. */
final class DataWriter {
    /** From here on 99999 would read as missing. */
    private static final long ASCII_LARGEST = 99_998L;

    private final Recording recording;
    private final Revision revision;
    private final DataFormat format;
    private final Stamps stamps;
    private final List<Scale> scales;

    DataWriter(Recording recording, Revision revision, DataFormat format, Stamps stamps) {
        this.recording = recording;
        this.revision = revision;
        this.format = format;
        this.stamps = stamps;
        this.scales = recording.analogs().stream().map(a -> scale(a, format)).toList();
    }

    List<Scale> scales() {
        return scales;
    }

    byte[] write() {
        Octets out = new Octets();
        for (int i = 0; i < recording.seconds().size(); i++) {
            if (format == DataFormat.ASCII) {
                out.line(row(i));
            } else {
                out.doubleWord(i + 1).doubleWord((int) stamps.stamp(recording.seconds(), i));
                for (int c = 0; c < scales.size(); c++) {
                    number(
                            out,
                            scales.get(c),
                            recording.analogs().get(c).values().at(i));
                }
                states(out, i);
            }
        }
        return out.toArray();
    }

    private String row(int index) {
        StringBuilder row =
                new StringBuilder().append(index + 1).append(',').append(stamps.stamp(recording.seconds(), index));
        for (int c = 0; c < scales.size(); c++) {
            double value = recording.analogs().get(c).values().at(index);
            row.append(',').append(Double.isNaN(value) ? missing() : Long.toString(raw(scales.get(c), value)));
        }
        for (Status status : recording.statuses()) {
            row.append(status.bits().at(index) ? ",1" : ",0");
        }
        return row.toString();
    }

    private String missing() {
        return switch (revision) {
            case C1991 -> "999999";
            case C1999 -> "99999";
            case C2013 -> "";
        };
    }

    private void number(Octets out, Scale scale, double value) {
        boolean isMissing = Double.isNaN(value);
        switch (format) {
            case ASCII -> throw new IllegalStateException("text has rows");
            case BINARY -> out.word(isMissing ? Short.MIN_VALUE : (int) raw(scale, value));
            case BINARY32 -> out.doubleWord(isMissing ? Integer.MIN_VALUE : (int) raw(scale, value));
            case FLOAT32 -> out.doubleWord(Float.floatToIntBits(isMissing ? Float.NaN : (float) value));
        }
    }

    private void states(Octets out, int index) {
        List<Status> statuses = recording.statuses();
        for (int from = 0; from < statuses.size(); from += 16) {
            int word = 0;
            for (int bit = 0; bit < 16 && from + bit < statuses.size(); bit++) {
                word |= statuses.get(from + bit).bits().at(index) ? 1 << bit : 0;
            }
            out.word(word);
        }
    }

    private static long raw(Scale scale, double value) {
        return Math.round((value - scale.offset()) / scale.multiplier());
    }

    private static long largest(DataFormat format) {
        return switch (format) {
            case ASCII -> ASCII_LARGEST;
            case BINARY -> Short.MAX_VALUE;
            case BINARY32, FLOAT32 -> Integer.MAX_VALUE;
        };
    }

    private static Scale scale(Analog analog, DataFormat format) {
        if (format == DataFormat.FLOAT32) {
            return new Scale(1.0, 0.0, -Float.MAX_VALUE, Float.MAX_VALUE);
        }
        long largest = largest(format);
        Scale own = analog.scale();
        return gives(own, analog.values(), largest)
                ? new Scale(own.multiplier(), own.offset(), -largest, largest)
                : new Scale(multiplier(analog.values(), largest), 0.0, -largest, largest);
    }

    /** Whether every value is a number of the format in this scale. */
    private static boolean gives(Scale scale, Samples values, long largest) {
        for (int i = 0; i < values.size(); i++) {
            double value = values.at(i);
            if (!Double.isNaN(value)) {
                long raw = raw(scale, value);
                if (Math.abs(raw) > largest || scale.value((double) raw) != value) {
                    return false;
                }
            }
        }
        return scale.multiplier() != 0.0;
    }

    /** Of seven digits, so that the largest magnitude is just inside. */
    private static double multiplier(Samples values, long largest) {
        double most = Math.max(Math.abs(values.least()), Math.abs(values.largest()));
        if (!(most > 0.0)) {
            return 1.0;
        }
        return new BigDecimal(most / largest)
                .round(new MathContext(7, RoundingMode.CEILING))
                .doubleValue();
    }
}
