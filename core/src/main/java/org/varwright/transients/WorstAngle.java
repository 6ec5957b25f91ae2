package org.varwright.transients;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ejml.data.DMatrixRMaj;

/**
 * The angle of the clock at which given closings do most, by superposition (SWI-13).
 *
 * <p>The state at any time is {@code x₁·cos θ + x₂·sin θ + x₃} with θ the angle at the start: three runs answer for all angles. At each time the worst
 * angle gives {@code |w·x₃| + hypot(w·x₁, w·x₂)}.
 *
 * @param magnitude largest magnitude found, at the times of the steps: up to 0.5 % below the peak between them
 * @param degrees angle at the start that gives it, 0 to 360
 * @param seconds when
 */
public record WorstAngle(double magnitude, double degrees, double seconds) {
    /** Topologies and their steps, kept between searches over the same circuit. */
    public static final class Memory {
        private final SwitchedCircuit circuit;
        private final double stepSeconds;
        private final Map<List<Boolean>, Place> places = new HashMap<>();

        public Memory(SwitchedCircuit circuit) {
            this.circuit = circuit;
            stepSeconds = Pace.seconds(circuit);
        }

        private Place at(boolean[] closed) {
            List<Boolean> key = new ArrayList<>();
            for (boolean c : closed) {
                key.add(c);
            }
            return places.computeIfAbsent(key, k -> {
                Topology topology = new Topology(circuit, closed, new double[circuit.nodes()]);
                return new Place(topology, Exponential.of(topology.matrix(), stepSeconds));
            });
        }
    }

    private record Place(Topology topology, DMatrixRMaj step) {}

    /**
     * The worst angle for each probe.
     *
     * @param memory of the circuit
     * @param setting where the runs start
     * @param closings in any order
     * @param probes what to watch
     * @param seconds to run after the last closing
     */
    public static List<WorstAngle> of(
            Memory memory, Setting setting, List<Act.Close> closings, List<Probe> probes, double seconds) {
        boolean[] closed = setting.circuit().allClosedBut(setting.open());
        Place place = memory.at(closed);
        SteadyState settled = SteadyState.of(place.topology(), setting.circuit().radiansPerSecond());
        double[][] z = {settled.cosine(), settled.sine(), setting.trapped(place.topology())};
        Best[] best = new Best[probes.size()];
        Arrays.setAll(best, i -> new Best());
        List<Act.Close> order = new ArrayList<>(closings);
        order.sort(Comparator.comparingDouble(Act.Close::seconds));
        double now = 0.0;
        double end = order.isEmpty() ? seconds : order.getLast().seconds() + seconds;
        int next = 0;
        while (now < end) {
            while (next < order.size() && order.get(next).seconds() <= now) {
                closed[order.get(next).branch()] = true;
                next++;
                if (next == order.size() || order.get(next).seconds() > now) {
                    Topology old = place.topology();
                    place = memory.at(closed);
                    for (int i = 0; i < 3; i++) {
                        z[i] = carried(old, place.topology(), z[i]);
                    }
                }
            }
            double until = next < order.size() ? order.get(next).seconds() : end;
            now = run(place, memory.stepSeconds, z, probes, best, now, until);
        }
        return Arrays.stream(best).map(Best::answer).toList();
    }

    private static double run(
            Place place, double step, double[][] z, List<Probe> probes, Best[] best, double from, double until) {
        Weights[] rows = new Weights[probes.size()];
        for (int p = 0; p < rows.length; p++) {
            rows[p] = Weights.of(place.topology().row(probes.get(p)));
        }
        double now = from;
        double[][] scratch = new double[3][z[0].length];
        while (now < until) {
            double length = Math.min(step, until - now);
            boolean whole = length == step;
            now = until - now - length <= 1e-12 * step ? until : now + length;
            if (whole) {
                Exponential.timesThree(place.step(), z, scratch);
            }
            for (int i = 0; i < 3; i++) {
                double[] before = z[i];
                z[i] = whole ? scratch[i] : Exponential.act(place.topology().matrix(), length, before);
                scratch[i] = before;
            }
            for (int p = 0; p < rows.length; p++) {
                best[p].see(rows[p].sum(z[0]), rows[p].sum(z[1]), rows[p].sum(z[2]), now);
            }
        }
        return now;
    }

    /** A state in the loops of another topology. */
    private static double[] carried(Topology old, Topology fresh, double[] z) {
        double[] out = new double[fresh.size()];
        System.arraycopy(z, 0, out, 0, old.firstLoop());
        for (int k = 0; k < fresh.loopCount(); k++) {
            out[fresh.firstLoop() + k] =
                    Exponential.dot(old.amperes(fresh.links().get(k)), z);
        }
        return out;
    }

    private static final class Best {
        private double magnitude = -1.0;
        private double degrees;
        private double seconds;

        void see(double cosine, double sine, double fixed, double at) {
            if (Math.abs(fixed) + Math.abs(cosine) + Math.abs(sine) <= magnitude) {
                // out of reach at any angle; the root is dear
                return;
            }
            double swing = Math.hypot(cosine, sine);
            double value = Math.abs(fixed) + swing;
            // Equal to rounding, the first counts: the same answer in every home of the code.
            if (value > magnitude * (1.0 + 1e-9)) {
                magnitude = value;
                double sign = fixed < 0.0 ? -1.0 : 1.0;
                double angle = Math.toDegrees(Math.atan2(sign * sine, sign * cosine));
                degrees = angle < 0.0 ? angle + 360.0 : angle;
                seconds = at;
            }
        }

        WorstAngle answer() {
            return new WorstAngle(Math.max(0.0, magnitude), degrees, seconds);
        }
    }
}
