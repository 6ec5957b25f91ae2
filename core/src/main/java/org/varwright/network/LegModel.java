package org.varwright.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Protection;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.quantity.Complex;

/**
 * One stage solved leg by leg, for searches that ask often.
 *
 * <p><b>Model.</b> Groups in parallel, strings in series and in parallel reduce exactly to one capacitance a leg; the two wyes of a double wye and the
 * halves of a bridge (whose middles are joined) reduce to one admittance a phase; the neutral follows from Millman's theorem (NET-7). A delta, and
 * three-phase units with star points of their own (turned into deltas), take three equations where there is impedance in the lines.
 *
 * <p><b>Not modelled.</b> Losses; other stages behind a source with impedance; failures other than as changed capacitances.
 *
 * <p><b>Accuracy.</b> The same values as {@link Network} to rounding.
 *
 * <p><b>Source.</b> First principles. Immutable.
 */
public final class LegModel {
    private final Stage stage;
    private final double omega;
    private final List<Complex> emf;
    private final Complex lineOhms;
    private final Complex neutralOhms;
    private final List<LegSensor> sensors;

    /** A sensor of the leg model: what it senses and where. */
    private record LegSensor(Protection protection, String place, int index) {
        Protection.Senses senses() {
            return protection.senses();
        }
    }

    private LegModel(Bank bank, Stage stage, Supply supply) {
        this.stage = stage;
        omega = bank.system().angularFrequency();
        emf = supply.phaseVolts();
        lineOhms = supply.ohms().plus(reactor(stage, Reactor.Position.LINE, omega));
        neutralOhms = reactor(stage, Reactor.Position.NEUTRAL, omega);
        Circuit circuit = Circuit.of(bank.system(), List.of(stage), supply);
        List<LegSensor> found = new ArrayList<>();
        for (Sensor sensor : Sensor.of(bank, circuit)) {
            int index = Math.max(
                    Circuit.PHASES.indexOf(sensor.place()), stage.legs().indexOf(sensor.place()));
            found.add(new LegSensor(sensor.protection(), sensor.place(), index));
        }
        sensors = List.copyOf(found);
    }

    /**
     * The model of a stage.
     *
     * @throws org.varwright.problem.VarwrightException {@code SENSOR_UNSUITED}, {@code THREE_PHASE_UNITS}
     */
    public static LegModel of(Bank bank, Stage stage, Supply supply) {
        return new LegModel(bank, stage, supply);
    }

    /** Names of the legs in the order of every array and list. */
    public List<String> legs() {
        return stage.legs();
    }

    /** Names of the sensors, such as {@code rack neutral-current} or {@code F bridge-current A}. */
    public List<String> sensorNames() {
        return sensors.stream()
                .map(s -> stage.name() + " " + s.senses().code() + (s.place().isEmpty() ? "" : " " + s.place()))
                .toList();
    }

    /** What each sensor belongs to in the bank file, in the order of {@link #sensorNames}. */
    public List<Protection> sensorProtections() {
        return sensors.stream().map(LegSensor::protection).toList();
    }

    /** Capacitance of every group [F]: one row a leg, in it string after string; of three-phase units with star points of their own, unit after unit. */
    public double[][] groupFarads(Capacitances capacitances) {
        double[][] groups = new double[stage.legs().size()][];
        for (int l = 0; l < groups.length; l++) {
            LegLayout layout = stage.layoutOf(stage.legs().get(l));
            groups[l] = new double[hasStars() ? layout.units() : layout.strings() * layout.groups()];
        }
        for (UnitPosition position : stage.positions()) {
            for (UnitBranch branch : Circuit.branchesOf(stage, position)) {
                int leg = stage.legs().indexOf(branch.stageLeg());
                groups[leg][slot(position)] += capacitances.farads(branch);
            }
        }
        return groups;
    }

