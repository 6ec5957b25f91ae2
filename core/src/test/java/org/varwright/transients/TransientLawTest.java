package org.varwright.transients;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.Test;

/** Laws that every run keeps, on random circuits. A failure prints the seed. */
class TransientLawTest {
    private static final int ROUNDS = 12;

    /** Two legs behind one source a phase, three phases, the first leg's poles open; star points joined to ground or floating. */
    private record Sample(SwitchedCircuit circuit, double volts, List<Integer> poles, List<Integer> legs) {
        static Sample of(Random random, double volts) {
            List<Branch> branches = new ArrayList<>();
            List<Integer> poles = new ArrayList<>();
            List<Integer> legs = new ArrayList<>();
            boolean floating = random.nextBoolean();
            double l = 1e-3 * (0.5 + random.nextDouble());
            double r = random.nextDouble();
            for (int p = 0; p < 3; p++) {
                branches.add(Branch.source("s" + p, 1 + p, r, l, new Emf(volts, -120.0 * p)));
            }
            for (int stage = 0; stage < 2; stage++) {
                double own = 1e-4 * (0.2 + random.nextDouble());
                double ohms = 0.05 * random.nextDouble();
                double farads = 1e-5 * (0.5 + random.nextDouble());
                for (int p = 0; p < 3; p++) {
                    if (stage == 0) {
                        poles.add(branches.size());
                    }
                    branches.add(Branch.line("p" + p, 1 + p, 4 + 4 * stage + p, ohms, own));
                    legs.add(branches.size());
                    branches.add(Branch.capacitor(
                            "c" + p, 4 + 4 * stage + p, floating ? 7 + 4 * stage : 0, 0.0, 0.0, farads));
                }
            }
            return new Sample(new SwitchedCircuit(12, branches, 2.0 * Math.PI * 60.0), volts, poles, legs);
        }

        List<Act> closings(double spreadSeconds) {
            List<Act> acts = new ArrayList<>();
            for (int p = 0; p < 3; p++) {
                acts.add(new Act.Close(poles.get(p), p * spreadSeconds));
            }
            return acts;
        }

        List<Probe> probes() {
            List<Probe> probes = new ArrayList<>();
            poles.forEach(p -> probes.add(Probe.amperes("i" + p, p)));
            legs.forEach(l -> probes.add(Probe.capacitorVolts("u" + l, l)));
            return probes;
        }

        Setting setting() {
            return Setting.discharged(circuit, poles);
        }
    }

    private static void always(BiConsumer<Random, String> law) {
        for (int i = 0; i < ROUNDS; i++) {
            long seed = 7_000L + i;
            law.accept(new Random(seed), "seed " + seed);
        }
    }

    private static List<Double> peaks(Outcome outcome) {
        return outcome.swings().stream().map(Swing::peak).toList();
    }

    @Test
    void halfTheStepChangesNothing() {
        always((random, seed) -> {
            Sample sample = Sample.of(random, 10e3);
            double degrees = 360.0 * random.nextDouble();
            double step = Pace.seconds(sample.circuit());
            Outcome whole = run(sample, degrees, step);
            Outcome half = run(sample, degrees, step / 2.0);
            for (int p = 0; p < whole.swings().size(); p++) {
                Swing a = whole.swings().get(p);
                Swing b = half.swings().get(p);
                assertEquals(b.magnitude(), a.magnitude(), 1e-8 * b.magnitude(), seed);
                assertEquals(b.squareSeconds(), a.squareSeconds(), 1e-4 * b.squareSeconds(), seed);
            }
        });
    }

    private static Outcome run(Sample sample, double degrees, double step) {
        return Transient.run(sample.setting(), degrees, sample.closings(2e-4), sample.probes(), 0.02, false, step);
    }

    @Test
    void everythingGrowsWithTheVoltage() {
        always((random, seed) -> {
            long again = random.nextLong();
            double degrees = 360.0 * random.nextDouble();
            Sample one = Sample.of(new Random(again), 1e3);
            Sample ten = Sample.of(new Random(again), 1e4);
            List<Double> small =
                    peaks(Transient.run(one.setting(), degrees, one.closings(1e-4), one.probes(), 0.01, false));
            List<Double> large =
                    peaks(Transient.run(ten.setting(), degrees, ten.closings(1e-4), ten.probes(), 0.01, false));
            for (int p = 0; p < small.size(); p++) {
                assertEquals(large.get(p), 10.0 * small.get(p), 1e-8 * Math.abs(large.get(p)), seed);
            }
        });
    }

    /** A third of a turn later the same happens one phase on. */
    @Test
    void phasesChangePlaces() {
        always((random, seed) -> {
            Sample sample = Sample.of(random, 10e3);
            double degrees = 360.0 * random.nextDouble();
            List<Double> now =
                    peaks(Transient.run(sample.setting(), degrees, sample.closings(0.0), sample.probes(), 0.01, false));
            List<Double> later = peaks(Transient.run(
                    sample.setting(), degrees + 120.0, sample.closings(0.0), sample.probes(), 0.01, false));
            for (int p = 0; p < 3; p++) {
                assertEquals(now.get(p), later.get((p + 1) % 3), 1e-7 * Math.abs(now.get(p)), seed);
            }
        });
    }

