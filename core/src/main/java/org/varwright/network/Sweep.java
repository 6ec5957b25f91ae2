package org.varwright.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.Construction;
import org.varwright.quantity.Complex;

/**
 * Many failures of one network, one after another, without solving its equations again.
 *
 * <p><b>Model.</b> NET-6 with what does not depend on the failure worked out once a port (NET-9): {@code T = Vᵀ·A⁻¹·U} between ports, and what a unit change
 * at a port does to each sensor and pole. A failure at k ports is then k small equations, and every voltage a sum of k + 1 terms.
 *
 * <p><b>Accuracy.</b> That of {@link Network#solve}, of whose answers these are a part. Changed in place: for one thread.
 */
public final class Sweep {
    private static final Fault NONE = new Fault(List.of(), List.of(), Map.of());
    /** A leg that carries less than this part of what it carried carries none. */
    private static final double NO_CURRENT = 1e-6;

    /** A leg's current enters it at this port, through this admittance [S]. */
    private record Head(int leg, int port, Complex siemens) {}

    /** What a unit change at one port does to every port and probe; or both as they are. */
    private static final class Row {
        final double[] re;
        final double[] im;
        final double[] probeRe;
        final double[] probeIm;

        Row(int ports, int probes) {
            re = new double[ports];
            im = new double[ports];
            probeRe = new double[probes];
            probeIm = new double[probes];
        }

        Complex at(int port) {
            return new Complex(re[port], im[port]);
        }
    }

    private final Network network;
    private final Circuit circuit;
    private final Assembly assembly;
    private final Readout readout;
    private final LuFactors factors;
    private final Ports ports;
    private final Row healthy;
    private final @Nullable Row[] rows;
    /** [port] 1/V² of a unit's rated voltage, and of the port's own in good order, in units of the assembly. */
    private final double[] perRated;

    private final double[] perHealthy;
    private final int[] units;
    private final List<Head> heads = new ArrayList<>();
    private final Complex[] healthyLegs;

    private final double[] squares;
    private final SmallSystem equations = new SmallSystem();
    private Fault first = NONE;
    private Fault second = NONE;
    private boolean isRead;

    Sweep(Network network, Circuit circuit, Assembly assembly, Readout readout, LuFactors factors, double[] unknowns) {
        this.network = network;
        this.circuit = circuit;
        this.assembly = assembly;
        this.readout = readout;
        this.factors = factors;
        ports = new Ports(circuit, assembly, readout.sensors());
        rows = new Row[ports.count()];
        healthy = row(unknowns);
        squares = new double[ports.pairs()];
        units = new int[ports.pairs()];
        perRated = new double[ports.pairs()];
        perHealthy = new double[ports.pairs()];
        for (Circuit.Branch branch : circuit.branches()) {
            int port = ports.ofGroup(branch.group());
            double scale = assembly.baseVolts() / branch.stage().unit().legVolts();
            units[port]++;
            perRated[port] = scale * scale;
        }
        for (int q = 0; q < perHealthy.length; q++) {
            double square = healthy.re[q] * healthy.re[q] + healthy.im[q] * healthy.im[q];
            perHealthy[q] = square > 0.0 ? 1.0 / square : 0.0;
        }
        addHeads();
        healthyLegs = legAmperes();
    }

    private void addHeads() {
        for (int leg = 0; leg < readout.heads().size(); leg++) {
            Map<Integer, Complex> at = new HashMap<>();
            for (int b : readout.heads().get(leg)) {
                at.merge(ports.ofGroup(circuit.branches().get(b).group()), network.siemens(b), Complex::plus);
            }
            for (Map.Entry<Integer, Complex> head : at.entrySet()) {
                heads.add(new Head(leg, head.getKey(), head.getValue()));
            }
        }
    }

    private Row row(double[] unknowns) {
        int n = ports.count();
        int m = ports.probes().size();
        Row row = new Row(n, m);
        for (int q = 0; q < n; q++) {
            Complex value = LowRank.dot(ports.port(q).v(), unknowns);
            row.re[q] = value.re();
            row.im[q] = value.im();
        }
        for (int q = 0; q < m; q++) {
            Complex value = LowRank.dot(ports.probes().get(q), unknowns);
            row.probeRe[q] = value.re();
            row.probeIm[q] = value.im();
        }
        return row;
    }

    private Row row(int port) {
        Row row = rows[port];
        if (row == null) {
            row = row(factors.solve(LowRank.dense(ports.port(port).u(), 2 * assembly.unknowns())));
            rows[port] = row;
        }
        return row;
    }