    /** Place of a position's group in its leg's row of {@link #groupFarads}. */
    public int slot(UnitPosition position) {
        return hasStars()
                ? position.unit() - 1
                : (position.string() - 1) * stage.layoutOf(position.leg()).groups() + position.group() - 1;
    }

    /** The stage with these capacitances. */
    public LegState evaluate(Capacitances capacitances) {
        return evaluate(groupFarads(capacitances));
    }

    /**
     * The stage with these capacitances of its groups.
     *
     * @param groupFarads as from {@link #groupFarads}; 0 for a group without a unit in service
     */
    public LegState evaluate(double[][] groupFarads) {
        if (stage.hasThreePhaseUnits() || stage.connection() == Connection.DELTA) {
            return hasStars() ? stars(groupFarads) : delta(groupFarads);
        }
        return wyes(groupFarads);
    }

    private LegState wyes(double[][] groupFarads) {
        int count = groupFarads.length;
        boolean bridge = stage.connection().isBridge();
        Complex[] legY = new Complex[count];
        for (int l = 0; l < count; l++) {
            Complex y = siemens(legFarads(l, groupFarads));
            legY[l] = bridge ? y : inSeries(y, neutralOhms);
        }
        Complex[] through = new Complex[3];
        Complex weighted = Complex.ZERO;
        Complex sum = Complex.ZERO;
        Complex[] phaseY = new Complex[3];
        for (int p = 0; p < 3; p++) {
            phaseY[p] = bridge ? bridgeSiemens(legY, p) : count == 6 ? legY[p].plus(legY[p + 3]) : legY[p];
            through[p] = inSeries(phaseY[p], lineOhms);
            weighted = weighted.plus(through[p].times(emf.get(p)));
            sum = sum.plus(through[p]);
        }
        Complex neutral =
                stage.connection().isGrounded() || sum.magnitude() == 0.0 ? Complex.ZERO : weighted.dividedBy(sum);
        List<Complex> lines = new ArrayList<>();
        Complex[] legAmperes = new Complex[count];
        for (int p = 0; p < 3; p++) {
            Complex line = through[p].times(emf.get(p).minus(neutral));
            lines.add(line);
            if (bridge) {
                int q = 4 * p;
                share(line, legY, q, q + 2, legAmperes);
                share(line, legY, q + 1, q + 3, legAmperes);
            } else if (count == 6) {
                share(line, legY, p, p + 3, legAmperes);
            } else {
                legAmperes[p] = line;
            }
        }
        return state(groupFarads, Arrays.asList(legAmperes), lines, neutral);
    }

    /** Divides the current over two branches in parallel. */
    private static void share(Complex total, Complex[] siemens, int first, int second, Complex[] amperes) {
        Complex sum = siemens[first].plus(siemens[second]);
        if (sum.magnitude() == 0.0) {
            amperes[first] = Complex.ZERO;
            amperes[second] = Complex.ZERO;
            return;
        }
        amperes[first] = total.times(siemens[first]).dividedBy(sum);
        amperes[second] = total.times(siemens[second]).dividedBy(sum);
    }

    private Complex bridgeSiemens(Complex[] legY, int p) {
        Complex upper = legY[4 * p].plus(legY[4 * p + 2]);
        Complex lower = legY[4 * p + 1].plus(legY[4 * p + 3]);
        Complex sum = upper.plus(lower);
        return sum.magnitude() == 0.0
                ? Complex.ZERO
                : inSeries(upper.times(lower).dividedBy(sum), neutralOhms);
    }

    private LegState delta(double[][] groupFarads) {
        Complex[] legY = new Complex[3];
        for (int l = 0; l < 3; l++) {
            legY[l] = inSeries(siemens(legFarads(l, groupFarads)), neutralOhms);
        }
        Complex[] top = tops(legY);
        List<Complex> amperes = new ArrayList<>();
        for (int l = 0; l < 3; l++) {
            amperes.add(legY[l].times(top[l].minus(top[(l + 1) % 3])));
        }
        List<Complex> lines = new ArrayList<>();
        for (int p = 0; p < 3; p++) {
            lines.add(amperes.get(p).minus(amperes.get((p + 2) % 3)));
        }
        return state(groupFarads, amperes, lines, Complex.ZERO);
    }

