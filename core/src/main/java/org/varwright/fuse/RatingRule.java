package org.varwright.fuse;

import java.util.OptionalDouble;
import org.varwright.bank.Connection;
import org.varwright.bank.Standard;
import org.varwright.basis.Source;

/**
 * How many times the current of service a fuse must carry for good (FUS-5).
 *
 * @param least multiple of the current that it must carry
 * @param most multiple above which it is larger than it need be and slower; empty where the rule names none
 * @param source where the rule comes from
 */
public record RatingRule(double least, OptionalDouble most, Source source) {
    /** Closer to the limit than this, a fuse stands exactly at the edge: 0.1 %, which is less than anyone measures a current. */
    public static final double EDGE = 1e-3;

    private static final Source IEEE_UNIT = Source.published(
            "IEEE Std 18: 135 % of rated rms current, continuous; the fuse must carry what the unit may");
    private static final Source IEC_UNIT = Source.published("GB 50053-2013 §5.2.4: 1.37 to 1.50 times unit current");
    private static final Source LINE = Source.published(
            "IEEE Std C37.48, range 1.25 to 1.35: 1.25 times for an ungrounded wye, 1.35 times otherwise");
    private static final Source IEC_LINE = Source.unchecked("IEC 60871-1: 1.30 I_N, and capacitance up to +10 %");

    /** The rule for a fuse in series with one unit. */
    static RatingRule unit(Standard standard) {
        return switch (standard) {
            case IEEE -> new RatingRule(1.35, OptionalDouble.empty(), IEEE_UNIT);
            case IEC -> new RatingRule(1.37, OptionalDouble.of(1.50), IEC_UNIT);
        };
    }

    /** The rule for a fuse in one line of a stage. */
    static RatingRule line(Standard standard, Connection connection) {
        return switch (standard) {
            case IEEE -> new RatingRule(connection.hasFloatingNeutral() ? 1.25 : 1.35, OptionalDouble.empty(), LINE);
            case IEC -> new RatingRule(1.43, OptionalDouble.empty(), IEC_LINE);
        };
    }

    /** Whether a fuse that carries so much stands at the edge of what it must carry. */
    static boolean isAtEdge(double carriesAmperes, double neededAmperes) {
        return Math.abs(carriesAmperes / neededAmperes - 1.0) <= EDGE;
    }
}
