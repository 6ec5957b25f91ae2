package org.varwright.fuse;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Capacitances;
import org.varwright.network.Failure;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;
import org.varwright.network.UnitBranch;
import org.varwright.quantity.Complex;

/**
 * One unit a dead short with its fuse still whole, at nominal voltage, the stage alone on the bus (FUS-6).
 *
 * @param at the unit
 * @param unitAmperes through its fuse [A]
 * @param lineAmperes largest in any line of the stage [A]
 * @param healthyUnitAmperes through the same unit before [A]
 * @param healthyLineAmperes in its line before [A]
 * @param highestUnit the unit in service that bears most
 * @param highestPerRated its voltage over rated
 * @param sensors what the stage's unbalance sensors see
 * @param openVolts across the fuse once it has cleared and the shorted unit hangs behind it [V]; empty where its group has no other unit and floats
 * @param source whether the supply's impedance limits the current; otherwise the bus was taken as stiff
 */
public record FullShort(
        UnitPosition at,
        double unitAmperes,
        double lineAmperes,
        double healthyUnitAmperes,
        double healthyLineAmperes,
        UnitPosition highestUnit,
        double highestPerRated,
        List<Solution.SensorValue> sensors,
        Optional<Double> openVolts,
        boolean source) {
    public FullShort {
        sensors = List.copyOf(sensors);
    }

    /** What came of looking for the current of a full short. */
    public sealed interface Result {
        /** The current is known. */
        record Found(FullShort fault) implements Result {}

        /**
         * It isn't.
         *
         * @param missing in words
         */
        record NotKnown(String missing) implements Result {}
    }

    /**
     * Current and voltages with one unit shorted.
     *
     * <p><b>Model.</b> The phasor network by the nameplates with the unit's two terminals joined. An ungrounded wye with one group gives three times the phase's
     * current, whatever the supply; series groups less; a grounded wye or delta with one group what the supply gives.
     * <p><b>Not modelled.</b> Resistance of the short, the arc, motor contribution, the direct-current part.
     * <p><b>Source.</b> First principles; the network solver.
     */
    static Result of(Bank bank, Stage stage, UnitPosition at) {
        if (stage.connection().isGrounded()
                && stage.layoutOf(at.leg()).groups() == 1
                && bank.system().grounding() != SystemGrounding.SOLID) {
            return new Result.NotKnown("the ground-fault current of the system, whose neutral is not solidly "
                    + bank.words().grounded() + " (a bank file has no place for it)");
        }
        Optional<Supply> behind = source(bank.system());
        Network network =
                Network.of(bank, stage, Capacitances.nameplate(bank), behind.orElse(Supply.nominal(bank.system())));
        UnitBranch branch = network.branches().stream()
                .filter(b -> b.at().equals(at))
                .findFirst()
                .orElseThrow();
        if (!(network.healthy() instanceof Solution.Solved healthy)) {
            return new Result.NotKnown("the bank in good order has no solution: look at reactor and frequency");
        }
        if (!(network.solve(List.of(new Failure.UnitShorted(branch))) instanceof Solution.Solved shorted)) {
            return new Result.NotKnown("system.short-circuit");
        }
        Solution.UnitValue worst = shorted.units().stream()
                .filter(Solution.UnitValue::inService)
                .max(Comparator.comparingDouble(Solution.UnitValue::voltsPerRated))
                .orElse(shorted.units().getFirst());
        return new Result.Found(new FullShort(
                at,
                amperes(stage, shorted, branch),
                line(shorted),
                amperes(stage, healthy, branch),
                line(healthy),
                worst.unit().at(),
                worst.voltsPerRated(),
                shorted.sensors(),
                openVolts(network, branch),
                behind.isPresent()));
    }

    /** The supply behind its impedance; without X/R as a reactance alone. Empty where the short-circuit level is missing. */
    private static Optional<Supply> source(SupplySystem system) {
        return system.shortCircuitVoltAmperes().isPresent()
                ? Optional.of(new Supply.Thevenin(
                        system.nominalVolts(),
                        system.shortCircuitVoltAmperes().getAsDouble(),
                        system.xOverR().orElse(1e6)))
                : Optional.empty();
    }

    /** Through the unit's fuse; of a three-phase unit through the fuse in the line that carries most of that can's current. */
    private static double amperes(Stage stage, Solution.Solved solved, UnitBranch branch) {
        if (!stage.hasThreePhaseUnits()) {
            return solved.unit(branch).orElseThrow().amperes().magnitude();
        }
        List<Complex> legs = new ArrayList<>();
        for (Solution.UnitValue unit : solved.units()) {
            if (unit.unit().at().equals(branch.at())) {
                legs.add(unit.amperes());
            }
        }
        double most = 0.0;
        for (int l = 0; l < legs.size(); l++) {
            Complex line = stage.connection().hasFloatingNeutral()
                    ? legs.get(l)
                    : legs.get(l).minus(legs.get((l + legs.size() - 1) % legs.size()));
            most = Math.max(most, line.magnitude());
        }
        return most;
    }

    private static double line(Solution.Solved solved) {
        return solved.lines().stream()
                .mapToDouble(l -> l.amperes().magnitude())
                .max()
                .orElseThrow();
    }

    private static Optional<Double> openVolts(Network network, UnitBranch branch) {
        return network.solve(List.of(new Failure.UnitOut(branch))) instanceof Solution.Solved open
                ? open.unit(branch).map(u -> u.volts().magnitude())
                : Optional.empty();
    }
}