    /** Three-phase units with a star point each: as deltas to find the voltages at the terminals, then unit by unit. */
    private LegState stars(double[][] groupFarads) {
        Complex[] deltaY = {Complex.ZERO, Complex.ZERO, Complex.ZERO};
        int cans = groupFarads[0].length;
        for (int u = 0; u < cans; u++) {
            double sum = groupFarads[0][u] + groupFarads[1][u] + groupFarads[2][u];
            for (int l = 0; l < 3 && sum > 0.0; l++) {
                deltaY[l] = deltaY[l].plus(siemens(groupFarads[l][u] * groupFarads[(l + 1) % 3][u] / sum));
            }
        }
        Complex[] top = tops(deltaY);
        Complex[] amperes = {Complex.ZERO, Complex.ZERO, Complex.ZERO};
        Complex[] firstVolts = {Complex.ZERO, Complex.ZERO, Complex.ZERO};
        double highest = 0.0;
        for (int u = 0; u < cans; u++) {
            double sum = 0.0;
            Complex star = Complex.ZERO;
            for (int p = 0; p < 3; p++) {
                sum += groupFarads[p][u];
                star = star.plus(top[p].times(groupFarads[p][u]));
            }
            star = sum > 0.0 ? star.times(1.0 / sum) : star;
            for (int p = 0; p < 3; p++) {
                Complex volts = top[p].minus(star);
                amperes[p] = amperes[p].plus(volts.times(siemens(groupFarads[p][u])));
                firstVolts[p] = u == 0 ? volts : firstVolts[p];
                highest = groupFarads[p][u] > 0.0 ? Math.max(highest, volts.magnitude()) : highest;
            }
        }
        List<Complex> lines = List.of(amperes);
        return new LegState(
                List.of(firstVolts),
                lines,
                lines,
                Complex.ZERO,
                sensors.stream().map(s -> Complex.ZERO).toList(),
                highest / stage.unit().legVolts());
    }

    /** Voltages at the terminals of a delta behind the lines' impedance. */
    private Complex[] tops(Complex[] deltaY) {
        Complex[] top = emf.toArray(new Complex[0]);
        if (lineOhms.magnitude() == 0.0) {
            return top;
        }
        SmallSystem small = new SmallSystem();
        small.start(3);
        for (int p = 0; p < 3; p++) {
            Complex next = lineOhms.times(deltaY[p]);
            Complex before = lineOhms.times(deltaY[(p + 2) % 3]);
            Complex own = Complex.ONE.plus(next).plus(before);
            small.set(p, p, own.re(), own.im());
            small.set(p, (p + 1) % 3, -next.re(), -next.im());
            small.set(p, (p + 2) % 3, -before.re(), -before.im());
            small.set(p, 3, emf.get(p).re(), emf.get(p).im());
            small.madeOf(p, 1.0 + next.magnitude() + before.magnitude(), 0.0);
        }
        if (!small.solve()) {
            Arrays.fill(top, Complex.ZERO);
            return top;
        }
        for (int p = 0; p < 3; p++) {
            top[p] = new Complex(small.real(p), small.imaginary(p));
        }
        return top;
    }

    private LegState state(double[][] groupFarads, List<Complex> amperes, List<Complex> lines, Complex neutral) {
        List<Complex> volts = new ArrayList<>();
        double highest = 0.0;
        for (int l = 0; l < groupFarads.length; l++) {
            double farads = legFarads(l, groupFarads);
            Complex across = farads > 0.0 ? amperes.get(l).dividedBy(siemens(farads)) : Complex.ZERO;
            volts.add(across);
            highest = Math.max(highest, across.magnitude() * largestShare(l, groupFarads));
        }
        List<Complex> seen = new ArrayList<>();
        for (LegSensor sensor : sensors) {
            seen.add(see(sensor, groupFarads, volts, amperes, lines, neutral));
        }
        return new LegState(
                volts, amperes, lines, neutral, seen, highest / stage.unit().legVolts());
    }

