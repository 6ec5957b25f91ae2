package org.varwright.survey;

import java.util.List;
import org.varwright.bank.InternalConnection;

/**
 * Leg capacitances of a three-phase unit from three readings at its terminals.
 *
 * @param first leg AB of a delta, leg A of a wye [F]
 * @param second leg BC, or B [F]
 * @param third leg CA, or C [F]
 */
record ThreeTerminal(double first, double second, double third) {
    /**
     * Solves three readings of one kind for the three legs.
     *
     * <p><b>Model.</b> Third terminal open: with elastances {@code 1/M_AB = S_A + S_B} and so on, {@code S_A = (1/M_AB + 1/M_CA − 1/M_BC)/2}; wye
     * {@code C_A = 1/S_A}; delta {@code C_AB = S_C/(S_A·S_B + S_B·S_C + S_C·S_A)} (SRV-5). One terminal against the other two joined: {@code M_A = C_AB + C_CA} and
     * so on, {@code C_AB = (M_A + M_B − M_C)/2}; wye {@code C_A = (C_AB·C_BC + C_BC·C_CA + C_CA·C_AB)/C_BC}. To neutral: the legs themselves.
     * <p><b>Not modelled.</b> Capacitance to the case.
     * <p><b>Source.</b> First principles (wye and delta transform).
     *
     * @param inside how the unit is joined
     * @param kind of the three readings
     * @param m of AB, A against the rest, or A to neutral [F], above 0; likewise the other two
     */
    static ThreeTerminal of(InternalConnection inside, Terminals.Kind kind, double... m) {
        return switch (kind) {
            case THIRD_OPEN -> of(inside, m[0], m[1], m[2]);
            case REST_JOINED -> {
                double ab = (m[0] + m[1] - m[2]) / 2.0;
                double bc = (m[1] + m[2] - m[0]) / 2.0;
                double ca = (m[2] + m[0] - m[1]) / 2.0;
                double pairs = ab * bc + bc * ca + ca * ab;
                yield switch (inside) {
                    case DELTA -> new ThreeTerminal(ab, bc, ca);
                    case WYE_UNGROUNDED -> new ThreeTerminal(pairs / bc, pairs / ca, pairs / ab);
                };
            }
            case TO_NEUTRAL -> new ThreeTerminal(m[0], m[1], m[2]);
        };
    }

    static ThreeTerminal of(InternalConnection inside, double ab, double bc, double ca) {
        double a = (1.0 / ab + 1.0 / ca - 1.0 / bc) / 2.0;
        double b = (1.0 / ab + 1.0 / bc - 1.0 / ca) / 2.0;
        double c = (1.0 / bc + 1.0 / ca - 1.0 / ab) / 2.0;
        return switch (inside) {
            case WYE_UNGROUNDED -> new ThreeTerminal(1.0 / a, 1.0 / b, 1.0 / c);
            case DELTA -> {
                double sum = a * b + b * c + c * a;
                yield new ThreeTerminal(c / sum, a / sum, b / sum);
            }
        };
    }

    /** The legs in order [F]. */
    List<Double> legs() {
        return List.of(first, second, third);
    }

    /** Names of the legs in order. */
    static List<String> names(InternalConnection inside) {
        return switch (inside) {
            case DELTA -> List.of("AB", "BC", "CA");
            case WYE_UNGROUNDED -> List.of("A", "B", "C");
        };
    }

    /** What one reading of a unit with equal legs gives, as a multiple of one leg. */
    static double factor(InternalConnection inside, Terminals.Kind kind) {
        return switch (kind) {
            case THIRD_OPEN -> pairFactor(inside);
            case REST_JOINED ->
                switch (inside) {
                    case WYE_UNGROUNDED -> 2.0 / 3.0;
                    case DELTA -> 2.0;
                };
            case TO_NEUTRAL -> 1.0;
        };
    }

    /** What two terminals of a unit with equal legs read, third open, as a multiple of one leg. */
    static double pairFactor(InternalConnection inside) {
        return switch (inside) {
            case WYE_UNGROUNDED -> 0.5;
            case DELTA -> 1.5;
        };
    }
}
