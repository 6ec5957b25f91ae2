package org.varwright.transients;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ejml.data.DMatrixRMaj;

/**
 * Runs a circuit through closings, openings and restrikes.
 *
 * <p><b>Model.</b> Between two acts the circuit is linear and its sources are part of its state, so a step is {@code z(t+h) = exp(M·h)·z(t)} and exact;
 * zeros of current and restrikes are located by halving inside the step, peaks by secants on their slope (SWI-10).
 *
 * <p><b>Not modelled.</b> Prestrike, arc voltage, current chopping, resistance that grows with frequency, saturation.
 *
 * <p><b>Accuracy.</b> Rounding alone: better than 1e-8 of the largest value in runs of ten thousand steps ({@code TransientLawTest} halves the step);
 * integrals of squares to 1e-4.
 *
 * <p><b>Source.</b> First principles.
 */
public final class Transient {
    private static final int HALVINGS = 60;

    /** A rest of a step that is only rounding. */
    private static final double NOTHING = 1e-9;

    private final SwitchedCircuit circuit;
    private final double stepSeconds;
    private final boolean[] closed;
    private final List<Act> waiting;
    private final Map<Integer, Double> parted = new HashMap<>();
    private final Map<Integer, Double> armed = new HashMap<>();
    private final List<Happening> happenings = new ArrayList<>();
    private final List<Outcome.Ring> rings = new ArrayList<>();
    private final List<Watch> watches = new ArrayList<>();
    private final boolean recording;
    private final List<double[]> recorded = new ArrayList<>();

    private Topology topology;
    private DMatrixRMaj step;
    private double[] z;
    private double now;

    private Transient(
            Setting setting, double degrees, List<Act> acts, List<Probe> probes, double stepSeconds, boolean record) {
        circuit = setting.circuit();
        this.stepSeconds = stepSeconds;
        closed = circuit.allClosedBut(setting.open());
        waiting = new ArrayList<>(acts);
        waiting.sort(Comparator.comparingDouble(Transient::when));
        recording = record;
        topology = new Topology(circuit, closed, new double[circuit.nodes()]);
        step = Exponential.of(topology.matrix(), stepSeconds);
        z = SteadyState.of(topology, circuit.radiansPerSecond()).at(Math.toRadians(degrees));
        double[] trapped = setting.trapped(topology);
        for (int i = 0; i < z.length; i++) {
            z[i] += trapped[i];
        }
        for (Probe probe : probes) {
            watches.add(new Watch(probe, topology, z));
        }
    }

    /**
     * What a run gives.
     *
     * @param setting circuit and state at the start
     * @param degrees of the clock at the start
     * @param acts of switch poles
     * @param probes what to watch
     * @param seconds to run
     * @param record whether every step is kept
     * @throws IllegalArgumentException where a loop holds no inductance, or the circuit resonates with its source
     */
    public static Outcome run(
            Setting setting, double degrees, List<Act> acts, List<Probe> probes, double seconds, boolean record) {
        return run(setting, degrees, acts, probes, seconds, record, Pace.seconds(setting.circuit()));
    }

    static Outcome run(
            Setting setting,
            double degrees,
            List<Act> acts,
            List<Probe> probes,
            double seconds,
            boolean record,
            double stepSeconds) {
        Transient run = new Transient(setting, degrees, acts, probes, stepSeconds, record);
        run.to(seconds);
        return run.outcome();
    }

    private static double when(Act act) {
        return switch (act) {
            case Act.Close close -> close.seconds();
            case Act.Open open -> open.seconds();
            case Act.Restrike restrike -> 0.0;
        };
    }

    private void to(double end) {
        due();
        keep();
        while (now < end) {
            double length = Math.min(stepSeconds, end - now);
            for (Act act : waiting) {
                length = when(act) > now ? Math.min(length, when(act) - now) : length;
            }
            double[] next =
                    length == stepSeconds ? Exponential.times(step, z) : Exponential.act(topology.matrix(), length, z);
            Optional<Event> event = event(next, length);
            if (event.isPresent()) {
                length = event.get().after();
                next = Exponential.act(topology.matrix(), length, z);
            }
            for (Watch watch : watches) {
                watch.see(topology, z, next, now, length);
            }
            now = end - now - length <= NOTHING * stepSeconds ? end : now + length;
            z = next;
            keep();
            event.ifPresent(this::happen);
            due();
        }
    }

    /** Something that happens inside a step. */
    private record Event(Happening.Kind kind, int branch, double after) {}

    private Optional<Event> event(double[] next, double length) {
        Optional<Event> first = Optional.empty();
        for (int branch : parted.keySet().stream().sorted().toList()) {
            double[] row = topology.amperes(branch);
            OptionalDouble zero = topology.carries(branch) ? crossing(row, 0.0, next, length) : OptionalDouble.of(0.0);
            first = sooner(first, Happening.Kind.OPENED, branch, zero);
        }
        for (Map.Entry<Integer, Double> entry :
                armed.entrySet().stream().sorted(Map.Entry.comparingByKey()).toList()) {
            int branch = entry.getKey();
            double volts = entry.getValue();
            double[] row = across(branch);
            if (Math.abs(Exponential.dot(row, z)) >= volts) {
                first = sooner(first, Happening.Kind.RESTRUCK, branch, OptionalDouble.of(0.0));
            } else if (Math.abs(Exponential.dot(row, next)) >= volts) {
                double level = Math.copySign(volts, Exponential.dot(row, next));
                first = sooner(first, Happening.Kind.RESTRUCK, branch, crossing(row, level, next, length));
            }
        }
        return first;
    }