    private Complex see(
            LegSensor sensor,
            double[][] groupFarads,
            List<Complex> volts,
            List<Complex> amperes,
            List<Complex> lines,
            Complex neutral) {
        return switch (sensor.senses()) {
            case NEUTRAL_VOLTAGE -> neutral;
            case NEUTRAL_CURRENT ->
                stage.connection() == Connection.DOUBLE_WYE_UNGROUNDED ? sum(amperes, 0, 3) : sum(lines, 0, 3);
            case NEUTRAL_DIFFERENTIAL -> sum(amperes, 0, 3).minus(sum(amperes, 3, 6));
            case BRIDGE_CURRENT -> amperes.get(4 * sensor.index()).minus(amperes.get(4 * sensor.index() + 1));
            case PHASE_VOLTAGE -> tap(sensor.index(), groupFarads, volts);
        };
    }

    private Complex tap(int index, double[][] groupFarads, List<Complex> volts) {
        if (stage.connection().isBridge()) {
            Complex upper = volts.get(4 * index);
            Complex lower = volts.get(4 * index + 1);
            return lower.minus(upper).times(0.5);
        }
        int groups = stage.layoutOf(stage.legs().get(index)).groups();
        int above = (groups + 1) / 2;
        double string = stringFarads(groupFarads[index], 0, groups);
        double below = 0.0;
        for (int g = above; g < groups; g++) {
            below += string > 0.0 ? string / groupFarads[index][g] : 0.0;
        }
        return volts.get(index).times(below - (groups - above) / (double) groups);
    }

    private static Complex sum(List<Complex> values, int from, int to) {
        Complex sum = Complex.ZERO;
        for (int i = from; i < to; i++) {
            sum = sum.plus(values.get(i));
        }
        return sum;
    }

    /** Capacitance of a whole leg [F]. */
    private double legFarads(int leg, double[][] groupFarads) {
        int groups = hasStars() ? 1 : stage.layoutOf(stage.legs().get(leg)).groups();
        double sum = 0.0;
        for (int at = 0; at < groupFarads[leg].length; at += groups) {
            sum += stringFarads(groupFarads[leg], at, groups);
        }
        return sum;
    }

    private static double stringFarads(double[] row, int at, int groups) {
        double elastance = 0.0;
        for (int g = at; g < at + groups; g++) {
            if (!(row[g] > 0.0)) {
                return 0.0;
            }
            elastance += 1.0 / row[g];
        }
        return 1.0 / elastance;
    }

    /** Largest part of the leg's voltage that any group of it bears. */
    private double largestShare(int leg, double[][] groupFarads) {
        int groups = stage.layoutOf(stage.legs().get(leg)).groups();
        double largest = 0.0;
        for (int at = 0; at < groupFarads[leg].length; at += groups) {
            double string = stringFarads(groupFarads[leg], at, groups);
            for (int g = at; g < at + groups && string > 0.0; g++) {
                largest = Math.max(largest, string / groupFarads[leg][g]);
            }
        }
        return largest;
    }

    private boolean hasStars() {
        return stage.unit()
                .threePhase()
                .filter(c -> c == InternalConnection.WYE_UNGROUNDED)
                .isPresent();
    }

    private Complex siemens(double farads) {
        return new Complex(0.0, omega * farads);
    }

    private static Complex inSeries(Complex siemens, Complex ohms) {
        return siemens.dividedBy(Complex.ONE.plus(siemens.times(ohms)));
    }

    private static Complex reactor(Stage stage, Reactor.Position position, double omega) {
        return stage.reactor()
                .filter(r -> r.position() == position)
                .map(r -> new Complex(0.0, omega * r.henries()))
                .orElse(Complex.ZERO);
    }
}