    /** With trapped charge the response is that without, plus that of the charge with the source at rest. */
    @Test
    void trappedChargeSuperposes() {
        always((random, seed) -> {
            long again = random.nextLong();
            Sample live = Sample.of(new Random(again), 10e3);
            Sample dead = Sample.of(new Random(again), 0.0);
            List<Double> trapped = new ArrayList<>(live.setting().capacitorVolts());
            for (int p = 0; p < 3; p++) {
                trapped.set(live.legs().get(p), 1e4 * (random.nextDouble() - 0.5));
            }
            Wave both = wave(live, new Setting(live.circuit(), live.poles(), trapped));
            Wave source = wave(live, live.setting());
            Wave charge = wave(dead, new Setting(dead.circuit(), dead.poles(), trapped));
            for (int p = 0; p < both.values().length; p++) {
                double largest = 0.0;
                for (double v : both.values()[p]) {
                    largest = Math.max(largest, Math.abs(v));
                }
                for (int i = 0; i < both.seconds().length; i += 50) {
                    assertEquals(
                            both.values()[p][i], source.values()[p][i] + charge.values()[p][i], 1e-8 * largest, seed);
                }
            }
        });
    }

    private static Wave wave(Sample sample, Setting setting) {
        return Transient.run(setting, 35.0, sample.closings(1e-4), sample.probes(), 0.005, true)
                .wave()
                .orElseThrow();
    }

    /** Without source and resistance the energy in coils and capacitors stays. */
    @Test
    void energyStaysWithoutResistance() {
        always((random, seed) -> {
            double l = 1e-4 * (0.2 + random.nextDouble());
            double first = 1e-5 * (0.5 + random.nextDouble());
            double second = 1e-5 * (0.5 + random.nextDouble());
            SwitchedCircuit circuit = new SwitchedCircuit(
                    3,
                    List.of(
                            Branch.capacitor("one", 1, 0, 0.0, 0.0, first),
                            Branch.line("pole", 1, 2, 0.0, l),
                            Branch.capacitor("two", 2, 0, 0.0, 0.0, second)),
                    377.0);
            Wave wave = Transient.run(
                            new Setting(circuit, List.of(1), List.of(5e3, 0.0, -2e3)),
                            0.0,
                            List.of(new Act.Close(1, 0.0)),
                            List.of(
                                    Probe.amperes("i", 1),
                                    Probe.capacitorVolts("one", 0),
                                    Probe.capacitorVolts("two", 2)),
                            0.01,
                            true)
                    .wave()
                    .orElseThrow();
            double at = energy(wave, 0, l, first, second);
            for (int i = 1; i < wave.seconds().length; i++) {
                assertEquals(at, energy(wave, i, l, first, second), 1e-8 * at, seed);
            }
        });
    }

    private static double energy(Wave wave, int i, double l, double first, double second) {
        double a = wave.values()[0][i];
        double u = wave.values()[1][i];
        double v = wave.values()[2][i];
        return 0.5 * (l * a * a + first * u * u + second * v * v);
    }

    /** No angle that is tried gives more than the worst, and the worst is what a run at it gives. */
    @Test
    void noAngleIsWorseThanTheWorst() {
        always((random, seed) -> {
            Sample sample = Sample.of(random, 10e3);
            List<Act.Close> closings = new ArrayList<>();
            for (int p = 0; p < 3; p++) {
                closings.add(new Act.Close(sample.poles().get(p), p * 3e-4));
            }
            double seconds = 0.004;
            List<WorstAngle> worst = WorstAngle.of(
                    new WorstAngle.Memory(sample.circuit()), sample.setting(), closings, sample.probes(), seconds);
            for (int p = 0; p < worst.size(); p++) {
                double there = magnitude(sample, worst.get(p).degrees(), closings, seconds, p);
                assertEquals(worst.get(p).magnitude(), there, 0.006 * there, seed);
                assertTrue(there >= worst.get(p).magnitude() * (1.0 - 1e-9), seed);
                for (int k = 0; k < 4; k++) {
                    double elsewhere = magnitude(sample, 360.0 * random.nextDouble(), closings, seconds, p);
                    assertTrue(elsewhere <= there * 1.005, seed + ": " + elsewhere + " above " + there);
                }
            }
        });
    }

    private static double magnitude(
            Sample sample, double degrees, List<Act.Close> closings, double seconds, int probe) {
        return Transient.run(
                        sample.setting(),
                        degrees,
                        List.copyOf(closings),
                        List.of(sample.probes().get(probe)),
                        6e-4 + seconds,
                        false)
                .swings()
                .getFirst()
                .magnitude();
    }
}
