package org.varwright.discharge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.LegLayout;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;

/** What was read on single units makes a wait longer, never shorter; nobody waits less than the slowest unit that can be reckoned with. */
class UnitReadingsTest {
    private static final double OHMS = 8e6;

    private static Bank bank(Connection connection, Optional<DischargeDevice> discharge) {
        UnitType type = BankSketch.type("U", 200e3, 7200, 60, new Tolerance(0.0, 0.10), 4, 10, false, discharge);
        return new BankSketch()
                .system(12.47e3, 60, SystemGrounding.SOLID)
                .stage("s", connection, new LegLayout(1, 1, 2), type)
                .build();
    }

    private static Bank bank(Connection connection) {
        return bank(connection, Optional.of(new DischargeDevice.Resistor(OHMS)));
    }

    private static Discharge read(Bank bank, Map<UnitPosition, Double> ohms, Map<UnitPosition, Double> farads) {
        return Discharge.of(bank, Question.NOTHING_MORE.with(new UnitReadings(ohms, farads)));
    }

    /** A unit with one of four sections shorted reads C·4/3 = 13.645 µF; its resistor, not read, may be at the slow end of 8.8 MΩ. */
    @Test
    void aLargeCapacitanceAloneMakesTheWaitLonger() {
        Bank bank = bank(Connection.WYE_GROUNDED);
        UnitPosition at = bank.position("s/B/u2").orElseThrow();
        double nameplate = 200e3 / (2.0 * Math.PI * 60.0 * 7200.0 * 7200.0);
        double farads = nameplate * 4.0 / 3.0;
        StageDischarge stage = read(bank, Map.of(), Map.of(at, farads)).stages().getFirst();
        double seconds = 1.1 * OHMS * farads * Math.log(stage.opening().initialVolts() / 50.0);
        assertEquals(Math.ceil(seconds), stage.waitSeconds());
        assertTrue(stage.waitSeconds() > Discharge.of(bank, Optional.empty()).longestWaitSeconds());
        assertEquals(farads, stage.capacitanceFarads());
        // the resistance is the nameplate's still, and says so
        assertEquals(
                "R = (1 + s)·R_nameplate",
                ((Resistance.Known) stage.resistance()).basis().formula());
    }

    @Test
    void theSlowestOfAllThatWasReadCounts() {
        Bank bank = bank(Connection.WYE_UNGROUNDED);
        UnitPosition slow = bank.position("s/A/u1").orElseThrow();
        UnitPosition quick = bank.position("s/C/u2").orElseThrow();
        StageDischarge stage = read(bank, Map.of(slow, 20e6, quick, 9e6), Map.of(slow, 10e-6, quick, 12e-6))
                .stages()
                .getFirst();
        assertEquals(20e6 * 10e-6, stage.timeConstantSeconds().orElseThrow(), 1e-9);
        assertEquals("of the slowest unit that was read", stage.capacitanceFrom());
        // just quicker than the nameplate allows: nothing changes
        double upper = 1.1 * 200e3 / (2.0 * Math.PI * 60.0 * 7200.0 * 7200.0);
        assertEquals(
                "upper tolerance of the nameplate",
                read(bank, Map.of(slow, 1.0999 * OHMS), Map.of(slow, upper))
                        .stages()
                        .getFirst()
                        .capacitanceFrom());
        // readings of single units don't make a type's resistor known
        Bank bare = bank(Connection.WYE_UNGROUNDED, Optional.empty());
        assertTrue(!read(bare, Map.of(bare.position("s/A/u1").orElseThrow(), 5e6), Map.of())
                .stages()
                .getFirst()
                .isKnown());
    }

    /** Any readings, on any connection: the wait is that without them or more, and every unit with a resistor is below the safe voltage at its end. */
    @Test
    void atTheEndOfTheWaitEveryUnitThatDrainsIsBelowTheSafeVoltage() {
        for (long seed = 1; seed <= 200; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<Connection> connections = List.of(Connection.values());
            Bank bank = bank(connections.get(random.nextInt(connections.size())));
            Map<UnitPosition, Double> ohms = new HashMap<>();
            Map<UnitPosition, Double> farads = new HashMap<>();
            for (UnitPosition at : bank.stages().getFirst().positions()) {
                if (random.nextInt(3) == 0) {
                    ohms.put(at, random.nextInt(4) == 0 ? Double.POSITIVE_INFINITY : random.nextDouble(1e6, 30e6));
                }
                if (random.nextInt(3) == 0) {
                    farads.put(at, random.nextDouble(5e-6, 20e-6));
                }
            }
            Discharge plain = Discharge.of(bank, Optional.empty());
            Discharge read = read(bank, ohms, farads);
            assertTrue(read.longestWaitSeconds() >= plain.longestWaitSeconds(), "seed " + seed);
            double wait = read.longestWaitSeconds();
            for (UnitDecay unit : read.courses().getFirst().units()) {
                unit.secondsToSafe().ifPresent(t -> assertTrue(t <= wait, unit + " after " + wait));
                if (unit.secondsToSafe().isPresent()) {
                    assertTrue(unit.endVolts() <= 50.0 * (1.0 + 1e-9), "seed " + seed + " " + unit);
                }
            }
        }
    }
}
