package org.varwright.switching;

import java.util.List;
import org.varwright.bank.Connection;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Capacitances;
import org.varwright.network.UnitBranch;

/**
 * A stage as three capacitances to a star point, the same at its terminals (SWI-3).
 *
 * <p>Two wyes in parallel add up; a bridge is two pairs in series; a delta with {@code C_AB, C_BC, C_CA} is a star with
 * {@code C_A = C_AB + C_CA + C_AB·C_CA/C_BC}; star points of single cans are turned into deltas, added up and turned back.
 *
 * @param a phase A [F]
 * @param b phase B [F]
 * @param c phase C [F]
 */
record StarFarads(double a, double b, double c) {
    static StarFarads of(Stage stage, LegFarads legs, Capacitances capacitances) {
        if (stage.unit()
                .threePhase()
                .filter(i -> i == InternalConnection.WYE_UNGROUNDED)
                .isPresent()) {
            return cans(stage, capacitances);
        }
        return switch (stage.connection()) {
            case WYE_GROUNDED, WYE_UNGROUNDED -> new StarFarads(legs.of("A"), legs.of("B"), legs.of("C"));
            case DELTA -> ofDelta(legs.of("AB"), legs.of("BC"), legs.of("CA"));
            case DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED ->
                new StarFarads(
                        legs.of("A1") + legs.of("A2"), legs.of("B1") + legs.of("B2"), legs.of("C1") + legs.of("C2"));
            case BRIDGE_GROUNDED, BRIDGE_UNGROUNDED ->
                new StarFarads(bridge(legs, "A"), bridge(legs, "B"), bridge(legs, "C"));
        };
    }

    double of(int phase) {
        return List.of(a, b, c).get(phase);
    }

    double largest() {
        return Math.max(a, Math.max(b, c));
    }

    static StarFarads ofDelta(double ab, double bc, double ca) {
        return new StarFarads(ab + ca + ab * ca / bc, ab + bc + ab * bc / ca, bc + ca + bc * ca / ab);
    }

    /** Whether the star stands for something that is not one: its star point exists only on paper. */
    static boolean isOnPaper(Stage stage) {
        return stage.hasThreePhaseUnits() || stage.connection() == Connection.DELTA;
    }

    private static double bridge(LegFarads legs, String phase) {
        double upper = legs.of(phase + "-ul") + legs.of(phase + "-ur");
        double lower = legs.of(phase + "-ll") + legs.of(phase + "-lr");
        return upper * lower / (upper + lower);
    }

    private static StarFarads cans(Stage stage, Capacitances capacitances) {
        double[] delta = new double[3];
        for (UnitPosition can : stage.positions()) {
            double[] c = new double[3];
            double sum = 0.0;
            for (int p = 0; p < 3; p++) {
                c[p] = capacitances.farads(new UnitBranch(can, stage.legs().get(p)));
                sum += c[p];
            }
            for (int p = 0; p < 3; p++) {
                delta[p] += c[p] * c[(p + 1) % 3] / sum;
            }
        }
        return ofDelta(delta[0], delta[1], delta[2]);
    }
}
