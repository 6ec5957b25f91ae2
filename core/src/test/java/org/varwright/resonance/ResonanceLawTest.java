package org.varwright.resonance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Harmonic;
import org.varwright.quantity.Complex;

/** Laws that hold for any source, load and stages. */
class ResonanceLawTest {
    private static final long SEED = 20260511L;
    private static final int TRIALS = 300;
    private static final double OMEGA = 2.0 * Math.PI * 60.0;
    private static final double VOLTS = 13.8e3;

    /** A stage of some bank: only what is seen from the bus counts here. */
    private static final StageModel MOULD = StageModel.of(BankText.bank(BankText.system("13.8", "280", ""), """
                    unit-types: [{name: U, rating: 300 kvar, voltage: 7.97 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}]
                    stages: [{name: S, connection: wye-ungrounded, groups: 1, units: 1, unit: U}]
                    """))
            .getFirst();

    private static BusModel random(Random random, boolean damped) {
        double x = 0.2 + random.nextDouble();
        SourceImpedance source = new SourceImpedance(damped ? x / (3.0 + 20.0 * random.nextDouble()) : 0.0, x, damped);
        double load = random.nextBoolean() ? 0.0 : 5e6 * random.nextDouble();
        LoadCase beside = new LoadCase("some load", damped ? load : 0.0, 0.7 * load, VOLTS);
        List<StageModel> stages = new ArrayList<>();
        int count = 1 + random.nextInt(4);
        for (int s = 0; s < count; s++) {
            double farads = 5e-6 + 60e-6 * random.nextDouble();
            double p = random.nextInt(3) == 0 ? 0.0 : 0.02 + 0.15 * random.nextDouble();
            double henries = p / (OMEGA * OMEGA * farads);
            double ohms = damped && p > 0.0 ? 0.02 * OMEGA * henries : 0.0;
            stages.add(new StageModel(MOULD.stage(), List.of(new SeriesBranch(farads, henries, ohms))));
        }
        return new BusModel(source, beside, stages, OMEGA, SourceImpedance.ResistanceLaw.CONSTANT);
    }

    /** Foster: orders of parallel and of series resonance take turns, beginning with a parallel one. */
    @Test
    void betweenTwoSeriesResonancesStandsOneParallel() {
        Random random = new Random(SEED);
        for (int t = 0; t < TRIALS; t++) {
            BusModel bus = random(random, false);
            List<Double> series = bus.seriesOrders(BusModel.HIGHEST_ORDER);
            List<Double> parallel = bus.parallelOrders();
            String what = "seed " + SEED + ", trial " + t + ": " + parallel + " and " + series;
            for (int i = 0; i < series.size(); i++) {
                double low = i == 0 ? 0.0 : series.get(i - 1);
                double high = series.get(i);
                assertEquals(
                        1, parallel.stream().filter(h -> h > low && h < high).count(), what);
            }
            // With nothing to damp it the impedance there is without bound, to rounding.
            for (double h : parallel) {
                assertTrue(bus.ohms(h) > 1e6 * bus.ohms(h * 0.99), what);
            }
        }
    }

    /** A dense walk finds no peak that was not named. */
    @Test
    void peaksAreWhereTheScanPeaks() {
        Random random = new Random(SEED + 1);
        for (int t = 0; t < 60; t++) {
            BusModel bus = random(random, false);
            List<Double> parallel = bus.parallelOrders();
            double step = 0.0005;
            double before = bus.ohms(1.0);
            double here = bus.ohms(1.0 + step);
            for (double h = 1.0 + 2.0 * step; h < 30.0; h += step) {
                double next = bus.ohms(h);
                double at = h - step;
                if (here > before && here > next) {
                    assertTrue(
                            parallel.stream().anyMatch(p -> Math.abs(p - at) < 3.0 * step),
                            "seed " + (SEED + 1) + ", trial " + t + ": a peak at " + at + ", named " + parallel);
                }
                before = here;
                here = next;
            }
        }
    }

    /** A current injected at the bus and a voltage behind the source are amplified alike. */
    @Test
    void oneAmplificationForBoth() {
        Random random = new Random(SEED + 2);
        for (int t = 0; t < TRIALS; t++) {
            BusModel bus = random(random, true);
            int order = 2 + random.nextInt(24);
            for (Harmonic harmonic : List.of(
                    new Harmonic(order, OptionalDouble.of(0.02), OptionalDouble.empty()),
                    new Harmonic(order, OptionalDouble.empty(), OptionalDouble.of(11.0)))) {
                HarmonicFlow.Order flow =
                        HarmonicFlow.of(bus, List.of(harmonic), 8e3).orders().getFirst();
                double amplified = flow.busVolts() / flow.busVoltsWithout();
                assertEquals(
                        bus.amplification(order), amplified, 1e-9 * amplified, "seed " + (SEED + 2) + ", trial " + t);
            }
        }
    }