    /**
     * Resolves failures.
     *
     * @throws org.varwright.problem.VarwrightException as {@link Network#solve}
     */
    public Fault fault(List<? extends Failure> failures) {
        Network.Changes changed = network.changes(failures);
        Set<Integer> touched = new TreeSet<>();
        Set<Integer> shorted = new TreeSet<>();
        Map<Integer, Complex> siemens = new HashMap<>();
        Map<Integer, Integer> dead = new HashMap<>();
        changed.states().forEach((branch, state) -> {
            int port = ports.ofGroup(circuit.branches().get(branch).group());
            touched.add(port);
            siemens.merge(port, network.change(branch, state), Complex::plus);
            if (state.out() || state.shorted()) {
                dead.merge(port, 1, Integer::sum);
            }
            if (state.shorted() && !state.out()) {
                shorted.add(port);
            }
        });
        List<Fault.At> at = new ArrayList<>();
        for (int port : touched) {
            Complex change = siemens.getOrDefault(port, Complex.ZERO);
            boolean isDead = dead.getOrDefault(port, 0) == units[port];
            if (shorted.contains(port)) {
                at.add(new Fault.At(port, Complex.ZERO, Complex.ZERO, true, isDead));
            } else if (change.magnitude() > 0.0) {
                at.add(new Fault.At(port, Complex.ONE.dividedBy(change), change, false, isDead));
            }
        }
        for (int link : changed.openLinks()) {
            at.add(new Fault.At(ports.ofPole(link), Complex.ONE, Complex.ZERO, false, false));
        }
        return new Fault(failures, at, changed.states());
    }

    /** Makes the network fail so; false where there is no unique answer, and then nothing may be read. */
    public boolean set(Fault fault) {
        return setBoth(fault, NONE);
    }

    /** Both at once. */
    public boolean set(Fault one, Fault other) {
        if (!one.touches(other)) {
            return setBoth(one, other);
        }
        List<Failure> both = new ArrayList<>(one.failures());
        both.addAll(other.failures());
        return set(fault(both));
    }

    private boolean setBoth(Fault one, Fault other) {
        first = one;
        second = other;
        isRead = false;
        int n = count();
        equations.start(n);
        for (int r = 0; r < n; r++) {
            Fault.At to = change(r);
            equations.madeOf(r, to.inverseRe(), to.inverseIm());
            for (int c = 0; c < n; c++) {
                Row row = row(change(c).port());
                double re = row.re[to.port()];
                double im = row.im[to.port()];
                equations.madeOf(r, re, im);
                if (r == c) {
                    equations.set(r, c, re + to.inverseRe(), im + to.inverseIm());
                } else {
                    equations.set(r, c, re, im);
                }
            }
            equations.set(r, n, healthy.re[to.port()], healthy.im[to.port()]);
        }
        return equations.solve();
    }

    private int count() {
        return first.at.length + second.at.length;
    }

    private Fault.At change(int n) {
        return n < first.at.length ? first.at[n] : second.at[n - first.at.length];
    }

    /** Squares of the voltages at all pairs of nodes; 0 where no unit is left in service. */
    private double[] squares() {
        if (isRead) {
            return squares;
        }
        int n = count();
        switch (n) {
            case 0 -> squares(healthy, 0.0, 0.0, healthy, 0.0, 0.0);
            case 1 -> squares(row(change(0).port()), equations.real(0), equations.imaginary(0), healthy, 0.0, 0.0);
            case 2 ->
                squares(
                        row(change(0).port()),
                        equations.real(0),
                        equations.imaginary(0),
                        row(change(1).port()),
                        equations.real(1),
                        equations.imaginary(1));
            default -> {
                for (int q = 0; q < squares.length; q++) {
                    Complex volts = unscaled(q);
                    squares[q] = volts.re() * volts.re() + volts.im() * volts.im();
                }
            }
        }
        for (int r = 0; r < n; r++) {
            if (change(r).isDead()) {
                squares[change(r).port()] = 0.0;
            }
        }
        isRead = true;
        return squares;
    }

    private void squares(Row a, double ar, double ai, Row b, double br, double bi) {
        double[] healthyRe = healthy.re;
        double[] healthyIm = healthy.im;
        double[] aRe = a.re;
        double[] aIm = a.im;
        double[] bRe = b.re;
        double[] bIm = b.im;
        for (int q = 0; q < squares.length; q++) {
            double re = healthyRe[q] - (aRe[q] * ar - aIm[q] * ai) - (bRe[q] * br - bIm[q] * bi);
            double im = healthyIm[q] - (aRe[q] * ai + aIm[q] * ar) - (bRe[q] * bi + bIm[q] * br);
            squares[q] = re * re + im * im;
        }
    }

