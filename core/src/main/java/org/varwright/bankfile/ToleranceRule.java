package org.varwright.bankfile;

import org.varwright.bank.Standard;
import org.varwright.bank.Tolerance;
import org.varwright.basis.Source;

/**
 * How far a standard lets the capacitance of a new unit be off; an old or special one may have another by its purchase specification.
 *
 * @param low lowest deviation, as a part of rated
 * @param high highest deviation
 * @param source standard and edition
 */
record ToleranceRule(double low, double high, Source source) {
    static ToleranceRule of(Standard standard) {
        return switch (standard) {
            case IEEE ->
                new ToleranceRule(
                        0.0,
                        0.15,
                        Source.published(
                                "IEEE Std 18-1992: 0 to +15 %; from 2002 on 0 to +10 %, from memory, unchecked"));
            case IEC -> new ToleranceRule(-0.05, 0.15, Source.unchecked("IEC 60871-1:1997 and 2005, single units"));
        };
    }

    boolean holds(Tolerance tolerance) {
        return tolerance.low() >= low - 1e-9 && tolerance.high() <= high + 1e-9;
    }
}