    private static Optional<Event> sooner(
            Optional<Event> first, Happening.Kind kind, int branch, OptionalDouble after) {
        if (after.isEmpty()
                || first.filter(e -> e.after() <= after.getAsDouble()).isPresent()) {
            return first;
        }
        return Optional.of(new Event(kind, branch, after.getAsDouble()));
    }

    /** When a row passes a level inside the step; empty where it doesn't. */
    private OptionalDouble crossing(double[] row, double level, double[] next, double length) {
        double start = Exponential.dot(row, z) - level;
        double end = Exponential.dot(row, next) - level;
        if (start == 0.0) {
            return OptionalDouble.of(0.0);
        }
        if (start * end > 0.0) {
            return OptionalDouble.empty();
        }
        double low = 0.0;
        double high = length;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = 0.5 * (low + high);
            double value = Exponential.dot(row, Exponential.act(topology.matrix(), middle, z)) - level;
            if (value * start > 0.0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return OptionalDouble.of(high);
    }

    private double[] across(int branch) {
        Branch b = circuit.branches().get(branch);
        double[] row = topology.nodeVolts(b.from());
        double[] other = topology.nodeVolts(b.to());
        for (int i = 0; i < row.length; i++) {
            row[i] -= other[i];
        }
        return row;
    }

    private void happen(Event event) {
        change(event.kind(), event.branch());
    }

    /** Acts whose time has come. */
    private void due() {
        while (true) {
            Optional<Act> next = waiting.stream().filter(a -> ready(a)).findFirst();
            if (next.isEmpty()) {
                return;
            }
            waiting.remove(next.get());
            switch (next.get()) {
                case Act.Close close -> change(Happening.Kind.CLOSED, close.branch());
                case Act.Open open -> parted.put(open.branch(), now);
                case Act.Restrike restrike -> armed.put(restrike.branch(), restrike.volts());
            }
        }
    }

    /** A restrike is armed when its branch has opened. */
    private boolean ready(Act act) {
        return switch (act) {
            case Act.Close close -> close.seconds() <= now;
            case Act.Open open -> open.seconds() <= now;
            case Act.Restrike restrike -> !closed[restrike.branch()];
        };
    }

    private void change(Happening.Kind kind, int branch) {
        List<Double> before = values();
        parted.remove(branch);
        armed.remove(branch);
        double[] amperes = new double[circuit.branches().size()];
        for (int b = 0; b < amperes.length; b++) {
            amperes[b] = Exponential.dot(topology.amperes(b), z);
        }
        double[] potentials = new double[circuit.nodes()];
        for (int n = 0; n < potentials.length; n++) {
            potentials[n] = Exponential.dot(topology.nodeVolts(n), z);
        }
        closed[branch] = kind != Happening.Kind.OPENED;
        Topology old = topology;
        topology = new Topology(circuit, closed, potentials);
        double[] fresh = new double[topology.size()];
        System.arraycopy(z, 0, fresh, 0, old.firstLoop());
        for (int k = 0; k < topology.loopCount(); k++) {
            fresh[topology.firstLoop() + k] = amperes[topology.links().get(k)];
        }
        z = fresh;
        step = Exponential.of(topology.matrix(), stepSeconds);
        watches.forEach(w -> w.turn(topology));
        happenings.add(new Happening(kind, branch, now, before, values()));
        if (kind != Happening.Kind.OPENED) {
            ring();
        }
        keep();
    }

    /** Frequency of the strongest free oscillation in each probe that is a current. */
    private void ring() {
        double[] settled = SteadyState.of(topology, circuit.radiansPerSecond())
                .at(Math.atan2(z[topology.sine()], z[topology.cosine()]));
        double[] free = z.clone();
        for (int i = 0; i < free.length; i++) {
            free[i] -= settled[i];
        }
        free[topology.cosine()] = 0.0;
        free[topology.sine()] = 0.0;
        free[topology.one()] = 0.0;
        Modes modes = new Modes(circuit, topology);
        List<Double> hertz = new ArrayList<>();
        for (Watch watch : watches) {
            List<Modes.Oscillation> found = List.of();
            if (watch.probe().terms().stream().allMatch(t -> t.kind() == Probe.Kind.AMPERES)) {
                found = modes.in(topology.row(watch.probe()), free);
            }
            hertz.add(found.isEmpty() ? 0.0 : found.getFirst().hertz());
        }
        rings.add(new Outcome.Ring(now, hertz));
    }

    private List<Double> values() {
        return watches.stream().map(w -> w.value(z)).toList();
    }

    private void keep() {
        if (!recording) {
            return;
        }
        double[] line = new double[watches.size() + 1];
        line[0] = now;
        for (int p = 0; p < watches.size(); p++) {
            line[p + 1] = watches.get(p).value(z);
        }
        recorded.add(line);
    }

    private Outcome outcome() {
        Optional<Wave> wave = Optional.empty();
        if (recording) {
            double[] seconds = new double[recorded.size()];
            double[][] values = new double[watches.size()][recorded.size()];
            for (int i = 0; i < seconds.length; i++) {
                seconds[i] = recorded.get(i)[0];
                for (int p = 0; p < values.length; p++) {
                    values[p][i] = recorded.get(i)[p + 1];
                }
            }
            wave = Optional.of(new Wave(seconds, values));
        }
        return new Outcome(watches.stream().map(Watch::swing).toList(), happenings, rings, stepSeconds, wave);
    }
}
