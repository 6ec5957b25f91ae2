package org.varwright.transients;

/**
 * Length of a step.
 *
 * <p>A step is exact whatever its length; it is short so that no peak between two steps is missed. Opening a branch is a constraint and can only lower
 * the highest natural frequency, so that of the circuit with everything closed bounds all.
 */
final class Pace {
    /** Steps in the fastest natural oscillation. */
    private static final double PER_OSCILLATION = 32.0;

    /** Steps in a cycle of the source at least. */
    private static final double PER_CYCLE = 200.0;

    private Pace() {}

    static double seconds(SwitchedCircuit circuit) {
        Topology all = new Topology(circuit, circuit.allClosed(), new double[circuit.nodes()]);
        double fastest = new Modes(circuit, all).highestRadians();
        double step = 2.0 * Math.PI / (circuit.radiansPerSecond() * PER_CYCLE);
        return fastest > 0.0 ? Math.min(step, 2.0 * Math.PI / (fastest * PER_OSCILLATION)) : step;
    }
}
