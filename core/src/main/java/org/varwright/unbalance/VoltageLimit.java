package org.varwright.unbalance;

import org.varwright.bank.Standard;
import org.varwright.basis.Source;

/**
 * The highest voltage that a unit bears for good, as a multiple of rated.
 *
 * @param multiple of rated
 * @param source the standard
 */
public record VoltageLimit(double multiple, Source source) {
    /** The continuous limit of a standard. */
    public static VoltageLimit of(Standard standard) {
        return switch (standard) {
            case IEEE -> new VoltageLimit(1.10, Source.published("IEEE Std 18: 110 % of rated rms voltage"));
            case IEC -> new VoltageLimit(1.10, Source.unchecked("IEC 60871-1: 1.10 U_N, 12 h in 24 h"));
        };
    }

    /** Whether a multiple keeps the limit; at the limit, to rounding, it does. */
    public boolean holds(double value) {
        return value <= multiple * (1.0 + 1e-9);
    }
}
