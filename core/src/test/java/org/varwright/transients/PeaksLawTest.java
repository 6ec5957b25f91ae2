package org.varwright.transients;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Peaks and integrals against the same run written down step by step. A failure prints the seed. */
class PeaksLawTest {
    private static final int CASES = 50;
    private static final double STEP = 5e-6;

    /**
     * One phase, with everything that can happen to it.
     *
     * <pre>
     *   ground ──(e)─R─L── 1 ──[pole 1]── 2 ──L── 3 ──┤├── ground        pole 1 opens and may restrike;
     *                      └───[pole 2]── 4 ──L── 5 ──┤├── ground        pole 2 closes later
     * </pre>
     */
    private record Case(Setting setting, double degrees, List<Act> acts, List<Probe> probes) {
        static Case of(SplittableRandom random) {
            double l = 1e-3 * random.nextDouble(0.5, 2.0);
            List<Branch> branches = List.of(
                    Branch.source("source", 1, random.nextDouble(0.0, 0.5), l, new Emf(10e3, random.nextDouble(360.0))),
                    Branch.line("pole 1", 1, 2, 0.0, 0.0),
                    Branch.line("coil 1", 2, 3, 0.01, l * random.nextDouble(0.5, 1.0)),
                    Branch.capacitor("leg 1", 3, 0, 0.0, 0.0, 1e-5 * random.nextDouble(0.5, 2.0)),
                    Branch.line("pole 2", 1, 4, 0.0, 0.0),
                    Branch.line("coil 2", 4, 5, 0.02, l * random.nextDouble(0.5, 1.0)),
                    Branch.capacitor("leg 2", 5, 0, 0.0, 0.0, 1e-5 * random.nextDouble(0.5, 2.0)));
            SwitchedCircuit circuit = new SwitchedCircuit(6, branches, 2.0 * Math.PI * 60.0);
            List<Act> acts = new ArrayList<>();
            acts.add(new Act.Open(1, random.nextDouble(0.0, 0.006)));
            acts.add(new Act.Restrike(1, random.nextDouble(5e3, 18e3)));
            acts.add(new Act.Close(4, random.nextDouble(0.0, 0.012)));
            List<Double> trapped = new ArrayList<>();
            branches.forEach(b -> trapped.add(b.farads().isPresent() ? random.nextDouble(-1e4, 1e4) : 0.0));
            List<Probe> probes = List.of(
                    Probe.amperes("i1", 1),
                    Probe.amperes("i2", 4),
                    Probe.capacitorVolts("u1", 3),
                    Probe.capacitorVolts("u2", 6),
                    Probe.nodeVolts("bus", 1),
                    Probe.between("across", 1, 2));
            return new Case(new Setting(circuit, List.of(4), trapped), random.nextDouble(360.0), acts, probes);
        }

        Outcome run(double seconds) {
            return Transient.run(setting, degrees, acts, probes, seconds, true, STEP);
        }
    }

    private interface Law {
        void holds(Case of, Outcome outcome, double seconds, String seed);
    }

