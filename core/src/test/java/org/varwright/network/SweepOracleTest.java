package org.varwright.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.quantity.Complex;

/** NET-9 against ngspice to all its digits: every unit of a double wye out, one after another. */
class SweepOracleTest {
    @Test
    void everyUnitOut(@TempDir Path folder) throws IOException, InterruptedException {
        Bank bank = Banks.plan(Connection.DOUBLE_WYE_UNGROUNDED, 1, 2, 4)
                .sensing(Banks.sensor(Protection.Senses.NEUTRAL_CURRENT, 100.0, 5.0))
                .bank();
        Supply supply = new Supply.Measured(
                Complex.polar(8000.0, 0.0), Complex.polar(7900.0, -119.0), Complex.polar(8100.0, 121.0));
        Capacitances capacitances = Banks.scattered(bank, new Random(9), 0.05);
        NgspiceSingles singles = NgspiceSingles.of(bank, supply, capacitances);
        Files.writeString(folder.resolve("singles.cir"), singles.deck("singles.raw"));
        List<NgspiceSingles.Case> cases = singles.read(ngspice(folder));
        Network network = Network.of(bank, bank.stages().getFirst(), capacitances, supply);
        Sweep sweep = network.sweep().orElseThrow();
        assertEquals(48, cases.size());
        double amperes = ((Solution.Solved) network.healthy())
                .lines()
                .getFirst()
                .amperes()
                .magnitude();
        for (NgspiceSingles.Case answers : cases) {
            String what = answers.out().name();
            assertTrue(sweep.set(sweep.fault(List.of(new Failure.UnitOut(answers.out())))), what);
            near(answers.neutralAmperes(), sweep.sensor(0), 1e-9 * amperes, what);
            Solution.Solved solved = (Solution.Solved) network.solve(List.of(new Failure.UnitOut(answers.out())));
            double highest = 0.0;
            for (Solution.UnitValue unit : solved.units()) {
                Complex volts = singles.volts(answers, unit.unit());
                near(
                        volts,
                        unit.volts(),
                        1e-9 * 8000.0,
                        what + ": " + unit.unit().name());
                boolean isIn = !unit.unit().equals(answers.out());
                highest = isIn ? Math.max(highest, volts.magnitude()) : highest;
            }
            double rated = bank.unitTypes().getFirst().ratedVolts();
            assertEquals(highest / rated, sweep.highestUnitPerRated(), 1e-9, what);
        }
    }

    private static byte[] ngspice(Path folder) throws IOException, InterruptedException {
        try {
            new ProcessBuilder("ngspice", "-b", "singles.cir")
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(folder.resolve("out.txt").toFile())
                    .start()
                    .waitFor();
        } catch (IOException e) {
            throw new AssertionError("ngspice is needed for this test; on Debian install the package ngspice", e);
        }
        return Files.readAllBytes(folder.resolve("singles.raw"));
    }

    private static void near(Complex expected, Complex actual, double tolerance, String what) {
        assertEquals(0.0, expected.minus(actual).magnitude(), tolerance, what + ": " + expected + ", got " + actual);
    }
}
