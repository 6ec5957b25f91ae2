package org.varwright.switching;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.varwright.transients.Act;
import org.varwright.transients.Happening;
import org.varwright.transients.Outcome;
import org.varwright.transients.Probe;
import org.varwright.transients.Setting;
import org.varwright.transients.Swing;
import org.varwright.transients.Transient;
import org.varwright.transients.WorstAngle;

/**
 * One stage that closes beside stages that are on, in time: at given angles, or at the worst.
 *
 * <p>All three poles together: the worst angle exactly, by superposition (SWI-13). Poles apart: the first pole's angle exactly, the delays of the other two
 * searched up to a quarter cycle on a grid of 30°, then refined to 7.5° (SWI-14).
 */
final class ClosingStudy {
    /** Largest delay between poles that is searched. */
    static final double MOST_APART_DEGREES = 90.0;

    private static final double GRID_DEGREES = 30.0;
    private static final double[] REFINED_DEGREES = {15.0, 7.5};

    private static final int CLOSING = 0;
    private static final String[] PHASES = {"A", "B", "C"};

    private final BankCircuit bank;
    private final double perMetre;
    private final Setting setting;
    private final WorstAngle.Memory memory;
    private final double degreesASecond;
    private final double peakVolts;
    private final boolean symmetric;
    /** Worst angles by delays and time to run: the search for the largest current and that for the highest voltage ask for the same. */
    private final Map<List<Double>, List<WorstAngle>> known = new HashMap<>();

    /**
     * The study.
     *
     * @param closing the stage that closes
     * @param on stages that are on
     * @param trapped charge on the legs of the closing stage, multiples of their peak in service; empty: none
     */
    ClosingStudy(
            Source source,
            SwitchedStage closing,
            List<SwitchedStage> on,
            double perMetre,
            Map<String, Double> trapped) {
        this.perMetre = perMetre;
        List<SwitchedStage> all = new ArrayList<>();
        all.add(closing);
        all.addAll(on);
        bank = BankCircuit.of(source, all, perMetre);
        setting = new Setting(bank.circuit(), bank.poles(CLOSING), bank.trapped(CLOSING, trapped));
        memory = new WorstAngle.Memory(bank.circuit());
        degreesASecond = 360.0 * source.hertz();
        peakVolts = source.peakVolts();
        symmetric = trapped.isEmpty();
    }

    /** A closing at given angles of poles A, B and C, one of them at least not negative. */
    Closing at(List<Double> degrees, boolean record) {
        double first = Math.min(degrees.get(0), Math.min(degrees.get(1), degrees.get(2)));
        List<Act> acts = new ArrayList<>();
        double last = 0.0;
        for (int p = 0; p < 3; p++) {
            double seconds = (degrees.get(p) - first) / degreesASecond;
            acts.add(new Act.Close(bank.pole(CLOSING, p), seconds));
            last = Math.max(last, seconds);
        }
        List<Probe> probes = probes();
        Outcome outcome = Transient.run(setting, first, acts, probes, last + cycle(), record);
        return closing(degrees, probes, outcome);
    }

    /** All poles together, at the angle with the largest current. */
    Closing worstTogetherForCurrent() {
        return atBest(new double[3], this::largestCurrent, cycle());
    }

    /** All poles together, at the angle with the highest voltage across a leg. */
    Closing worstTogetherForVoltage() {
        return atBest(new double[3], this::highestVoltage, cycle());
    }

    /** Poles apart by up to a quarter cycle, for the largest current. */
    Closing worstApartForCurrent() {
        return atBest(search(this::largestCurrent), this::largestCurrent, cycle() / 4.0);
    }

    /** Poles apart by up to a quarter cycle, for the highest voltage across a leg. */
    Closing worstApartForVoltage() {
        return atBest(search(this::highestVoltage), this::highestVoltage, cycle() / 4.0);
    }

    private double cycle() {
        return 360.0 / degreesASecond;
    }

    private WorstAngle largestCurrent(List<WorstAngle> angles) {
        return largest(angles.subList(0, 3), i -> 1.0);
    }

