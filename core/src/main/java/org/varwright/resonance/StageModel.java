package org.varwright.resonance;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Capacitances;
import org.varwright.network.UnitBranch;
import org.varwright.quantity.Complex;

/**
 * A stage as seen from the bus, one phase against the neutral.
 *
 * <p><b>Model.</b> Legs as they stand, a delta turned into a wye ({@code C = 3·C_leg}, {@code L = L_leg/3}), the mean of the three phases; reactors in
 * the line in series with all of it, reactors at the neutral in series with each wye (RES-3).
 * <p><b>Not modelled.</b> Differences between phases, losses of the capacitors, inductance of wiring (microhenries).
 * <p><b>Source.</b> First principles.
 *
 * @param stage which
 * @param branches in parallel, one or (reactors at the two neutrals of a double wye) two
 */
public record StageModel(Stage stage, List<SeriesBranch> branches) {
    public StageModel {
        branches = List.copyOf(branches);
    }

    /** The model of a stage with these capacitances. */
    public static StageModel of(Stage stage, Capacitances capacitances) {
        double henries = stage.reactor().map(Reactor::henries).orElse(0.0);
        double ohms = stage.reactor().map(r -> r.resistanceOhms().orElse(0.0)).orElse(0.0);
        boolean atNeutral = stage.reactor()
                .filter(r -> r.position() == Reactor.Position.NEUTRAL)
                .isPresent();
        List<Double> wyes = wyeFarads(stage, capacitances);
        List<SeriesBranch> branches = new ArrayList<>();
        if (atNeutral) {
            // Inside a delta the reactor is part of the leg, and the leg's impedance counts a third.
            double third = stage.connection() == Connection.DELTA ? 3.0 : 1.0;
            wyes.forEach(c -> branches.add(new SeriesBranch(c, henries / third, ohms / third)));
        } else {
            branches.add(new SeriesBranch(
                    wyes.stream().mapToDouble(Double::doubleValue).sum(), henries, ohms));
        }
        return new StageModel(stage, branches);
    }

    /** Models of all stages of a bank, in order, with the capacitances that the bank file knows. */
    public static List<StageModel> of(Bank bank) {
        Capacitances known = Capacitances.known(bank);
        return bank.stages().stream().map(s -> of(s, known)).toList();
    }

    /** Capacitance of one phase against the neutral, without reactors [F]. */
    public double farads() {
        return branches.stream().mapToDouble(SeriesBranch::farads).sum();
    }

    /** Admittance at an angular frequency [S]. */
    public Complex siemens(double omega) {
        Complex sum = Complex.ZERO;
        for (SeriesBranch branch : branches) {
            sum = sum.plus(Complex.ONE.dividedBy(branch.ohmsAt(omega)));
        }
        return sum;
    }

    /** Highest voltage across the capacitors of a branch over the voltage from bus to neutral. */
    public double capacitorShare(double omega) {
        return branches.stream().mapToDouble(b -> b.capacitorShare(omega)).max().orElseThrow();
    }

    /**
     * Reactive power that the stage gives a bus, three-phase [var].
     *
     * @param lineVolts line to line [V]
     * @param omega angular frequency [rad/s]
     */
    public double vars(double lineVolts, double omega) {
        return lineVolts * lineVolts * siemens(omega).im();
    }

    /** The same stage with the capacitance of every phase multiplied. */
    public StageModel scaled(double factor) {
        return new StageModel(
                stage, branches.stream().map(b -> b.scaled(factor)).toList());
    }

    /** The same stage with the capacitance of one branch multiplied. */
    StageModel scaled(int branch, double factor) {
        List<SeriesBranch> changed = new ArrayList<>(branches);
        changed.set(branch, branches.get(branch).scaled(factor));
        return new StageModel(stage, changed);
    }

    /** Whether two stages are built alike: then either stands for the other. */
    public boolean isAlike(StageModel other) {
        Stage a = stage;
        Stage b = other.stage;
        return a.connection() == b.connection()
                && a.layout().equals(b.layout())
                && a.second().equals(b.second())
                && a.unit().equals(b.unit())
                && a.reactor().equals(b.reactor());
    }

    /** One value a wye [F]: the mean of its three phases. */
    private static List<Double> wyeFarads(Stage stage, Capacitances capacitances) {
        if (stage.hasThreePhaseUnits()) {
            return List.of(threePhaseUnits(stage, capacitances));
        }
        return switch (stage.connection()) {
            case WYE_GROUNDED, WYE_UNGROUNDED -> List.of(mean(stage, stage.legs(), capacitances));
            case DELTA -> List.of(3.0 * mean(stage, stage.legs(), capacitances));
            case DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED ->
                List.of(
                        mean(stage, stage.legs().subList(0, 3), capacitances),
                        mean(stage, stage.legs().subList(3, 6), capacitances));
            case BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> List.of(bridge(stage, capacitances));
        };
    }

    private static double threePhaseUnits(Stage stage, Capacitances capacitances) {
        double sum = 0.0;
        for (UnitPosition can : stage.positions()) {
            for (String leg : stage.legs()) {
                sum += capacitances.farads(new UnitBranch(can, leg)) / 3.0;
            }
        }
        boolean delta = stage.unit()
                .threePhase()
                .filter(c -> c == InternalConnection.DELTA)
                .isPresent();
        return delta ? 3.0 * sum : sum;
    }

    private static double bridge(Stage stage, Capacitances capacitances) {
        double sum = 0.0;
        for (int p = 0; p < 3; p++) {
            List<String> legs = stage.legs().subList(4 * p, 4 * p + 4);
            double upper = legFarads(stage, legs.get(0), capacitances) + legFarads(stage, legs.get(2), capacitances);
            double lower = legFarads(stage, legs.get(1), capacitances) + legFarads(stage, legs.get(3), capacitances);
            sum += upper * lower / (upper + lower) / 3.0;
        }
        return sum;
    }

    private static double mean(Stage stage, List<String> legs, Capacitances capacitances) {
        return legs.stream()
                .mapToDouble(leg -> legFarads(stage, leg, capacitances))
                .average()
                .orElseThrow();
    }

    /** Capacitance of one leg of single-phase units [F]. */
    static double legFarads(Stage stage, String leg, Capacitances capacitances) {
        LegLayout layout = stage.layoutOf(leg);
        double[][] groups = new double[layout.strings()][layout.groups()];
        for (UnitPosition position : stage.positions()) {
            if (position.leg().equals(leg)) {
                groups[position.string() - 1][position.group() - 1] += capacitances.farads(UnitBranch.of(position));
            }
        }
        double sum = 0.0;
        for (double[] string : groups) {
            double inverse = 0.0;
            for (double group : string) {
                inverse += 1.0 / group;
            }
            sum += 1.0 / inverse;
        }
        return sum;
    }
}
