package org.varwright.comtrade;

/** What the time stamps of all samples look like, gathered on the first way through the data. */
final class StampSurvey {
    private static final double WRAP_16 = 65_536.0;
    private static final double WRAP_32 = 4_294_967_296.0;
    private static final double OTHER_STEP = 1.5;

    private final RatePlan plan;
    private final double stampSeconds;
    private long samples;
    private long missing;
    private long steps;
    private long agree;
    private long larger;
    private long equal;
    private long falls;
    private long wraps;
    private long jumps;
    private int piece;
    private double first = Double.NaN;
    private double last = Double.NaN;
    private double lastStep = Double.NaN;
    private double lastNumber = Double.NaN;

    StampSurvey(RatePlan plan, double stampSeconds) {
        this.plan = plan;
        this.stampSeconds = stampSeconds;
    }

    /** The step from one stamp to the next in their units, a counter that begins anew counted on; negative where they run backwards. */
    static double step(double before, double after, double expected) {
        double step = after - before;
        if (step >= 0.0) {
            return step;
        }
        if (isWrap(step + WRAP_16, expected)) {
            return step + WRAP_16;
        }
        return isWrap(step + WRAP_32, expected) ? step + WRAP_32 : step;
    }

    private static boolean isWrap(double step, double expected) {
        return step >= 0.0 && Math.abs(step - expected) <= Math.max(1.0, 0.5 * expected);
    }

    void add(double number, double stamp) {
        if (samples > 0 && number != lastNumber + 1.0) {
            jumps++;
        }
        lastNumber = number;
        samples++;
        if (Double.isNaN(stamp)) {
            missing++;
            return;
        }
        if (Double.isNaN(first)) {
            first = stamp;
        } else {
            judge(stamp);
        }
        last = stamp;
    }

    private void judge(double stamp) {
        double expected = lastStep;
        if (!plan.isEmpty()) {
            piece = plan.piece(samples - 1, piece);
            expected = 1.0 / plan.hertz(piece) / stampSeconds;
        }
        double step = step(last, stamp, expected);
        wraps += step >= 0.0 && stamp < last ? 1 : 0;
        steps++;
        if (step < 0.0) {
            falls++;
        } else if (step == 0.0) {
            equal++;
        } else {
            lastStep = step;
            if (!plan.isEmpty()) {
                boolean agrees = step <= OTHER_STEP * expected + 1.0 && step >= expected / OTHER_STEP - 1.0;
                agree += agrees ? 1 : 0;
                larger += step > OTHER_STEP * expected + 1.0 ? 1 : 0;
            }
        }
    }

    long samples() {
        return samples;
    }

    long falls() {
        return falls;
    }

    long wraps() {
        return wraps;
    }

    /** How often the number of a sample was not the one before plus one. */
    long jumps() {
        return jumps;
    }

    /** First stamp that is there; NaN where none is. */
    double first() {
        return first;
    }

    /** Whether the stamps make a time base by themselves. */
    boolean isTimeBase() {
        return steps > 0 && missing * 2 < samples && equal * 2 < steps;
    }

    /** Whether the stamps follow the rates so closely that a larger step of theirs is a gap. Stamps that also run backwards order nothing. */
    boolean followsRates() {
        return steps > 0
                && falls == 0
                && agree * 2 > steps
                && equal * 100 <= steps
                && larger * 20 <= Math.max(steps, 60);
    }

    /** Whether the stamps are there but say something else than the rates. */
    boolean contradictsRates() {
        return steps > 0 && equal < steps && agree * 2 <= steps;
    }
}
