package org.varwright.network;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Complex;

/**
 * The phasor network of some stages of a bank, factored once and solved for any failures.
 *
 * <p><b>Model.</b> Kirchhoff's laws at the fundamental with every unit as {@code jωC(1 − j·tanδ)}, reactors as {@code jωL}, switch poles, current
 * transformers and joined neutrals as links without impedance whose currents are unknowns (NET-5). A failure is a low-rank change of the healthy
 * equations (NET-6): {@code x = x0 − Z·(D⁻¹ + Vᵀ·Z)⁻¹·Vᵀ·x0} with {@code Z = A⁻¹·U}.
 *
 * <p><b>Not modelled.</b> Harmonics, resistance and coupling of reactors, burden of sensors, stray capacitance to ground, discharge resistors.
 *
 * <p><b>Accuracy.</b> Rounding: about 1e-12 of the supply's voltage in usual banks.
 *
 * <p><b>Source.</b> First principles. Immutable.
 */
public final class Network {
    private final Circuit circuit;
    private final Assembly assembly;
    private final Complex[] siemens;
    private final double[] farads;
    private final Optional<LuFactors> factors;
    private final double[] healthyUnknowns;
    private final Readout readout;

    private Network(Bank bank, List<Stage> stages, Capacitances capacitances, Supply supply, double lossFactor) {
        circuit = Circuit.of(bank.system(), stages, supply);
        farads = circuit.branches().stream()
                .mapToDouble(b -> capacitances.farads(b.unit()))
                .toArray();
        siemens = new Complex[farads.length];
        for (int b = 0; b < farads.length; b++) {
            siemens[b] = new Complex(lossFactor, 1.0).times(circuit.omega() * farads[b]);
        }
        double largest = supply.phaseVolts().stream()
                .mapToDouble(Complex::magnitude)
                .max()
                .orElseThrow();
        assembly = new Assembly(circuit, siemens, largest > 0.0 ? largest : 1.0);
        factors = assembly.factor(siemens, List.of(), Set.of());
        healthyUnknowns = factors.map(f -> f.solve(assembly.rightSide(0))).orElse(new double[0]);
        readout = new Readout(bank, circuit, assembly);
    }

    /**
     * The network of one stage on its own.
     *
     * @throws VarwrightException {@code SENSOR_UNSUITED}, {@code THREE_PHASE_UNITS}
     */
    public static Network of(Bank bank, Stage stage, Capacitances capacitances, Supply supply) {
        return of(bank, List.of(stage), capacitances, supply, 0.0);
    }

    /**
     * The network of some stages in service together.
     *
     * @param bank the bank
     * @param stages those that are switched on, one or more
     * @param capacitances of every unit
     * @param supply the voltages
     * @param lossFactor tanδ of the units, 0 to 1
     * @throws VarwrightException {@code SENSOR_UNSUITED}, {@code THREE_PHASE_UNITS}, {@code LOSS_NOT_ALLOWED}
     */
    public static Network of(
            Bank bank, List<Stage> stages, Capacitances capacitances, Supply supply, double lossFactor) {
        if (!(lossFactor >= 0.0 && lossFactor <= 1.0)) {
            throw new VarwrightException(Message.LOSS_NOT_ALLOWED, Place.NOWHERE, String.valueOf(lossFactor));
        }
        return new Network(bank, stages, capacitances, supply, lossFactor);
    }

    /** Every branch of the stages, in order. */
    public List<UnitBranch> branches() {
        return circuit.branches().stream().map(Circuit.Branch::unit).toList();
    }

    /** The network without failures. */
    public Solution healthy() {
        return solve(List.of());
    }

    /**
     * The network with failures, by a low-rank change of the healthy solution.
     *
     * @throws VarwrightException {@code BRANCH_UNKNOWN}, {@code PHASE_UNKNOWN}, {@code FAILURE_COUNT}, {@code CONSTRUCTION_MISSING}
     */
    public Solution solve(List<? extends Failure> failures) {
        Changes changes = changes(failures);
        if (factors.isEmpty()) {
            return new Solution.Singular(
                    "the bank in good order has no unique solution: some part floats, or a reactor is"
                            + " in resonance with its capacitors; check reactor and frequency in the bank file");
        }
        Optional<double[]> update = LowRank.solve(factors.get(), healthyUnknowns, updates(changes));
        if (update.isEmpty()) {
            return singular(failures);
        }
        return readout.read(
                update.get(), shortCurrents(changes, update.get()), changes, siemens, farads, healthyUnknowns);
    }

    /** For searches that ask often; empty where the bank in good order has no unique solution. */
    public Optional<Sweep> sweep() {
        return factors.map(f -> new Sweep(this, circuit, assembly, readout, f, healthyUnknowns));
    }

    /** Admittance of a branch in good order [S]. */
    Complex siemens(int branch) {
        return siemens[branch];
    }

    /** Change of a branch's admittance, in units of the assembly's; none where it is a short circuit. */
    Complex change(int branch, UnitState state) {
        return siemens[branch].times((factor(branch, state) - 1.0) / assembly.baseSiemens());
    }