    /** What is injected flows off through source, load and stages: as phasors the currents add up to it. */
    @Test
    void currentsAddUp() {
        Random random = new Random(SEED + 3);
        for (int t = 0; t < TRIALS; t++) {
            BusModel bus = random(random, true);
            int order = 2 + random.nextInt(24);
            HarmonicFlow.Order flow = HarmonicFlow.of(
                            bus, List.of(new Harmonic(order, OptionalDouble.empty(), OptionalDouble.of(7.0))), 8e3)
                    .orders()
                    .getFirst();
            // The bus voltage as a phasor, then every branch's current by its own admittance.
            Complex volts = new Complex(7.0, 0.0).dividedBy(bus.siemens(order));
            assertEquals(volts.magnitude(), flow.busVolts(), 1e-9 * flow.busVolts());
            Complex sum = volts.dividedBy(bus.source().ohms(order, bus.law()))
                    .plus(volts.times(bus.load().siemens(order)));
            for (int s = 0; s < bus.stages().size(); s++) {
                Complex amperes = volts.times(bus.stages().get(s).siemens(order * OMEGA));
                sum = sum.plus(amperes);
                double magnitude = amperes.magnitude();
                assertEquals(magnitude, flow.stages().get(s).amperes(), 1e-9 * magnitude);
                double share = volts.magnitude()
                        * bus.stages().get(s).branches().getFirst().capacitorShare(order * OMEGA);
                assertEquals(share, flow.stages().get(s).capacitorVolts(), 1e-9 * share);
            }
            assertEquals(7.0, sum.re(), 1e-9, "seed " + (SEED + 3) + ", trial " + t);
            assertEquals(0.0, sum.im(), 1e-9);
            assertEquals(
                    volts.dividedBy(bus.source().ohms(order, bus.law())).magnitude(), flow.sourceAmperes(), 1e-9 * 7.0);
        }
    }

    /** Stages alike in parallel are one of the sum; scaling every impedance scales what is seen. */
    @Test
    void stagesInParallelAddUp() {
        Random random = new Random(SEED + 4);
        for (int t = 0; t < TRIALS; t++) {
            SeriesBranch branch =
                    new SeriesBranch(5e-6 + 50e-6 * random.nextDouble(), 5e-3 * random.nextDouble(), 0.05);
            SeriesBranch twice = new SeriesBranch(2.0 * branch.farads(), branch.henries() / 2.0, branch.ohms() / 2.0);
            SourceImpedance source = new SourceImpedance(0.05, 0.6, true);
            LoadCase none = new LoadCase("no load", 0.0, 0.0, VOLTS);
            StageModel one = new StageModel(MOULD.stage(), List.of(branch));
            StageModel both = new StageModel(MOULD.stage(), List.of(twice));
            double order = 1.0 + 20.0 * random.nextDouble();
            double two = new BusModel(source, none, List.of(one, one), OMEGA, SourceImpedance.ResistanceLaw.CONSTANT)
                    .ohms(order);
            double single = new BusModel(source, none, List.of(both), OMEGA, SourceImpedance.ResistanceLaw.CONSTANT)
                    .ohms(order);
            assertEquals(single, two, 1e-9 * single, "seed " + (SEED + 4) + ", trial " + t);
        }
    }

    /** The wye-equivalent of any demonstration bank gives the reactive power that its network gives. */
    @Test
    void theModelGivesWhatTheNetworkGives() {
        Bank bank = BankText.bank(BankText.system("13.8", "280", ""), """
                unit-types:
                  - {name: H, rating: 150 kvar, voltage: 4.16 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
                  - {name: D, rating: 300 kvar, voltage: 13.8 kV, frequency: 60 Hz, tolerance: [0 %, +10 %], phases: 3, internal: delta}
                stages:
                  - {name: wye, connection: wye-grounded, groups: 2, units: 3, strings: 2, unit: H, reactor: {inductance: 2 mH, position: line, purpose: detuning}}
                  - {name: double, connection: double-wye-ungrounded, groups: 2, units: 2, second: {groups: 2, units: 3}, unit: H, reactor: {inductance: 0.9 mH, position: neutral, purpose: inrush}}
                  - {name: bridge, connection: bridge-ungrounded, groups: 1, units: 2, unit: H}
                  - {name: cans, connection: delta, groups: 1, units: 2, unit: D}
                """);
        for (StageModel model : StageModel.of(bank)) {
            double network = FundamentalDuty.of(bank, model.stage()).vars();
            assertEquals(
                    network,
                    model.vars(bank.system().nominalVolts(), bank.system().angularFrequency()),
                    1e-9 * network,
                    model.stage().name());
        }
    }
}