    private Complex unscaled(int port) {
        Complex sum = healthy.at(port);
        for (int r = 0; r < count(); r++) {
            sum = sum.minus(row(change(r).port()).at(port).times(lambda(r)));
        }
        return sum;
    }

    private Complex lambda(int r) {
        return new Complex(equations.real(r), equations.imaginary(r));
    }

    /** Highest voltage on any unit that is in service, as a multiple of its rated voltage. */
    public double highestUnitPerRated() {
        return highest(perRated);
    }

    /** Highest voltage of any group with a unit in service, as a multiple of what it was before the failures. */
    public double highestGroupPerHealthy() {
        return highest(perHealthy);
    }

    private double highest(double[] scale) {
        double[] all = squares();
        double highest = 0.0;
        for (int q = 0; q < all.length; q++) {
            highest = Math.max(highest, all[q] * scale[q]);
        }
        return Math.sqrt(highest);
    }

    /** Highest voltage on any section of any unit in service, as a multiple of its share of the rated voltage. */
    public double highestSectionPerRated() {
        return Math.max(highestUnitPerRated(), Math.max(section(first), section(second)));
    }

    private double section(Fault fault) {
        double highest = 0.0;
        for (Map.Entry<Integer, UnitState> damaged : fault.states.entrySet()) {
            Circuit.Branch branch = circuit.branches().get(damaged.getKey());
            Optional<Construction> construction = branch.stage().unit().construction();
            int port = ports.ofGroup(branch.group());
            highest = Math.max(
                    highest,
                    Math.sqrt(squares()[port] * perRated[port])
                            * damaged.getValue().sectionFactor(construction));
        }
        return highest;
    }

    /** Voltage of a group [V], in the order of {@link Solution.Solved#groups}. */
    public Complex groupVolts(int group) {
        return unscaled(ports.ofGroup(group)).times(assembly.baseVolts());
    }

    /** How many sensors there are. */
    public int sensors() {
        return readout.sensors().size();
    }

    /** What a sensor sees, primary [V] or [A]. */
    public Complex sensor(int sensor) {
        return probe(sensor);
    }

    /** What every sensor sees. */
    public List<Solution.SensorValue> sensorValues() {
        List<Complex> primaries = new ArrayList<>();
        for (int s = 0; s < sensors(); s++) {
            primaries.add(sensor(s));
        }
        return readout.sensorValues(primaries);
    }

    /** Current into a phase of the first stage [A]; phases count from 0. */
    public Complex line(int phase) {
        return probe(ports.poleAmperes(phase));
    }

    /** Reactive power that the stages give the bus [var]. */
    public double vars() {
        double vars = 0.0;
        for (int n = 0; n < 3 * circuit.stages().size(); n++) {
            vars -= probe(ports.poleVolts(n))
                    .times(probe(ports.poleAmperes(n)).conjugate())
                    .im();
        }
        return vars;
    }

    private Complex probe(int probe) {
        double re = healthy.probeRe[probe];
        double im = healthy.probeIm[probe];
        for (int r = 0; r < count(); r++) {
            Row row = row(change(r).port());
            double lr = equations.real(r);
            double li = equations.imaginary(r);
            re -= row.probeRe[probe] * lr - row.probeIm[probe] * li;
            im -= row.probeRe[probe] * li + row.probeIm[probe] * lr;
        }
        return new Complex(re, im);
    }

    /** Whether a leg that carried current carries none. */
    public boolean isLegLost() {
        Complex[] now = legAmperes();
        for (int l = 0; l < now.length; l++) {
            double before = healthyLegs[l].magnitude();
            if (before > 0.0 && now[l].magnitude() < NO_CURRENT * before) {
                return true;
            }
        }
        return false;
    }

    private Complex[] legAmperes() {
        Complex[] legs = new Complex[readout.heads().size()];
        Arrays.fill(legs, Complex.ZERO);
        for (Head head : heads) {
            Complex amperes = unscaled(head.port()).times(assembly.baseVolts()).times(head.siemens());
            for (int r = 0; r < count(); r++) {
                Fault.At change = change(r);
                if (change.port() == head.port()) {
                    Complex extra =
                            change.isShort() ? lambda(r) : unscaled(head.port()).times(change.siemens());
                    amperes = amperes.plus(extra.times(assembly.baseAmperes()));
                }
            }
            legs[head.leg()] = legs[head.leg()].plus(amperes);
        }
        return legs;
    }
}