    private static void always(Law law) {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Case of = Case.of(random);
            // long runs, and some that end within a step or two, where a peak may stand at the start
            double seconds =
                    random.nextInt(4) == 0 ? STEP * random.nextDouble(0.1, 3.0) : random.nextDouble(0.002, 0.02);
            law.holds(of, of.run(seconds), seconds, "seed " + seed);
        }
    }

    /** Nothing that was written down lies above the peak that is told. */
    @Test
    void noMomentLiesAboveThePeak() {
        always((of, outcome, seconds, seed) -> {
            double[][] values = outcome.wave().orElseThrow().values();
            for (int p = 0; p < values.length; p++) {
                double largest = 0.0;
                for (double value : values[p]) {
                    largest = Math.max(largest, Math.abs(value));
                }
                double told = outcome.swings().get(p).magnitude();
                String what = seed + " " + of.probes().get(p).name();
                assertTrue(told >= largest * (1.0 - 1e-9), what + ": " + told + " below " + largest);
                // between two steps it can be higher by (π/steps of an oscillation)²/2 at most
                assertTrue(told <= largest * 1.01 + 1e-6, what + ": " + told + " far above " + largest);
            }
        });
    }

    /** The peak is what the same run stands at when it is ended there, sign and all. */
    @Test
    void thePeakStandsWhereItIsTold() {
        always((of, outcome, seconds, seed) -> {
            Swing swing = outcome.swings().get(2);
            assertTrue(swing.seconds() >= 0.0 && swing.seconds() <= seconds, seed);
            double[] until = of.run(swing.seconds()).wave().orElseThrow().values()[2];
            assertEquals(swing.peak(), until[until.length - 1], 1e-6 * (1.0 + swing.magnitude()), seed);
        });
    }

    /** The integral of the square by the trapezoid rule over the written steps, which knows nothing of slopes. */
    @Test
    void squaresAddUp() {
        always((of, outcome, seconds, seed) -> {
            Wave wave = outcome.wave().orElseThrow();
            for (int p = 0; p < 4; p++) {
                double sum = 0.0;
                for (int i = 1; i < wave.seconds().length; i++) {
                    double a = wave.values()[p][i - 1];
                    double b = wave.values()[p][i];
                    sum += (wave.seconds()[i] - wave.seconds()[i - 1]) * (a * a + a * b + b * b) / 3.0;
                }
                assertEquals(sum, outcome.swings().get(p).squareSeconds(), 3e-3 * sum + 1e-12, seed);
            }
        });
    }

    /** No charge jumps: a capacitor's voltage is the same before and after whatever happens; a current is cut only at its zero. */
    @Test
    void whatHappensMovesNoChargeAtOnce() {
        Map<Happening.Kind, Integer> seen = new EnumMap<>(Happening.Kind.class);
        always((of, outcome, seconds, seed) -> {
            for (Happening happening : outcome.happenings()) {
                seen.merge(happening.kind(), 1, Integer::sum);
                for (int p = 0; p < 4; p++) {
                    assertEquals(happening.before().get(p), happening.after().get(p), 1e-5, seed + " " + happening);
                }
            }
        });
        for (Happening.Kind kind : Happening.Kind.values()) {
            int times = seen.getOrDefault(kind, 0);
            assertTrue(times > 5, kind + " was seen " + times + " times");
        }
    }

    /** A restrike comes when the voltage across the pole reaches what was said, not before and not beyond. */
    @Test
    void aRestrikeComesAtItsVoltage() {
        always((of, outcome, seconds, seed) -> {
            double volts = ((Act.Restrike) of.acts().get(1)).volts();
            double opened = Double.POSITIVE_INFINITY;
            for (Happening happening : outcome.happenings()) {
                if (happening.kind() == Happening.Kind.OPENED) {
                    opened = happening.seconds();
                    assertTrue(opened >= ((Act.Open) of.acts().get(0)).seconds(), seed);
                }
                if (happening.kind() == Happening.Kind.RESTRUCK) {
                    double across = Math.abs(happening.before().get(5));
                    // already beyond when it opened, or at the moment when it is reached
                    assertTrue(
                            happening.seconds() == opened ? across >= volts : Math.abs(across - volts) < 1e-3,
                            seed + " " + happening);
                    assertEquals(0.0, happening.after().get(5), 1e-5, seed);
                }
            }
        });
    }

    /**
     * A charged capacitor is put between a source and a coil while the source nears its peak, against it. The coil's voltage jumps up, dips where the source
     * is at its peak, and the run ends before it stands as high again: all within one long step.
     *
     * <pre>
     *   ground ──(e)──L── 1 ──[pole]── 2 ──┤├── 3 ──coil── ground      v3 = (e − 3000)·L_coil/(L + L_coil)
     *                                   3 kV
     * </pre>
     */
    @Test
    void aDipRightAfterAJumpDoesNotPassForThePeak() {
        double omega = 2.0 * Math.PI * 60.0;
        SwitchedCircuit circuit = new SwitchedCircuit(
                4,
                List.of(
                        Branch.source("source", 1, 0.0, 1e-3, new Emf(1000.0, 0.0)),
                        Branch.line("pole", 1, 2, 0.0, 0.0),
                        Branch.capacitor("charged", 2, 3, 0.0, 0.0, 1.0),
                        Branch.line("coil", 3, 0, 0.0, 10.0)),
                omega);
        Swing swing = Transient.run(
                        new Setting(circuit, List.of(1), List.of(0.0, 0.0, 3000.0, 0.0)),
                        90.0 - Math.toDegrees(omega * 3e-4),
                        List.of(new Act.Close(1, 0.0)),
                        List.of(Probe.nodeVolts("coil", 3)),
                        4e-4,
                        false,
                        1e-3)
                .swings()
                .getFirst();
        assertEquals(-(3000.0 - 1000.0 * Math.cos(omega * 3e-4)) * 10.0 / 10.001, swing.peak(), 1e-3);
        assertEquals(0.0, swing.seconds());
    }

    /** A charged capacitor on a coil: {@code i = U·√(C/L)·sin ωt}, {@code ∫i²dt = Î²/2·(T − sin 2ωT/2ω)}; ended where the sine counts most. */
    @Test
    void theSquareOfARingingCurrentByHand() {
        double l = 1e-3;
        double c = 1e-5;
        double omega = 1.0 / Math.sqrt(l * c);
        SwitchedCircuit circuit = new SwitchedCircuit(
                3,
                List.of(
                        Branch.capacitor("charged", 1, 0, 0.0, 0.0, c),
                        Branch.line("pole", 1, 2, 0.0, 0.0),
                        Branch.line("coil", 2, 0, 0.0, l)),
                2.0 * Math.PI * 60.0);
        for (double turns : new double[] {0.125, 0.375, 1.125}) {
            double end = turns * 2.0 * Math.PI / omega;
            Swing swing = Transient.run(
                            new Setting(circuit, List.of(1), List.of(1000.0, 0.0, 0.0)),
                            0.0,
                            List.of(new Act.Close(1, 0.0)),
                            List.of(Probe.amperes("i", 1)),
                            end,
                            false)
                    .swings()
                    .getFirst();
            double peak = 1000.0 * Math.sqrt(c / l);
            double expected = peak * peak / 2.0 * (end - Math.sin(2.0 * omega * end) / (2.0 * omega));
            assertEquals(expected, swing.squareSeconds(), 1e-4 * expected, turns + " turns");
            // a quarter turn brings it to its crest; before that it is highest at the end
            assertEquals(peak * (turns < 0.25 ? Math.sin(omega * end) : 1.0), swing.magnitude(), 1e-9 * peak);
        }
    }
}
