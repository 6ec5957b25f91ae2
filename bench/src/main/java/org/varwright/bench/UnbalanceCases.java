package org.varwright.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.network.Banks;
import org.varwright.network.Capacitances;
import org.varwright.network.Failure;
import org.varwright.network.Fault;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;
import org.varwright.network.Sweep;
import org.varwright.quantity.Complex;

/** An ungrounded double wye, four groups a leg, and what fails in it. */
record UnbalanceCases(Bank bank, Supply supply, Capacitances capacitances) {
    /** With so many units in parallel in every group, all of different capacitance: 24 times as many in all. */
    static UnbalanceCases ofUnits(int parallel) {
        Bank bank = Banks.plan(Connection.DOUBLE_WYE_UNGROUNDED, 1, 4, parallel)
                .sensing(Banks.sensor(Protection.Senses.NEUTRAL_CURRENT, 100.0, 5.0))
                .bank();
        return new UnbalanceCases(bank, Supply.nominal(bank.system()), Banks.scattered(bank, new Random(288), 0.05));
    }

    int units() {
        return bank.positions().size();
    }

    /** Builds and factors the network, and takes its first unit out. */
    Double solveOne() {
        Network network = network();
        return solved(network.solve(
                        List.of(new Failure.UnitOut(network.branches().getFirst()))))
                .highestUnitPerRated();
    }

    Network network() {
        return Network.of(bank, bank.stages().getFirst(), capacitances, supply);
    }

    /** Everything from the bank on; what comes back depends on every case. */
    Double sweepEverything() {
        Network network = network();
        Sweep sweep = network.sweep().orElseThrow();
        List<Fault> faults = new ArrayList<>();
        network.branches().forEach(b -> faults.add(sweep.fault(List.of(new Failure.UnitOut(b)))));
        double sum = 0.0;
        for (int i = 0; i < faults.size(); i++) {
            sum += sweep.set(faults.get(i)) ? read(sweep) : 0.0;
            for (int j = i + 1; j < faults.size(); j++) {
                sum += sweep.set(faults.get(i), faults.get(j)) ? read(sweep) : 0.0;
            }
        }
        return sum;
    }

    private static double read(Sweep sweep) {
        Complex neutral = sweep.sensor(0);
        return neutral.re() + neutral.im() + sweep.highestUnitPerRated();
    }

    Double solveSingles() {
        Network network = network();
        double sum = 0.0;
        for (var branch : network.branches()) {
            sum += solved(network.solve(List.of(new Failure.UnitOut(branch)))).highestUnitPerRated();
        }
        return sum;
    }

    static Solution.Solved solved(Solution solution) {
        return switch (solution) {
            case Solution.Solved s -> s;
            case Solution.Singular s -> throw new IllegalStateException(s.reason());
        };
    }
}
