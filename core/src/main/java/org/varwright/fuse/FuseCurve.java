package org.varwright.fuse;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.varwright.basis.Source;

/** When a fuse melts and has cleared, as far as that is known. */
public sealed interface FuseCurve {
    /** Cycles of the supply that the arc burns at most after the element has melted. */
    double ARC_CYCLES = 1.0;

    Source ARC_SOURCE = Source.commonPractice("arcing at most one cycle after the last link has melted");

    /**
     * By the table of a standard link.
     *
     * @param link the link
     * @param hertz of the supply [Hz]
     * @param melting least I²t that melts it by its maker, for times shorter than the table's [A²s]
     */
    record OfLink(Link link, double hertz, OptionalDouble melting) implements FuseCurve {}

    /**
     * By the fuse's I²t alone, which is a constant up to {@link #ADIABATIC_SECONDS}.
     *
     * @param melting least I²t that melts it [A²s]
     * @param clearing most I²t that it lets through [A²s]
     */
    record OfI2t(OptionalDouble melting, OptionalDouble clearing) implements FuseCurve {
        /** Longest time for which a melting I²t is a constant. */
        public static final double ADIABATIC_SECONDS = 0.01;
    }

    /**
     * Nothing is known.
     *
     * @param reason in words
     */
    record NotKnown(String reason) implements FuseCurve {}

    /**
     * Melting time of the quickest link by the table, between its points (FUS-2).
     *
     * <p><b>Model.</b> {@code ln t} linear in {@code ln I} between the table's points. Beyond the shortest time at most {@code t·(I_t/I)²}: less heat is
     * lost in less time, so the I²t to melt can't grow.
     * <p><b>Not modelled.</b> Preload, ambient temperature, age. <b>Accuracy.</b> A true curve bends below the straight line between two points: use
     * {@link #earliest} where early melting does harm.
     * <p><b>Source.</b> Log-log interpolation: common practice; the bound: first principles.
     *
     * @param amperes rms current, above 0 [A]
     */
    default FuseTime melting(double amperes) {
        return switch (this) {
            case OfLink curve -> between(curve.link().points(), Link.Point::leastAmperes, amperes);
            case OfI2t curve -> {
                FuseTime least = leastByI2t(curve.melting(), amperes);
                yield least.isKnown() && least.seconds() <= OfI2t.ADIABATIC_SECONDS
                        ? FuseTime.about(least.seconds())
                        : least;
            }
            case NotKnown none -> FuseTime.NOT_KNOWN;
        };
    }

    /** Melting time of the slowest link by the table, likewise (FUS-2). */
    default FuseTime latestMelting(double amperes) {
        return switch (this) {
            case OfLink curve -> between(curve.link().points(), Link.Point::mostAmperes, amperes);
            case OfI2t curve -> FuseTime.NOT_KNOWN;
            case NotKnown none -> FuseTime.NOT_KNOWN;
        };
    }

    /**
     * Time before which no link of this rating melts (FUS-3).
     *
     * <p><b>Model.</b> {@code t ≥ t2·(I2/I)²} from the table's next shorter point {@code (I2, t2)}, because the I²t to melt can't be less in a longer time.
     * Beyond the shortest point, and where there is no table, {@code t ≥ melting-i2t/I²} from the bank file.
     * <p><b>Source.</b> First principles: heat lost only adds.
     */
    default FuseTime earliest(double amperes) {
        return switch (this) {
            case OfLink curve -> {
                FuseTime least = earliest(curve.link().points(), amperes);
                yield least.isKnown() ? least : leastByI2t(curve.melting(), amperes);
            }
            case OfI2t curve -> leastByI2t(curve.melting(), amperes);
            case NotKnown none -> FuseTime.NOT_KNOWN;
        };
    }

    /**
     * Time at which the current has surely ceased (FUS-4): the slowest link's melting time and one cycle of arcing; where only I²t is known,
     * {@code clearing-i2t/I²}.
     */
    default FuseTime clearing(double amperes) {
        return switch (this) {
            case OfLink curve -> latestMelting(amperes).plus(ARC_CYCLES / curve.hertz());
            case OfI2t curve -> {
                FuseTime most = leastByI2t(curve.clearing(), amperes);
                yield most.isKnown() && most.seconds() <= OfI2t.ADIABATIC_SECONDS
                        ? FuseTime.atMost(most.seconds())
                        : FuseTime.NOT_KNOWN;
            }
            case NotKnown none -> FuseTime.NOT_KNOWN;
        };
    }

    private static FuseTime between(List<Link.Point> points, ToDoubleFunction<Link.Point> current, double amperes) {
        Link.Point longest = points.getFirst();
        if (amperes < current.applyAsDouble(longest)) {
            return FuseTime.longerOrNever(longest.seconds());
        }
        for (int i = 1; i < points.size(); i++) {
            Link.Point slow = points.get(i - 1);
            Link.Point fast = points.get(i);
            double high = current.applyAsDouble(fast);
            if (amperes <= high) {
                double low = current.applyAsDouble(slow);
                double part = Math.log(amperes / low) / Math.log(high / low);
                return FuseTime.about(slow.seconds() * Math.pow(fast.seconds() / slow.seconds(), part));
            }
        }
        Link.Point last = points.getLast();
        double ratio = current.applyAsDouble(last) / amperes;
        return FuseTime.atMost(last.seconds() * ratio * ratio);
    }

    private static FuseTime earliest(List<Link.Point> points, double amperes) {
        for (Link.Point point : points) {
            if (amperes <= point.leastAmperes()) {
                double ratio = point.leastAmperes() / amperes;
                return FuseTime.atLeast(point.seconds() * ratio * ratio);
            }
        }
        return FuseTime.NOT_KNOWN;
    }

    private static FuseTime leastByI2t(OptionalDouble i2t, double amperes) {
        return i2t.isPresent() ? FuseTime.atLeast(i2t.getAsDouble() / (amperes * amperes)) : FuseTime.NOT_KNOWN;
    }
}
