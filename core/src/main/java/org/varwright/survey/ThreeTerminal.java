package org.varwright.survey;

import org.varwright.bank.InternalConnection;

/**
 * Leg capacitances of a three-phase unit from readings between two terminals with the third open.
 *
 * @param first leg AB of a delta, leg A of a wye [F]
 * @param second leg BC, or B [F]
 * @param third leg CA, or C [F]
 */
record ThreeTerminal(double first, double second, double third) {
    /**
     * Solves three readings for the three legs.
     *
     * <p><b>Model.</b> With elastances {@code 1/M_AB = S_A + S_B} and so on, {@code S_A = (1/M_AB + 1/M_CA − 1/M_BC)/2}; wye {@code C_A = 1/S_A}; delta
     * {@code C_AB = S_C/(S_A·S_B + S_B·S_C + S_C·S_A)} (SRV-5).
     * <p><b>Not modelled.</b> Capacitance to the case.
     * <p><b>Source.</b> First principles (wye and delta transform).
     *
     * @param inside how the unit is joined
     * @param ab reading between A and B, C open [F], above 0
     * @param bc likewise [F]
     * @param ca likewise [F]
     */
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

    /** The leg that goes with a pair of terminals: AB first, BC second, CA third [F]. */
    double of(Terminals terminals) {
        return switch (terminals) {
            case AB -> first;
            case BC -> second;
            case CA -> third;
        };
    }

    /** Name of the leg that goes with a pair of terminals. */
    static String leg(InternalConnection inside, Terminals terminals) {
        return switch (inside) {
            case DELTA -> terminals.name();
            case WYE_UNGROUNDED -> terminals.name().substring(0, 1);
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
