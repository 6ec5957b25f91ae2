package org.varwright.comtrade;

import java.util.ArrayList;
import java.util.List;

/**
 * How the times of a recording are written.
 *
 * @param unitsPerSecond of a time stamp before its multiplier: microseconds, or nanoseconds
 * @param multiplier of every stamp
 * @param rates the lines of sampling rates; one of 0 Hz where only the stamps tell
 */
record Stamps(double unitsPerSecond, double multiplier, List<Rate> rates) {
    /** A time stamp has 32 bits, of which all 1 means that there is none. */
    private static final double LARGEST = 4_294_967_294.0;
    /** A step may be off by this part before the rate is not believed. */
    private static final double STEP_TOLERANCE = 1e-5;
    /** A time may be off a whole microsecond by this many before nanoseconds are worth it. */
    private static final double MICRO_TOLERANCE = 1e-3;

    private static final double MICROS = 1e6;
    private static final double NANOS = 1e9;

    Stamps {
        rates = List.copyOf(rates);
    }

    static Stamps of(Recording recording, Revision revision) {
        Samples seconds = recording.seconds();
        double span = seconds.size() == 0 ? 0.0 : seconds.at(seconds.size() - 1) - seconds.at(0);
        double units =
                revision == Revision.C2013 && span * NANOS <= LARGEST && !isWholeMicros(seconds) ? NANOS : MICROS;
        double multiplier = 1.0;
        while (span * units / multiplier > LARGEST) {
            multiplier *= 10.0;
        }
        return new Stamps(units, multiplier, rates(recording));
    }

    boolean isNanos() {
        return unitsPerSecond == NANOS;
    }

    long stamp(Samples seconds, int index) {
        return Math.round((seconds.at(index) - seconds.at(0)) * unitsPerSecond / multiplier);
    }

    private static boolean isWholeMicros(Samples seconds) {
        for (int i = 0; i < seconds.size(); i++) {
            double micros = (seconds.at(i) - seconds.at(0)) * MICROS;
            if (Math.abs(micros - Math.rint(micros)) > MICRO_TOLERANCE) {
                return false;
            }
        }
        return true;
    }

    /** The recording's own rates where they give its times, counted anew in a part of a record; else none. */
    private static List<Rate> rates(Recording recording) {
        int samples = recording.seconds().size();
        List<Rate> stampsOnly = List.of(new Rate(0.0, samples));
        return switch (recording.timing().basis()) {
            case RATES -> pieces(recording.seconds(), recording.timing().rates(), stampsOnly);
            case RATES_WITH_GAPS, STAMPS, NONE -> stampsOnly;
        };
    }

    private static List<Rate> pieces(Samples seconds, List<Rate> declared, List<Rate> otherwise) {
        List<Rate> pieces = new ArrayList<>();
        int at = 0;
        int rate = 0;
        while (at + 1 < seconds.size()) {
            int from = at;
            while (rate < declared.size()
                    && !isStep(seconds, at, declared.get(rate).hertz())) {
                rate++;
            }
            if (rate == declared.size()) {
                return otherwise;
            }
            double hertz = declared.get(rate).hertz();
            while (at + 1 < seconds.size() && isStep(seconds, at, hertz)) {
                at++;
            }
            pieces.add(new Rate(hertz, at + 1L));
            if (from == at) {
                return otherwise;
            }
        }
        if (pieces.isEmpty()) {
            return declared.isEmpty() || !(declared.getFirst().hertz() > 0.0)
                    ? otherwise
                    : List.of(new Rate(declared.getFirst().hertz(), seconds.size()));
        }
        return pieces;
    }

    private static boolean isStep(Samples seconds, int at, double hertz) {
        return Math.abs((seconds.at(at + 1) - seconds.at(at)) * hertz - 1.0) <= STEP_TOLERANCE;
    }
}