    private WorstAngle highestVoltage(List<WorstAngle> angles) {
        List<BankCircuit.LegPlace> legs = bank.legs(CLOSING);
        return largest(angles.subList(3, angles.size()), i -> 1.0 / legs.get(i).peakVolts());
    }

    private static WorstAngle largest(List<WorstAngle> angles, ToDoubleFunction<Integer> weight) {
        int best = 0;
        for (int i = 1; i < angles.size(); i++) {
            // Equal to rounding, the first counts: the same answer in every home of the code.
            if (angles.get(i).magnitude() * weight.applyAsDouble(i)
                    > angles.get(best).magnitude() * weight.applyAsDouble(best) * (1.0 + 1e-9)) {
                best = i;
            }
        }
        return angles.get(best);
    }

    /** Picks one out of the worst angles of all probes. */
    private interface Wanted {
        WorstAngle of(List<WorstAngle> angles);
    }

    private Closing atBest(double[] delays, Wanted wanted, double seconds) {
        double first = wanted.of(angles(delays, seconds)).degrees();
        return at(List.of(first + delays[0], first + delays[1], first + delays[2]), false);
    }

    /** Delays of the poles, in degrees, that are worst. */
    private double[] search(Wanted wanted) {
        double[] best = new double[3];
        double most = -1.0;
        int firstPoles = symmetric ? 1 : 3;
        int steps = (int) Math.round(MOST_APART_DEGREES / GRID_DEGREES);
        for (int pole = 0; pole < firstPoles; pole++) {
            for (int i = 0; i <= steps; i++) {
                for (int j = i == 0 ? 1 : 0; j <= steps; j++) {
                    double[] delays = new double[3];
                    delays[(pole + 1) % 3] = i * GRID_DEGREES;
                    delays[(pole + 2) % 3] = j * GRID_DEGREES;
                    double found = magnitude(delays, wanted);
                    if (found > most * (1.0 + 1e-9)) {
                        most = found;
                        best = delays;
                    }
                }
            }
        }
        for (double step : REFINED_DEGREES) {
            best = refined(best, step, wanted);
        }
        return best;
    }

    private double[] refined(double[] from, double step, Wanted wanted) {
        double[] best = from;
        double most = magnitude(from, wanted);
        for (int p = 0; p < 3; p++) {
            for (double by : new double[] {-step, step}) {
                double[] delays = from.clone();
                delays[p] += by;
                if (from[p] > 0.0 && delays[p] >= 0.0 && delays[p] <= MOST_APART_DEGREES) {
                    double found = magnitude(delays, wanted);
                    if (found > most * (1.0 + 1e-9)) {
                        most = found;
                        best = delays;
                    }
                }
            }
        }
        return best;
    }

    private double magnitude(double[] delays, Wanted wanted) {
        return wanted.of(angles(delays, cycle() / 4.0)).magnitude();
    }

    private List<WorstAngle> angles(double[] delays, double seconds) {
        List<Double> key = List.of(delays[0], delays[1], delays[2], seconds);
        return known.computeIfAbsent(key, k -> found(delays, seconds));
    }

    private List<WorstAngle> found(double[] delays, double seconds) {
        List<Act.Close> closings = new ArrayList<>();
        List<Probe> probes = new ArrayList<>();
        for (int p = 0; p < 3; p++) {
            closings.add(new Act.Close(bank.pole(CLOSING, p), delays[p] / degreesASecond));
            probes.add(bank.poleAmperes(CLOSING, p));
        }
        bank.legs(CLOSING).forEach(leg -> probes.add(leg.volts()));
        return WorstAngle.of(memory, setting, closings, probes, seconds);
    }

    /** For each stage its poles, currents of its legs, voltages of its legs; then the bus. */
    private List<Probe> probes() {
        List<Probe> probes = new ArrayList<>();
        for (int s = 0; s < bank.stages().size(); s++) {
            for (int p = 0; p < 3; p++) {
                probes.add(bank.poleAmperes(s, p));
            }
            bank.legs(s).forEach(leg -> probes.add(leg.amperes()));
            bank.legs(s).forEach(leg -> probes.add(leg.volts()));
        }
        for (int p = 0; p < 3; p++) {
            probes.add(bank.busVolts(p));
        }
        return probes;
    }

