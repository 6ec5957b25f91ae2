package org.varwright.network;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ejml.data.ZMatrixRMaj;
import org.varwright.quantity.Complex;

/**
 * The equations of a circuit: unknowns are node voltages and link currents, in units of the supply's voltage and of a typical branch current, so that
 * entries stand near 1 whatever the bank's size.
 */
final class Assembly {
    private final Circuit circuit;
    private final double baseVolts;
    private final double baseSiemens;

    Assembly(Circuit circuit, Complex[] siemens, double baseVolts) {
        this.circuit = circuit;
        this.baseVolts = baseVolts;
        double sum = 0.0;
        for (Complex y : siemens) {
            sum += y.magnitude();
        }
        this.baseSiemens = sum / siemens.length;
    }

    double baseVolts() {
        return baseVolts;
    }

    double baseSiemens() {
        return baseSiemens;
    }

    double baseAmperes() {
        return baseVolts * baseSiemens;
    }

    int nodes() {
        return circuit.nodes();
    }

    int unknowns() {
        return circuit.nodes() + circuit.links().size();
    }

    /**
     * Factors of the whole matrix.
     *
     * @param siemens admittance of every branch
     * @param shortedGroups groups that are a short circuit, each with one more unknown current after all others
     * @param openLinks links without current
     */
    Optional<LuFactors> factor(Complex[] siemens, List<Integer> shortedGroups, Set<Integer> openLinks) {
        int n = unknowns() + shortedGroups.size();
        ZMatrixRMaj a = new ZMatrixRMaj(n, n);
        for (int b = 0; b < siemens.length; b++) {
            Circuit.Branch branch = circuit.branches().get(b);
            addAdmittance(a, branch.from(), branch.to(), siemens[b].times(1.0 / baseSiemens));
        }
        for (int l = 0; l < circuit.links().size(); l++) {
            Circuit.Link link = circuit.links().get(l);
            int row = circuit.nodes() + l;
            addCurrent(a, link.from(), link.to(), row);
            if (openLinks.contains(l)) {
                a.set(row, row, 1.0, 0.0);
            } else {
                addVoltage(a, row, link.from(), link.to());
                Complex z = link.ohms().times(-baseSiemens);
                a.set(row, row, z.re(), z.im());
            }
        }
        for (int s = 0; s < shortedGroups.size(); s++) {
            Circuit.Group group = circuit.groups().get(shortedGroups.get(s));
            addCurrent(a, group.from(), group.to(), unknowns() + s);
            addVoltage(a, unknowns() + s, group.from(), group.to());
        }
        return LuFactors.of(a);
    }

    /** Right side with {@code extra} zeros after the unknowns of the healthy circuit. */
    double[] rightSide(int extra) {
        double[] right = new double[2 * (unknowns() + extra)];
        for (int l = 0; l < circuit.links().size(); l++) {
            Complex emf = circuit.links().get(l).emf().times(-1.0 / baseVolts);
            right[2 * (circuit.nodes() + l)] = emf.re();
            right[2 * (circuit.nodes() + l) + 1] = emf.im();
        }
        return right;
    }

    private static void addAdmittance(ZMatrixRMaj a, int from, int to, Complex y) {
        add(a, from, from, y);
        add(a, to, to, y);
        add(a, from, to, y.negated());
        add(a, to, from, y.negated());
    }

    private static void addCurrent(ZMatrixRMaj a, int from, int to, int column) {
        add(a, from, column, Complex.ONE);
        add(a, to, column, Complex.ONE.negated());
    }

    private static void addVoltage(ZMatrixRMaj a, int row, int from, int to) {
        add(a, row, from, Complex.ONE);
        add(a, row, to, Complex.ONE.negated());
    }

    private static void add(ZMatrixRMaj a, int row, int column, Complex value) {
        if (row != Circuit.GROUND && column != Circuit.GROUND) {
            a.set(row, column, a.getReal(row, column) + value.re(), a.getImag(row, column) + value.im());
        }
    }
}
