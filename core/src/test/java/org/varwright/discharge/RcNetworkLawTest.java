package org.varwright.discharge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Laws of capacitances with resistances across them, on random networks; a failure prints the seed that repeats it. */
class RcNetworkLawTest {
    private static final int CASES = 200;

    /** A random connected network of up to seven nodes, with a loop or two. */
    private static List<RcNetwork.Branch> branches(SplittableRandom random, int nodes) {
        List<RcNetwork.Branch> branches = new ArrayList<>();
        for (int i = 1; i < nodes; i++) {
            branches.add(branch(random, i, random.nextInt(i)));
        }
        for (int extra = random.nextInt(3); extra > 0; extra--) {
            int from = random.nextInt(nodes);
            branches.add(branch(random, from, (from + 1) % nodes));
        }
        return branches;
    }

    private static RcNetwork.Branch branch(SplittableRandom random, int from, int to) {
        return new RcNetwork.Branch(
                from,
                to,
                random.nextDouble(1e-6, 50e-6),
                random.nextInt(5) == 0 ? 0.0 : 1.0 / random.nextDouble(1e6, 50e6));
    }

    private static double[] volts(SplittableRandom random, int count) {
        double[] volts = new double[count];
        for (int i = 0; i < count; i++) {
            volts[i] = random.nextDouble(-20e3, 20e3);
        }
        return volts;
    }

    private static double energy(List<RcNetwork.Branch> branches, double[] volts) {
        double joules = 0.0;
        for (int b = 0; b < volts.length; b++) {
            joules += Decay.energyJoules(branches.get(b).farads(), volts[b]);
        }
        return joules;
    }

    /** A wye that is open at its poles has no loop: every unit decays through its own resistor alone. */
    @Test
    void withoutALoopEveryBranchDecaysByItself() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int nodes = random.nextInt(2, 8);
            List<RcNetwork.Branch> tree = branches(random, nodes).subList(0, nodes - 1);
            double[] start = volts(random, tree.size());
            double t = random.nextDouble(0.0, 900.0);
            double[] after = new RcNetwork(nodes, tree).from(start).voltsAfter(t);
            for (int b = 0; b < tree.size(); b++) {
                double alone = start[b]
                        * Math.exp(-t * tree.get(b).siemens() / tree.get(b).farads());
                assertEquals(alone, after[b], 1e-7 * Math.abs(start[b]) + 1e-7, "seed " + seed);
            }
        }
    }

    /** Two steps of time are one of their sum; energy never grows; round every loop the voltages fit at once. */
    @Test
    void stepsAddUpAndEnergyNeverGrows() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int nodes = random.nextInt(3, 8);
            List<RcNetwork.Branch> branches = branches(random, nodes);
            RcNetwork network = new RcNetwork(nodes, branches);
            double[] start = network.from(volts(random, branches.size())).voltsAfter(0.0);
            double a = random.nextDouble(1.0, 300.0);
            double b = random.nextDouble(1.0, 300.0);
            double[] once = network.from(start).voltsAfter(a + b);
            double[] middle = network.from(start).voltsAfter(a);
            double[] twice = network.from(middle).voltsAfter(b);
            for (int i = 0; i < once.length; i++) {
                assertEquals(once[i], twice[i], 1e-6, "seed " + seed);
            }
            assertTrue(energy(branches, middle) <= energy(branches, start) * (1.0 + 1e-12), "seed " + seed);
            assertTrue(energy(branches, once) <= energy(branches, middle) * (1.0 + 1e-12) + 1e-12, "seed " + seed);
        }
    }

    /** No network decays slower than its slowest unit by itself: what is left in energy is bounded by that unit's time constant. */
    @Test
    void theSlowestUnitRulesAnyNetwork() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int nodes = random.nextInt(3, 8);
            List<RcNetwork.Branch> branches = branches(random, nodes);
            double slowest = branches.stream()
                    .mapToDouble(b -> b.siemens() / b.farads())
                    .min()
                    .orElseThrow();
            RcNetwork network = new RcNetwork(nodes, branches);
            double[] start = network.from(volts(random, branches.size())).voltsAfter(0.0);
            double t = random.nextDouble(1.0, 600.0);
            double bound = energy(branches, start) * Math.exp(-2.0 * slowest * t);
            double left = energy(branches, network.from(start).voltsAfter(t));
            assertTrue(left <= bound * (1.0 + 1e-9) + 1e-9, "seed " + seed);
        }
    }

    /**
     * Forward Euler in small steps, which knows nothing of modes.
     *
     * <pre>
     *   ┌─ C1‖R1 ─┬─ C2‖R2 ─┬─ C3 (resistor open) ─┐   ends joined
     *   └─────────┴─────────┴──────────────────────┘
     * </pre>
     */
    @Test
    void aRingDecaysAsSmallStepsSay() {
        double[] farads = {10e-6, 12e-6, 9e-6};
        double[] siemens = {1.0 / 4e6, 1.0 / 5e6, 0.0};
        List<RcNetwork.Branch> ring = List.of(
                new RcNetwork.Branch(0, 1, farads[0], siemens[0]),
                new RcNetwork.Branch(1, 2, farads[1], siemens[1]),
                new RcNetwork.Branch(2, 0, farads[2], siemens[2]));
        double[] v =
                new RcNetwork(3, ring).from(new double[] {0.0, 0.0, 6000.0}).voltsAfter(0.0);
        assertEquals(0.0, v[0] + v[1] + v[2], 1e-9);
        double[] exact = new RcNetwork(3, ring).from(v).voltsAfter(120.0);
        double step = 1e-3;
        double perFarad = 1.0 / farads[0] + 1.0 / farads[1] + 1.0 / farads[2];
        for (int n = 0; n < 120_000; n++) {
            double drop = 0.0;
            for (int i = 0; i < 3; i++) {
                drop += siemens[i] * v[i] / farads[i];
            }
            double loop = drop / perFarad;
            for (int i = 0; i < 3; i++) {
                v[i] += step * (loop - siemens[i] * v[i]) / farads[i];
            }
        }
        for (int i = 0; i < 3; i++) {
            assertEquals(v[i], exact[i], 0.2);
        }
    }

    /** DIS-8: with its ends joined, a string of S equal units of which one has an open resistor decays with S·R·C. */
    @Test
    void aJoinedStringWithOneOpenResistorDecaysSTimesSlower() {
        double farads = 10e-6;
        double ohms = 4e6;
        for (int s = 2; s <= 12; s++) {
            List<RcNetwork.Branch> ring = new ArrayList<>();
            double[] start = new double[s];
            for (int i = 0; i < s; i++) {
                ring.add(new RcNetwork.Branch(i, (i + 1) % s, farads, i == 0 ? 0.0 : 1.0 / ohms));
            }
            start[0] = 5000.0;
            RcNetwork.Course course = new RcNetwork(s, ring).from(start);
            assertEquals(5000.0 * (s - 1) / s, course.voltsAfter(0.0)[0], 1e-6);
            assertEquals(-5000.0 / s, course.voltsAfter(0.0)[1], 1e-6);
            assertEquals(5000.0 * (s - 1) / s * Math.exp(-1.0), course.voltsAfter(s * ohms * farads)[0], 1e-6);
        }
    }
}
