package org.varwright.transients;

import java.util.ArrayList;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * A circuit with given branches closed, as one linear system without input: {@code z' = M·z}.
 *
 * <p>{@code z} holds the voltage of every capacitor, the cosine and sine of the clock, a one, and the loop currents. With {@code T} the loops (one column
 * each): {@code (TᵀLT)·j' = −(TᵀRT)·j + Tᵀ(e − u)} and {@code C·u' = T·j} (SWI-10).
 */
final class Topology {
    private final SwitchedCircuit circuit;
    private final Loops loops;
    private final List<Integer> capacitors = new ArrayList<>();
    private final int[] slot;
    private final int size;
    private final DMatrixRMaj inductance;
    private final DMatrixRMaj matrix;
    private final double[][] nodeRows;

    /**
     * The system.
     *
     * @param held potential of each node that is cut off from ground and is the first of its island [V]
     */
    Topology(SwitchedCircuit circuit, boolean[] closed, double[] held) {
        this.circuit = circuit;
        loops = new Loops(circuit, closed);
        slot = new int[circuit.branches().size()];
        for (int b = 0; b < slot.length; b++) {
            if (circuit.branches().get(b).farads().isPresent()) {
                slot[b] = capacitors.size();
                capacitors.add(b);
            } else {
                slot[b] = -1;
            }
        }
        int loopCount = loops.links().size();
        size = capacitors.size() + 3 + loopCount;
        inductance = new DMatrixRMaj(loopCount, loopCount);
        matrix = new DMatrixRMaj(size, size);
        fill();
        nodeRows = nodes(held);
    }

    int size() {
        return size;
    }

    DMatrixRMaj matrix() {
        return matrix;
    }

    DMatrixRMaj inductance() {
        return inductance;
    }

    int cosine() {
        return capacitors.size();
    }

    int sine() {
        return capacitors.size() + 1;
    }

    int one() {
        return capacitors.size() + 2;
    }

    int firstLoop() {
        return capacitors.size() + 3;
    }

    int loopCount() {
        return loops.links().size();
    }

    List<Integer> links() {
        return loops.links();
    }

    /** Branches with a capacitor, in the order of the state. */
    List<Integer> capacitors() {
        return capacitors;
    }

    double[] loopsOf(int branch) {
        return loops.of(branch);
    }

    /** Whether any loop runs through a branch. */
    boolean carries(int branch) {
        for (double share : loops.of(branch)) {
            if (share != 0.0) {
                return true;
            }
        }
        return false;
    }

    /** Row that gives the current of a branch. */
    double[] amperes(int branch) {
        double[] row = new double[size];
        System.arraycopy(loops.of(branch), 0, row, firstLoop(), loopCount());
        return row;
    }

    /** Row that gives the derivative of what another row gives. */
    double[] derivative(double[] row) {
        double[] out = new double[size];
        for (int r = 0; r < size; r++) {
            for (int c = 0; c < size && row[r] != 0.0; c++) {
                out[c] += row[r] * matrix.get(r, c);
            }
        }
        return out;
    }

    double[] nodeVolts(int node) {
        return nodeRows[node].clone();
    }

    double[] row(Probe probe) {
        double[] row = new double[size];
        for (Probe.Term term : probe.terms()) {
            switch (term.kind()) {
                case AMPERES -> add(row, amperes(term.index()), term.factor());
                case CAPACITOR_VOLTS -> row[slot[term.index()]] += term.factor();
                case NODE_VOLTS -> add(row, nodeRows[term.index()], term.factor());
            }
        }
        return row;
    }

    private void fill() {
        List<Branch> branches = circuit.branches();
        int loopCount = loopCount();
        double omega = circuit.radiansPerSecond();
        matrix.set(cosine(), sine(), -omega);
        matrix.set(sine(), cosine(), omega);
        DMatrixRMaj right = new DMatrixRMaj(loopCount, size);
        for (int b = 0; b < branches.size(); b++) {
            Branch branch = branches.get(b);
            double[] share = loops.of(b);
            for (int k = 0; k < loopCount; k++) {
                if (share[k] == 0.0) {
                    continue;
                }
                for (int l = 0; l < loopCount; l++) {
                    inductance.add(k, l, share[k] * branch.henries() * share[l]);
                    right.add(k, firstLoop() + l, -share[k] * branch.ohms() * share[l]);
                }
                if (slot[b] >= 0) {
                    right.add(k, slot[b], -share[k]);
                    matrix.set(
                            slot[b], firstLoop() + k, share[k] / branch.farads().orElseThrow());
                }
                emf(branch, share[k], right, k);
            }
        }
        if (loopCount == 0) {
            return;
        }
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.chol(loopCount);
        if (!solver.setA(inductance.copy())) {
            throw new IllegalArgumentException("a loop of the circuit holds no inductance");
        }
        DMatrixRMaj slopes = new DMatrixRMaj(loopCount, size);
        solver.solve(right, slopes);
        CommonOps_DDRM.insert(slopes, matrix, firstLoop(), 0);
    }

    private void emf(Branch branch, double share, DMatrixRMaj right, int loop) {
        branch.emf().ifPresent(e -> {
            double ahead = Math.toRadians(e.degrees());
            right.add(loop, sine(), share * e.peakVolts() * Math.cos(ahead));
            right.add(loop, cosine(), share * e.peakVolts() * Math.sin(ahead));
        });
    }

    private double[][] nodes(double[] held) {
        double[][] rows = new double[circuit.nodes()][size];
        for (int node : loops.nodesInOrder()) {
            int up = loops.parent(node);
            if (up == node) {
                rows[node][one()] = node == 0 ? 0.0 : held[node];
                continue;
            }
            int b = loops.parentBranch(node);
            Branch branch = circuit.branches().get(b);
            double sign = branch.from() == up ? -1.0 : 1.0;
            rows[node] = rows[up].clone();
            double[] current = amperes(b);
            add(rows[node], current, sign * branch.ohms());
            add(rows[node], derivative(current), sign * branch.henries());
            if (slot[b] >= 0) {
                rows[node][slot[b]] += sign;
            }
            branch.emf().ifPresent(e -> {
                double ahead = Math.toRadians(e.degrees());
                rows[node][sine()] -= sign * e.peakVolts() * Math.cos(ahead);
                rows[node][cosine()] -= sign * e.peakVolts() * Math.sin(ahead);
            });
        }
        return rows;
    }

    private static void add(double[] to, double[] what, double factor) {
        for (int i = 0; i < to.length; i++) {
            to[i] += factor * what[i];
        }
    }
}
