package org.varwright.bench;

import java.util.List;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.varwright.network.Failure;
import org.varwright.network.Fault;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Sweep;

/** The solver of an ungrounded double wye, four groups a leg. */
@State(Scope.Benchmark)
public class NetworkKernel {
    @Param({"48", "192", "768"})
    public int units;

    private UnbalanceCases cases = UnbalanceCases.ofUnits(1);
    private Network network = cases.network();
    private Sweep sweep = network.sweep().orElseThrow();
    private List<Failure> out = List.of();
    private Fault first = sweep.fault(out);
    private Fault second = first;

    @Setup
    public void build() {
        cases = UnbalanceCases.ofUnits(units / 24);
        network = cases.network();
        sweep = network.sweep().orElseThrow();
        out = List.of(new Failure.UnitOut(network.branches().getFirst()));
        first = sweep.fault(out);
        second = sweep.fault(List.of(new Failure.UnitOut(network.branches().getLast())));
    }

    /** From the bank to every voltage and current with nothing failed. */
    @Benchmark
    public Solution factorAndSolve() {
        return cases.network().healthy();
    }

    /** One unit out: every voltage and current, from the factors of the healthy bank. */
    @Benchmark
    public Solution solveOneOut() {
        return network.solve(out);
    }

    /** Two units out: the sensor and the highest voltage. */
    @Benchmark
    public double sweepTwoOut() {
        return sweep.set(first, second) ? sweep.sensor(0).re() + sweep.highestUnitPerRated() : 0.0;
    }
}
