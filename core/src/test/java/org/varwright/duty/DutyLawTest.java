package org.varwright.duty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Standard;
import org.varwright.limit.ShortTimeTable;
import org.varwright.limit.Stress;
import org.varwright.resonance.BankText;
import org.varwright.resonance.FundamentalDuty;
import org.varwright.resonance.SourceImpedance;

/** Laws of stress, rise and power factor. */
class DutyLawTest {
    private static final long SEED = 20260512L;

    private static final Bank BANK = BankText.bank(BankText.system("13.8", "280", ", x-over-r: 11"), """
            unit-types:
              - {name: U, rating: 300 kvar, voltage: 8.32 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
            stages:
              - {name: S, connection: wye-ungrounded, groups: 1, units: 2, unit: U, reactor: {inductance: 18 mH, position: line, purpose: detuning}}
              - {name: T, connection: double-wye-ungrounded, groups: 1, units: 2, unit: U}
            """);

    /** Voltage and current go with the bus voltage, reactive power with its square; harmonics only add. */
    @Test
    void stressFollowsTheVoltage() {
        Random random = new Random(SEED);
        FundamentalDuty duty = FundamentalDuty.of(BANK, BANK.stages().getFirst());
        Stress one = duty.at(1.0, List.of());
        for (int t = 0; t < 200; t++) {
            double factor = 0.5 + random.nextDouble();
            Stress plain = duty.at(factor, List.of());
            assertEquals(one.voltage() * factor, plain.voltage(), 1e-12);
            assertEquals(one.current() * factor, plain.current(), 1e-12);
            assertEquals(one.reactivePower() * factor * factor, plain.reactivePower(), 1e-12);
            Stress with = duty.at(
                    factor,
                    List.of(
                            new Stress.Component(5, random.nextDouble()),
                            new Stress.Component(7, random.nextDouble())));
            String what = "seed " + SEED + ", trial " + t;
            assertTrue(with.voltage() >= plain.voltage() && with.crest() >= with.voltage(), what);
            assertTrue(with.current() / plain.current() >= with.voltage() / plain.voltage(), what);
            assertTrue(with.reactivePower() >= plain.reactivePower(), what);
        }
    }

    /** Seen as put to its own system, a stage gives what it gives. */
    @Test
    void elsewhereIsTheSystemItself() {
        Duty duty = Duty.of(BANK, Questions.elsewhere(13.8e3, 60.0));
        for (Relocation r : duty.relocations()) {
            assertEquals(r.varsHere(), r.varsThere(), 1e-6);
        }
        Relocation half =
                Duty.of(BANK, Questions.elsewhere(6.9e3, 60.0)).relocations().getLast();
        assertEquals(half.varsHere() / 4.0, half.varsThere(), 1e-6);
        // Without a reactor the output follows the frequency.
        Relocation slower =
                Duty.of(BANK, Questions.elsewhere(13.8e3, 50.0)).relocations().getLast();
        assertEquals(slower.varsHere() * 50.0 / 60.0, slower.varsThere(), 1e-6);
    }

    /** More reactive power lifts more, a stiffer source less; without resistance the rise is q/(1 − q). */
    @Test
    void riseGrowsWithReactivePower() {
        Random random = new Random(SEED + 1);
        for (int t = 0; t < 500; t++) {
            double x = 0.1 + random.nextDouble();
            double volts = 13.8e3;
            double vars = 1e5 + 5e6 * random.nextDouble();
            String what = "seed " + (SEED + 1) + ", trial " + t;
            VoltageRise rise = VoltageRise.of("", vars, new SourceImpedance(0.0, x, false), volts);
            double q = vars * x / (volts * volts);
            assertEquals(q / (1.0 - q), rise.exact(), 1e-12, what);
            assertEquals(q, rise.byRule(), 1e-12, what);
            assertTrue(
                    VoltageRise.of("", 1.1 * vars, new SourceImpedance(0.0, x, false), volts)
                                    .exact()
                            > rise.exact(),
                    what);
            assertTrue(
                    VoltageRise.of("", vars, new SourceImpedance(0.0, 0.9 * x, false), volts)
                                    .exact()
                            < rise.exact(),
                    what);
            // Resistance turns the rise and takes from it.
            assertTrue(
                    VoltageRise.of("", vars, new SourceImpedance(0.3 * x, x, true), volts)
                                    .exact()
                            < rise.exact(),
                    what);
        }
    }

    /** The reactive power wanted brings the power factor wanted. */
    @Test
    void wantedVarsBringThePowerFactor() {
        Random random = new Random(SEED + 2);
        for (int t = 0; t < 500; t++) {
            double watts = 1e5 + 1e7 * random.nextDouble();
            double vars = watts * 1.5 * random.nextDouble();
            double wanted = 0.7 + 0.3 * random.nextDouble();
            double given = PowerFactor.varsWanted(watts, vars, wanted);
            assertEquals(wanted, PowerFactor.of(watts, vars - given), 1e-12, "seed " + (SEED + 2) + ", trial " + t);
        }
    }

    /** Longer never allows more, higher is never allowed longer. */
    @Test
    void shortTimeTablesFall() {
        Random random = new Random(SEED + 3);
        for (Standard standard : Standard.values()) {
            ShortTimeTable table = ShortTimeTable.of(standard, 50.0);
            for (int t = 0; t < 500; t++) {
                double a = Math.pow(10.0, -2.0 + 6.0 * random.nextDouble());
                double b = a * (1.0 + random.nextDouble());
                String what = "seed " + (SEED + 3) + ", trial " + t;
                assertTrue(table.highest(b) <= table.highest(a), what);
                double height = 1.0 + 1.3 * random.nextDouble();
                assertTrue(!table.within(height, b) || table.within(height, a), what);
                assertTrue(!table.within(height * 1.1, a) || table.within(height, a), what);
                assertTrue(table.within(table.highest(a), a), what);
            }
        }
    }

    /** A control hunts exactly where a step is as wide as its band. */
    @Test
    void huntingIsAtTheBand() {
        Random random = new Random(SEED + 4);
        for (int t = 0; t < 500; t++) {
            double band = 0.1 + random.nextDouble();
            double step = 2.0 * band * random.nextDouble();
            assertEquals(
                    step >= band,
                    DeadBand.judge(step, band) == org.varwright.basis.Verdict.FAIL,
                    "seed " + (SEED + 4) + ", trial " + t);
        }
        assertEquals(org.varwright.basis.Verdict.FAIL, DeadBand.judge(4.5, 4.5));
    }
}
