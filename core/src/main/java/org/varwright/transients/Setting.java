package org.varwright.transients;

import java.util.List;

/**
 * Where a run starts: settled with some branches open.
 *
 * @param circuit the circuit
 * @param open branches that are open at the start
 * @param capacitorVolts voltage that each branch's capacitor holds beyond the settled state, one a branch [V]: what was trapped; 0 elsewhere
 */
public record Setting(SwitchedCircuit circuit, List<Integer> open, List<Double> capacitorVolts) {
    public Setting {
        open = List.copyOf(open);
        capacitorVolts = List.copyOf(capacitorVolts);
    }

    /** Nothing trapped. */
    public static Setting discharged(SwitchedCircuit circuit, List<Integer> open) {
        return new Setting(
                circuit, open, circuit.branches().stream().map(b -> 0.0).toList());
    }

    /** Trapped voltages in the order of a topology's state. */
    double[] trapped(Topology topology) {
        double[] z = new double[topology.size()];
        for (int i = 0; i < topology.capacitors().size(); i++) {
            z[i] = capacitorVolts.get(topology.capacitors().get(i));
        }
        z[topology.one()] = 1.0;
        return z;
    }
}