    /** The same as {@link #solve} from a new factorization of the changed equations; slower, kept as the check on the low-rank change. */
    public Solution solveAfresh(List<? extends Failure> failures) {
        Changes changes = changes(failures);
        if (factors.isEmpty()) {
            return singular(failures);
        }
        List<Integer> shorted = shortedPairs(changes);
        Optional<LuFactors> fresh = assembly.factor(changedSiemens(changes), shorted, changes.openLinks());
        if (fresh.isEmpty()) {
            return singular(failures);
        }
        double[] x = fresh.get().solve(assembly.rightSide(shorted.size()));
        return readout.read(x, shortCurrents(changes, x), changes, siemens, farads, healthyUnknowns);
    }

    private static Solution singular(List<? extends Failure> failures) {
        List<String> named =
                failures.stream().map(f -> f.kind() + " at " + f.where()).toList();
        return new Solution.Singular(
                "with " + String.join(", ", named) + " some part of the bank floats, or a short"
                        + " circuit stands across a supply without impedance; give the short-circuit level, or look at fewer failures");
    }

    /** Failures sorted by what they change. */
    Changes changes(List<? extends Failure> failures) {
        Map<Integer, UnitState> states = new TreeMap<>();
        Set<Integer> open = new TreeSet<>();
        for (Failure failure : failures) {
            switch (failure) {
                case Failure.OfBranch f -> {
                    int branch = circuit.requireBranch(f.at());
                    UnitState before = states.getOrDefault(branch, UnitState.HEALTHY);
                    states.put(
                            branch,
                            before.and(f, circuit.branches().get(branch).stage().unit()));
                }
                case Failure.PhaseOpen f -> open.add(poleOf(f));
            }
        }
        return new Changes(states, open);
    }

    private int poleOf(Failure.PhaseOpen failure) {
        int phase = Circuit.PHASES.indexOf(failure.phase());
        return circuit.stages().stream()
                .filter(s -> s.stage().name().equals(failure.stage()) && phase >= 0)
                .map(s -> s.poles().get(phase))
                .findFirst()
                .orElseThrow(() ->
                        new VarwrightException(Message.PHASE_UNKNOWN, Place.NOWHERE, failure.stage(), failure.phase()));
    }

    private Complex[] changedSiemens(Changes changes) {
        Complex[] changed = siemens.clone();
        changes.states().forEach((branch, state) -> changed[branch] = siemens[branch].times(factor(branch, state)));
        return changed;
    }

    private double factor(int branch, UnitState state) {
        return state.shorted() && !state.out()
                ? 1.0
                : state.capacitanceFactor(
                        circuit.branches().get(branch).stage().unit().construction());
    }

    /** One group for each pair of nodes that is shorted. */
    private List<Integer> shortedPairs(Changes changes) {
        Map<Long, Integer> groups = new LinkedHashMap<>();
        changes.states().forEach((branch, state) -> {
            if (state.shorted() && !state.out()) {
                int group = circuit.branches().get(branch).group();
                groups.putIfAbsent(pair(group), group);
            }
        });
        return List.copyOf(groups.values());
    }

    private long pair(int group) {
        return circuit.pair(circuit.groups().get(group));
    }

    /** Low-rank changes: shorted pairs first, in the order of {@link #shortedPairs}. */
    private List<LowRank.Update> updates(Changes changes) {
        List<LowRank.Update> updates = new ArrayList<>();
        Set<Long> shorted = new TreeSet<>();
        for (int group : shortedPairs(changes)) {
            shorted.add(pair(group));
            Circuit.Group g = circuit.groups().get(group);
            updates.add(LowRank.Update.shortBetween(g.from(), g.to()));
        }
        Map<Long, LowRank.Update> change = new LinkedHashMap<>();
        Map<Long, Complex> total = new HashMap<>();
        changes.states().forEach((branch, state) -> {
            int group = circuit.branches().get(branch).group();
            Circuit.Group ends = circuit.groups().get(group);
            Complex sum = total.merge(pair(group), change(branch, state), Complex::plus);
            if (!shorted.contains(pair(group)) && sum.magnitude() > 0.0) {
                change.put(pair(group), LowRank.Update.admittance(ends.from(), ends.to(), sum));
            }
        });
        updates.addAll(change.values());
        for (int link : changes.openLinks()) {
            Circuit.Link pole = circuit.links().get(link);
            Complex ohms = pole.ohms().times(assembly.baseSiemens());
            updates.add(LowRank.Update.open(pole.from(), pole.to(), circuit.nodes() + link, ohms));
        }
        return updates;
    }

    /** Currents through shorted pairs of nodes, by pair: they follow the unknowns of the healthy circuit. */
    private Map<Integer, Complex> shortCurrents(Changes changes, double[] x) {
        Map<Integer, Complex> currents = new HashMap<>();
        List<Integer> shorted = shortedPairs(changes);
        for (int s = 0; s < shorted.size(); s++) {
            int at = 2 * (assembly.unknowns() + s);
            currents.put(shorted.get(s), new Complex(x[at], x[at + 1]).times(assembly.baseAmperes()));
        }
        return currents;
    }

    /**
     * What failures change.
     *
     * @param states by index of branch
     * @param openLinks poles without current
     */
    record Changes(Map<Integer, UnitState> states, Set<Integer> openLinks) {}
}