    private Closing closing(List<Double> degrees, List<Probe> probes, Outcome outcome) {
        Map<String, Closing.StageStrain> strains = new LinkedHashMap<>();
        int at = 0;
        int pole = 0;
        int leg = 0;
        double legPerPeak = 0.0;
        double closingAmpereSquaredSeconds = 0.0;
        for (int s = 0; s < bank.stages().size(); s++) {
            List<BankCircuit.LegPlace> legs = bank.legs(s);
            List<Swing> swings = outcome.swings().subList(at, at + 3 + 2 * legs.size());
            Closing.StageStrain strain = strain(s, swings);
            strains.put(bank.stages().get(s).name(), strain);
            if (s == CLOSING) {
                closingAmpereSquaredSeconds = strain.ampereSquaredSeconds();
                for (int p = 1; p < 3; p++) {
                    pole = swings.get(p).magnitude() > swings.get(pole).magnitude() * (1.0 + 1e-9) ? p : pole;
                }
                for (int l = 0; l < legs.size(); l++) {
                    double per = perPeak(swings, legs, l);
                    if (per > legPerPeak * (1.0 + 1e-9)) {
                        legPerPeak = per;
                        leg = l;
                    }
                }
            }
            at += 3 + 2 * legs.size();
        }
        double bus = 0.0;
        double dip = 0.0;
        for (int p = 0; p < 3; p++) {
            bus = Math.max(bus, outcome.swings().get(at + p).magnitude() / peakVolts);
            dip = Math.max(dip, dip(outcome.happenings(), at + p));
        }
        return new Closing(
                perMetre,
                degrees,
                outcome.swings().get(pole).magnitude(),
                PHASES[pole],
                outcome.hertz(pole),
                closingAmpereSquaredSeconds,
                legPerPeak,
                bank.legs(CLOSING).get(leg).name(),
                legPerPeak * bank.legs(CLOSING).get(leg).peakVolts(),
                bus,
                dip,
                strains,
                outcome.wave().map(w -> new Closing.Recorded(probes, w)));
    }

    /** Deepest drop of a probe from before to after a moment, as a part of the peak; poles that move together count as one change. */
    private double dip(List<Happening> happenings, int probe) {
        double deepest = 0.0;
        for (int i = 0; i < happenings.size(); i++) {
            int last = i;
            while (last + 1 < happenings.size()
                    && happenings.get(last + 1).seconds() == happenings.get(i).seconds()) {
                last++;
            }
            double before = happenings.get(i).before().get(probe);
            double after = happenings.get(last).after().get(probe);
            deepest = Math.max(deepest, Math.signum(before) * (before - after) / peakVolts);
            i = last;
        }
        return deepest;
    }

    /** Swings are those of the poles, then of the legs' currents, then of their voltages. */
    private Closing.StageStrain strain(int stage, List<Swing> swings) {
        List<BankCircuit.LegPlace> legs = bank.legs(stage);
        SwitchedStage of = bank.stages().get(stage);
        double peak = 0.0;
        double squares = 0.0;
        double unit = 0.0;
        double volts = 0.0;
        for (int p = 0; p < 3; p++) {
            peak = Math.max(peak, swings.get(p).magnitude());
            squares = Math.max(squares, swings.get(p).squareSeconds());
        }
        for (int l = 0; l < legs.size(); l++) {
            double share = of.unitShare().getOrDefault(legs.get(l).name(), 1.0);
            // the fuse of a three-phase unit stands in its line, not in its leg
            double through = of.stage().hasThreePhaseUnits()
                    ? squares
                    : swings.get(3 + l).squareSeconds();
            unit = Math.max(unit, through * share * share);
            volts = Math.max(volts, perPeak(swings, legs, l));
        }
        return new Closing.StageStrain(peak, squares, unit, volts);
    }

    private static double perPeak(List<Swing> swings, List<BankCircuit.LegPlace> legs, int leg) {
        return swings.get(3 + legs.size() + leg).magnitude() / legs.get(leg).peakVolts();
    }
}
