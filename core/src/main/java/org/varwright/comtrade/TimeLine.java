package org.varwright.comtrade;

import org.varwright.problem.Message;
import org.varwright.problem.Place;

/** Gives the time of one sample after the other. */
final class TimeLine {
    private static final double OTHER_STEP = 1.5;

    private final TimeBasis basis;
    private final boolean gaps;
    private final RatePlan plan;
    private final double stampSeconds;
    private final Remarks remarks;
    private final Place place;
    private long index;
    private int piece;
    private long baseIndex;
    private double baseSeconds;
    private double seconds;
    private double before = Double.NaN;
    private long beforeIndex;
    private double lastStep = Double.NaN;
    private int found;

    TimeLine(TimeBasis basis, boolean gaps, RatePlan plan, double stampSeconds, Remarks remarks, Place place) {
        this.basis = basis;
        this.gaps = gaps;
        this.plan = plan;
        this.stampSeconds = stampSeconds;
        this.remarks = remarks;
        this.place = place;
    }

    /** Seconds of the next sample from the first one. */
    double next(double stamp) {
        if (index == 0L) {
            before = stamp;
        } else {
            switch (basis) {
                case RATES, RATES_WITH_GAPS -> byRate(stamp);
                case STAMPS -> byStamp(stamp);
                case NONE -> seconds = index;
            }
        }
        index++;
        return seconds;
    }

    /** Seconds of the sample given last. */
    double seconds() {
        return seconds;
    }

    /** Gaps found so far that only the stamps show. */
    int gaps() {
        return found;
    }

    private void byRate(double stamp) {
        int now = plan.piece(index, piece);
        double step = 1.0 / plan.hertz(now);
        double old = 1.0 / plan.hertz(piece);
        boolean known = gaps && !Double.isNaN(stamp) && !Double.isNaN(before) && beforeIndex == index - 1;
        double stamped = known ? StampSurvey.step(before, stamp, step / stampSeconds) * stampSeconds : Double.NaN;
        boolean gap = known && stamped > OTHER_STEP * Math.max(step, old) + stampSeconds;
        // the standard doesn't say whose rate the step into another piece has: the stamps do, where it matters
        boolean byOld = known
                && now != piece
                && Math.max(step, old) > OTHER_STEP * Math.min(step, old)
                && Math.abs(stamped - old) < Math.abs(stamped - step);
        if (gap) {
            found++;
            remarks.add(
                    Message.RECORD_GAP,
                    place,
                    Long.toString(index),
                    Long.toString(index + 1),
                    micros(stamped),
                    micros(step));
        }
        if (gap || now != piece) {
            baseSeconds = seconds + (gap ? stamped : byOld ? old : step);
            baseIndex = index;
            piece = now;
        }
        seconds = baseSeconds + (index - baseIndex) / plan.hertz(piece);
        remember(stamp);
    }

    private void byStamp(double stamp) {
        if (Double.isNaN(stamp)) {
            seconds += Double.isNaN(lastStep) ? 0.0 : lastStep * stampSeconds;
            return;
        }
        double step = Double.isNaN(before) ? Double.NaN : StampSurvey.step(before, stamp, lastStep);
        if (Double.isNaN(step)) {
            remember(stamp);
            return;
        }
        if (step < 0.0) {
            remarks.add(Message.RECORD_BACKWARDS, place, Long.toString(index), Long.toString(index + 1));
            step = Double.isNaN(lastStep) ? 0.0 : lastStep;
        }
        // stamps that were missing in between have already been counted on
        double counted = (index - beforeIndex - 1) * (Double.isNaN(lastStep) ? 0.0 : lastStep);
        seconds += Math.max(0.0, step - counted) * stampSeconds;
        if (step > 0.0 && index - beforeIndex == 1) {
            lastStep = step;
        }
        remember(stamp);
    }

    private void remember(double stamp) {
        if (!Double.isNaN(stamp)) {
            before = stamp;
            beforeIndex = index;
        }
    }

    private static String micros(double seconds) {
        return Long.toString(Math.round(seconds * 1e6)) + " µs";
    }
}
