package org.varwright.discharge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Standard;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;

/** Laws that hold for any bank; a failure prints the seed that repeats it. */
class DischargeLawTest {
    private static final int CASES = 400;

    @Test
    void timeAndVoltageAreEachOthersInverse() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            double c = Math.exp(random.nextDouble(Math.log(1e-9), Math.log(1e-2)));
            double r = Math.exp(random.nextDouble(Math.log(1e3), Math.log(1e9)));
            double v0 = random.nextDouble(100.0, 40e3);
            double target = v0 * random.nextDouble(0.001, 0.9);
            double t = Decay.secondsTo(c, r, v0, target);
            assertEquals(target, Decay.voltsAfter(c, r, v0, t), 1e-9 * target, "seed " + seed);
            assertEquals(r, Decay.resistanceFor(c, v0, target, t), 1e-9 * r, "seed " + seed);
            assertEquals(0.25, Decay.energyJoules(c, v0 / 2.0) / Decay.energyJoules(c, v0), 1e-12, "seed " + seed);
        }
    }

    @Test
    void noBankWaitsLessThanItsStandardOrItsDecay() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Bank bank = bank(random, 1.0);
            StageDischarge stage = Discharge.of(bank, Optional.empty()).stages().getFirst();
            String at = "seed " + seed;
            assertTrue(stage.waitSeconds() >= stage.chosen().seconds(), at);
            assertTrue(stage.waitSeconds() >= 300.0, at);
            assertTrue(stage.waitSeconds() >= stage.chosenSeconds().orElseThrow(), at);
            assertTrue(stage.endVolts() <= stage.chosen().volts() * (1.0 + 1e-9), at);
            assertTrue(
                    stage.opening().initialVolts()
                            >= Math.sqrt(2.0) * stage.stage().unit().ratedVolts() - 1e-6,
                    at);
            assertTrue(stage.unitEndJoules() <= stage.unitPeakJoules(), at);
            assertTrue(stage.betweenConductorsVolts() >= stage.endVolts() - 1e-9, at);
        }
    }

    /** A slower resistor never shortens a wait. */
    @Test
    void waitGrowsWithResistance() {
        for (long seed = 1; seed <= CASES; seed++) {
            double slow = Discharge.of(bank(new SplittableRandom(seed), 1.7), Optional.empty())
                    .longestWaitSeconds();
            double quick = Discharge.of(bank(new SplittableRandom(seed), 1.0), Optional.empty())
                    .longestWaitSeconds();
            assertTrue(slow >= quick, "seed " + seed);
        }
    }

    private static Bank bank(SplittableRandom random, double times) {
        Connection[] connections = Connection.values();
        UnitType type = BankSketch.type(
                "U",
                random.nextDouble(50e3, 900e3),
                random.nextDouble(2000, 20e3),
                60,
                new Tolerance(0.0, random.nextDouble(0.0, 0.15)),
                random.nextInt(2, 12),
                random.nextInt(1, 20),
                false,
                Optional.of(new DischargeDevice.Resistor(times * random.nextDouble(0.5e6, 60e6))));
        return new BankSketch()
                .standard(random.nextBoolean() ? Standard.IEEE : Standard.IEC)
                .system(
                        random.nextDouble(2400, 38e3),
                        60,
                        random.nextBoolean() ? SystemGrounding.SOLID : SystemGrounding.RESONANT)
                .stage(
                        "s",
                        connections[random.nextInt(connections.length)],
                        new LegLayout(random.nextInt(1, 4), random.nextInt(1, 5), random.nextInt(1, 9)),
                        type)
                .build();
    }
}
