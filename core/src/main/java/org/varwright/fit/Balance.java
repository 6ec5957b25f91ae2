package org.varwright.fit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Capacitances;
import org.varwright.network.Failure;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;
import org.varwright.network.UnitBranch;
import org.varwright.quantity.Complex;

/**
 * Legs and sensors of a bank with its units as they are, at nominal voltage, from the network.
 *
 * @param sensors what each sensor reads
 * @param legs every leg of every stage
 * @param highestUnitVoltagePerRated highest voltage on any unit over its rated voltage, at the highest voltage of the system
 * @param highestUnit where that is; empty where no unit is in service
 * @param unsolved stages for which the network has no unique solution, with the reason
 */
public record Balance(
        List<SensorReading> sensors,
        List<LegReading> legs,
        double highestUnitVoltagePerRated,
        Optional<UnitPosition> highestUnit,
        List<String> unsolved) {
    public Balance {
        sensors = List.copyOf(sensors);
        legs = List.copyOf(legs);
        unsolved = List.copyOf(unsolved);
    }

    /**
     * A sensor's reading at nominal voltage.
     *
     * @param name such as {@code rack neutral-current}
     * @param stage name of the stage
     * @param senses what it measures
     * @param primary phasor [V] or [A]
     * @param secondary at the relay; empty where the file gives no ratio
     * @param alarmPrimary setting as a primary value; empty where none is set
     */
    public record SensorReading(
            String name,
            String stage,
            Protection.Senses senses,
            Complex primary,
            Optional<Complex> secondary,
            OptionalDouble alarmPrimary) {}

    /**
     * A leg.
     *
     * @param stage name of the stage
     * @param leg name of the leg
     * @param capacitanceFarads [F]
     * @param deviation from the mean of the stage's legs, as a part of one
     * @param amperes at nominal voltage [A]
     */
    public record LegReading(String stage, String leg, double capacitanceFarads, double deviation, double amperes) {}

    static Balance of(Bank bank, Arrangement arrangement) {
        Capacitances all = capacitances(bank, arrangement);
        List<SensorReading> sensors = new ArrayList<>();
        List<LegReading> legs = new ArrayList<>();
        List<String> unsolved = new ArrayList<>();
        double highest = 0.0;
        Optional<UnitPosition> where = Optional.empty();
        double rise = bank.system().maximumVolts().orElse(bank.system().nominalVolts())
                / bank.system().nominalVolts();
        for (Stage stage : bank.stages()) {
            Network network = Network.of(bank, stage, all, Supply.nominal(bank.system()));
            List<Failure> out = network.branches().stream()
                    .filter(b -> arrangement.farads(b.at()) <= 0.0)
                    .map(Balance::out)
                    .toList();
            switch (network.solve(out)) {
                case Solution.Singular s -> unsolved.add(stage.name() + ": " + s.reason());
                case Solution.Solved s -> {
                    legs.addAll(legs(bank, stage, arrangement, s));
                    for (Solution.SensorValue sensor : s.sensors()) {
                        sensors.add(new SensorReading(
                                sensor.name(),
                                sensor.stage(),
                                sensor.senses(),
                                sensor.primary(),
                                sensor.secondary(),
                                alarm(bank, sensor)));
                    }
                    for (Solution.UnitValue unit : s.units()) {
                        if (unit.inService() && unit.voltsPerRated() * rise > highest + 1e-12) {
                            highest = unit.voltsPerRated() * rise;
                            where = Optional.of(unit.unit().at());
                        }
                    }
                }
            }
        }
        return new Balance(sensors, legs, highest, where, unsolved);
    }

    private static Failure out(UnitBranch branch) {
        return new Failure.UnitOut(branch);
    }

    /** Positions without capacitance get the nameplate's here and are taken out as failures. */
    private static Capacitances capacitances(Bank bank, Arrangement arrangement) {
        Map<UnitPosition, Double> farads = new HashMap<>();
        arrangement.contents().forEach((position, content) -> {
            if (content.farads() > 0.0) {
                farads.put(position, content.farads());
            }
        });
        return Capacitances.nameplate(bank).with(farads);
    }

    private static List<LegReading> legs(Bank bank, Stage stage, Arrangement arrangement, Solution.Solved solved) {
        StageModel model = StageModel.of(bank, stage);
        double[] sums = new double[model.groupCount];
        for (UnitPosition position : stage.positions()) {
            sums[model.groupOf(position)] += arrangement.farads(position);
        }
        double[] farads = new StageState(model, sums).legs;
        double mean = 0.0;
        for (double c : farads) {
            mean += c / farads.length;
        }
        List<LegReading> legs = new ArrayList<>();
        for (int l = 0; l < farads.length; l++) {
            String name = stage.legs().get(l);
            legs.add(new LegReading(
                    stage.name(),
                    name,
                    farads[l],
                    mean > 0.0 ? farads[l] / mean - 1.0 : 0.0,
                    solved.leg(stage.name(), name).orElseThrow().amperes().magnitude()));
        }
        return legs;
    }

    private static OptionalDouble alarm(Bank bank, Solution.SensorValue sensor) {
        for (Protection p : bank.protection()) {
            if (p.stage().equals(sensor.stage()) && p.senses() == sensor.senses()) {
                return alarmPrimary(p);
            }
        }
        return OptionalDouble.empty();
    }

    /** The alarm as a primary value [V] or [A]; empty where none is set, or where a secondary setting has no ratio. */
    static OptionalDouble alarmPrimary(Protection protection) {
        if (protection.alarm().isEmpty()) {
            return OptionalDouble.empty();
        }
        double set = protection.alarm().getAsDouble();
        if (protection.settingsArePrimary()) {
            return OptionalDouble.of(set);
        }
        return protection.ratio().isPresent()
                ? OptionalDouble.of(set / protection.ratio().get().factor())
                : OptionalDouble.empty();
    }
}
