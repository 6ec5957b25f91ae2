package org.varwright.discharge;

import java.util.List;
import org.varwright.quantity.SymmetricEigen;

/**
 * Capacitances, each with its own resistance across it, joined in any way and left to themselves: solved exactly by modes.
 *
 * <p><b>Model.</b> {@code C·dv/dt = −G·v} between the nodes; with {@code C = L·Lᵀ} the eigenvectors of {@code L⁻¹·G·L⁻ᵀ} decay each by itself (DIS-12).
 * <p><b>Not modelled.</b> Dielectric absorption, resistances that depend on voltage, leakage to ground.
 * <p><b>Accuracy.</b> Rounding.
 * <p><b>Source.</b> First principles.
 */
final class RcNetwork {
    /**
     * A capacitance with a resistance across it.
     *
     * @param from node; 0 is the reference
     * @param to node
     * @param farads [F], above 0
     * @param siemens conductance of its resistor [S]; 0 where that is open
     */
    record Branch(int from, int to, double farads, double siemens) {}

    private final int nodes;
    private final List<Branch> branches;
    private final Cholesky capacitance;
    private final SymmetricEigen modes;

    /**
     * A network.
     *
     * @param nodes how many, the reference among them; every node must hang on the reference through capacitances
     */
    RcNetwork(int nodes, List<Branch> branches) {
        this.nodes = nodes;
        this.branches = List.copyOf(branches);
        capacitance = Cholesky.of(matrix(true));
        modes = SymmetricEigen.of(between(matrix(false)));
    }

    /** The voltages of all branches over time, once they were left with {@code branchVolts}. */
    final class Course {
        /** Nodes as amplitudes of the modes. */
        private final double[] amplitudes;

        private Course(double[] amplitudes) {
            this.amplitudes = amplitudes;
        }

        /** Voltage across each branch after so many seconds [V]. */
        double[] voltsAfter(double seconds) {
            int n = modes.size();
            double[] y = new double[n];
            for (int k = 0; k < n; k++) {
                double part = amplitudes[k] * Math.exp(-Math.max(0.0, modes.value(k)) * seconds);
                for (int i = 0; i < n; i++) {
                    y[i] += modes.vector(i, k) * part;
                }
            }
            return across(capacitance.solveUpper(y));
        }
    }

    /**
     * What follows once the branches hold these voltages. Where they don't fit together round a loop (ends have just been joined), charge flows at once until
     * they do; what a node holds in all stays.
     */
    Course from(double[] branchVolts) {
        double[] charge = new double[nodes];
        for (int b = 0; b < branches.size(); b++) {
            double q = branches.get(b).farads() * branchVolts[b];
            charge[branches.get(b).from()] += q;
            charge[branches.get(b).to()] -= q;
        }
        double[] free = new double[nodes - 1];
        System.arraycopy(charge, 1, free, 0, nodes - 1);
        double[] y = capacitance.solveLower(free);
        int n = modes.size();
        double[] amplitudes = new double[n];
        for (int k = 0; k < n; k++) {
            for (int i = 0; i < n; i++) {
                amplitudes[k] += modes.vector(i, k) * y[i];
            }
        }
        return new Course(amplitudes);
    }

    private double[] across(double[] nodeVolts) {
        double[] volts = new double[branches.size()];
        for (int b = 0; b < volts.length; b++) {
            volts[b] = at(nodeVolts, branches.get(b).from())
                    - at(nodeVolts, branches.get(b).to());
        }
        return volts;
    }

    private static double at(double[] nodeVolts, int node) {
        return node == 0 ? 0.0 : nodeVolts[node - 1];
    }

    private double[][] matrix(boolean farads) {
        double[][] matrix = new double[nodes - 1][nodes - 1];
        for (Branch branch : branches) {
            double value = farads ? branch.farads() : branch.siemens();
            int i = branch.from() - 1;
            int j = branch.to() - 1;
            if (i >= 0) {
                matrix[i][i] += value;
            }
            if (j >= 0) {
                matrix[j][j] += value;
            }
            if (i >= 0 && j >= 0) {
                matrix[i][j] -= value;
                matrix[j][i] -= value;
            }
        }
        return matrix;
    }

    /** {@code L⁻¹·G·L⁻ᵀ}. */
    private double[][] between(double[][] conductance) {
        int n = conductance.length;
        double[][] half = new double[n][];
        for (int i = 0; i < n; i++) {
            half[i] = capacitance.solveLower(conductance[i]);
        }
        double[][] whole = new double[n][n];
        for (int j = 0; j < n; j++) {
            double[] column = new double[n];
            for (int i = 0; i < n; i++) {
                column[i] = half[i][j];
            }
            double[] solved = capacitance.solveLower(column);
            for (int i = 0; i < n; i++) {
                whole[i][j] = solved[i];
            }
        }
        return whole;
    }
}
