package org.varwright.fit;

/**
 * A lower bound of a stage's unbalance over a range of capacitances of one leg, at the cost of two evaluations.
 *
 * <p><b>Model.</b> The leg's capacitance grows with what is added to the group. Each signal is {@code |N|/D}, {@code N} a phasor linear in the leg's capacitance and
 * {@code D > 0} growing with it or constant: so it is at least the distance from the origin to the line between {@code N} at both ends, over {@code D} at
 * the upper end (FIT-3). Across a bridge {@code N} is real, the worst of three phases counts, and with a floating neutral the voltage of a phase is at least
 * {@code 1 − |neutral|}; the neutral is farthest at one of the ends, because a sum of phasors of length 1 with positive weights never leaves their triangle.
 */
final class SquaredBound {
    private static final double HALF_ROOT3 = Math.sqrt(3.0) / 2.0;

    private final StageModel model;
    private final UnbalanceSignal.Kind kind;
    private double re;
    private double im;
    private double denominator;

    SquaredBound(StageModel model) {
        this.model = model;
        this.kind = model.signals.getFirst().kind();
    }

    /**
     * The bound for everything from {@code fewest} to {@code most} added to the group that the state is aimed at; 0 where none is known.
     *
     * @param state aimed at a group
     * @param fewest [F], above 0
     * @param most [F], not below {@code fewest}
     */
    double least(StageState state, double fewest, double most) {
        int leg = state.trialLeg();
        boolean bridge = model.connection.isBridge();
        boolean known = switch (kind) {
            case NEUTRAL_VOLTS, NEUTRAL_AMPERES, BETWEEN_NEUTRALS, DIFFERENTIAL -> !bridge;
            case BRIDGE -> true;
            case TAP, LEG_DEVIATION -> false;
        };
        if (leg < 0 || !known) {
            return 0.0;
        }
        double[] legs = state.legs;
        double before = legs[leg];
        double low = state.legWith(fewest);
        double high = state.legWith(most);
        double bound =
                kind == UnbalanceSignal.Kind.BRIDGE ? bridge(legs, leg, low, high) : phasor(legs, leg, low, high);
        legs[leg] = before;
        return bound;
    }

    private double phasor(double[] legs, int leg, double low, double high) {
        legs[leg] = low;
        numerator(legs);
        double re1 = re;
        double im1 = im;
        legs[leg] = high;
        numerator(legs);
        if (denominator <= 0.0) {
            return 0.0;
        }
        double dRe = re - re1;
        double dIm = im - im1;
        double length = dRe * dRe + dIm * dIm;
        double along = length > 0.0 ? Math.min(1.0, Math.max(0.0, -(re1 * dRe + im1 * dIm) / length)) : 0.0;
        double nearRe = re1 + along * dRe;
        double nearIm = im1 + along * dIm;
        return (nearRe * nearRe + nearIm * nearIm) / (denominator * denominator);
    }

    private void numerator(double[] c) {
        double base = model.nameplateLegFarads;
        switch (kind) {
            case NEUTRAL_VOLTS -> denominator = sumOfPhases(c);
            case NEUTRAL_AMPERES -> {
                sumOfPhases(c);
                denominator = base;
            }
            case DIFFERENTIAL -> {
                rotate(c[0] - c[3], c[1] - c[4], c[2] - c[5]);
                denominator = base;
            }
            case BETWEEN_NEUTRALS -> {
                double first = c[0] + c[1] + c[2];
                double second = c[3] + c[4] + c[5];
                rotate(second * c[0] - first * c[3], second * c[1] - first * c[4], second * c[2] - first * c[5]);
                denominator = (first + second) * base;
            }
            case BRIDGE, TAP, LEG_DEVIATION -> denominator = 0.0;
        }
    }

    private double sumOfPhases(double[] c) {
        if (c.length == 3) {
            rotate(c[0], c[1], c[2]);
            return c[0] + c[1] + c[2];
        }
        rotate(c[0] + c[3], c[1] + c[4], c[2] + c[5]);
        return c[0] + c[1] + c[2] + c[3] + c[4] + c[5];
    }

    private void rotate(double a, double b, double c) {
        re = a - 0.5 * (b + c);
        im = HALF_ROOT3 * (c - b);
    }

    private double bridge(double[] legs, int leg, double low, double high) {
        int own = leg / 4;
        legs[leg] = low;
        double cross = cross(legs, own);
        double shift = neutral(legs);
        legs[leg] = high;
        double cross2 = cross(legs, own);
        shift = Math.max(shift, neutral(legs));
        double least = cross * cross2 <= 0.0 ? 0.0 : Math.min(Math.abs(cross), Math.abs(cross2)) / all(legs, own);
        for (int p = 0; p < 3; p++) {
            if (p != own) {
                least = Math.max(least, Math.abs(cross(legs, p)) / all(legs, p));
            }
        }
        double bound = least * Math.max(0.0, 1.0 - Math.sqrt(shift)) / model.nameplateLegFarads;
        return bound * bound;
    }

    private static double cross(double[] c, int p) {
        return c[4 * p] * c[4 * p + 3] - c[4 * p + 1] * c[4 * p + 2];
    }

    private static double all(double[] c, int p) {
        return Math.max(Double.MIN_NORMAL, c[4 * p] + c[4 * p + 1] + c[4 * p + 2] + c[4 * p + 3]);
    }

    /** Square of the neutral's voltage over the voltage to neutral. */
    private double neutral(double[] c) {
        if (!model.connection.hasFloatingNeutral()) {
            return 0.0;
        }
        double a = phase(c, 0);
        double b = phase(c, 1);
        double d = phase(c, 2);
        rotate(a, b, d);
        double total = Math.max(Double.MIN_NORMAL, a + b + d);
        return (re * re + im * im) / (total * total);
    }

    private static double phase(double[] c, int p) {
        return (c[4 * p] + c[4 * p + 2]) * (c[4 * p + 1] + c[4 * p + 3]) / all(c, p);
    }
}
