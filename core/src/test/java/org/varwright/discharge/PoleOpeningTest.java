package org.varwright.discharge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;

/** The poles of a stage clear one after another; what each leg holds then, worked by hand. */
class PoleOpeningTest {
    private static final double LATER = (Math.sqrt(3.0) - 1.0) / 2.0;

    private static UnitType unit() {
        return BankSketch.type(
                "U",
                300e3,
                7960,
                60,
                new Tolerance(0.0, 0.0),
                0,
                0,
                false,
                Optional.of(new DischargeDevice.Resistor(4.1e6)));
    }

    private static List<PoleOpening> openings(Bank bank, boolean fault) {
        StageCircuit circuit = StageCircuit.of(
                new UnitValues(bank, UnitReadings.NONE), bank.stages().getFirst(), new Resistance.NotKnown());
        return new PoleSimulation(circuit, 1000.0, 60.0, fault).all();
    }

    private static Bank bank(Connection connection) {
        return new BankSketch()
                .stage("s", connection, new LegLayout(1, 1, 2), unit())
                .build();
    }

    private static void holds(PoleOpening opening, double... perPeak) {
        for (int i = 0; i < perPeak.length; i++) {
            assertEquals(perPeak[i], opening.legs().get(i).perPeak(), 1e-6, opening.toString());
        }
    }

    /**
     * <pre>
     *   VA ──/ ──┬── CA ──┐
     *   VB ──/ ──┼── CB ──┼── n (floats)    A at its peak; a quarter cycle later B and C together
     *   VC ──/ ──┴── CC ──┘                 at the peak of their line voltage
     * </pre>
     */
    @Test
    void anUngroundedWyeHolds1And0366AndMinus1366() {
        List<PoleOpening> openings = openings(bank(Connection.WYE_UNGROUNDED), false);
        PoleOpening a = openings.getFirst();
        assertEquals(List.of("A"), a.clearings().get(0).poles());
        assertEquals(List.of("B", "C"), a.clearings().get(1).poles());
        assertEquals(1.0 / 240.0, a.clearings().get(1).seconds(), 1e-9);
        holds(a, 1.0, LATER, -Opening.UNGROUNDED_FACTOR);
        // neutral at half the peak, the terminals at 1.5, 0.866 and −0.866
        assertEquals("neutral", a.potentials().getFirst().conductor());
        assertEquals(0.5, a.potentials().get(0).perPeak(), 1e-6);
        assertEquals(1.5, a.potentials().get(1).perPeak(), 1e-6);
        assertEquals(Math.sqrt(3.0) / 2.0, a.potentials().get(2).perPeak(), 1e-6);
        assertEquals(-Math.sqrt(3.0) / 2.0, a.potentials().get(3).perPeak(), 1e-6);
        // whichever pole is first, the next phase but one holds the most
        holds(openings.get(1), -Opening.UNGROUNDED_FACTOR, 1.0, LATER);
        holds(openings.get(2), LATER, -Opening.UNGROUNDED_FACTOR, 1.0);
    }

    @Test
    void aGroundedWyeClearsEveryPoleAtItsOwnPeak() {
        PoleOpening a = openings(bank(Connection.WYE_GROUNDED), false).getFirst();
        assertEquals(3, a.clearings().size());
        assertEquals(1.0 / 360.0, a.clearings().get(1).seconds(), 1e-9);
        assertEquals(1.0 / 180.0, a.clearings().get(2).seconds(), 1e-9);
        holds(a, 1.0, 1.0, -1.0);
    }

    @Test
    void aGroundFaultLeavesLineVoltageOnTheHealthyLegsOfAGroundedWye() {
        PoleOpening a = openings(bank(Connection.WYE_GROUNDED), true).getFirst();
        assertEquals(0.0, a.legs().get(0).perPeak(), 1e-9);
        assertEquals(Math.sqrt(3.0), Math.abs(a.legs().get(1).perPeak()), 1e-6);
        assertEquals(Math.sqrt(3.0), Math.abs(a.legs().get(2).perPeak()), 1e-6);
        // an ungrounded neutral moves along: the legs don't feel it
        holds(openings(bank(Connection.WYE_UNGROUNDED), true).getFirst(), 1.0, LATER, -Opening.UNGROUNDED_FACTOR);
    }

    @Test
    void aDeltaHoldsTheSameOfItsLineToLinePeak() {
        PoleOpening a = openings(bank(Connection.DELTA), false).getFirst();
        holds(a, LATER, 1.0, -Opening.UNGROUNDED_FACTOR);
        assertEquals(
                0.0, a.legs().stream().mapToDouble(PoleOpening.LegHold::volts).sum(), 1e-9);
    }

    @Test
    void bothWyesOfADoubleWyeAndBothHalvesOfABridgeHoldTheSame() {
        PoleOpening wyes =
                openings(bank(Connection.DOUBLE_WYE_UNGROUNDED), false).getFirst();
        holds(wyes, 1.0, LATER, -Opening.UNGROUNDED_FACTOR, 1.0, LATER, -Opening.UNGROUNDED_FACTOR);
        PoleOpening bridge = openings(bank(Connection.BRIDGE_UNGROUNDED), false).getFirst();
        for (int quarter = 0; quarter < 4; quarter++) {
            assertEquals(1.0, bridge.legs().get(quarter).perPeak(), 1e-6);
            assertEquals(LATER, bridge.legs().get(4 + quarter).perPeak(), 1e-6);
            assertEquals(
                    -Opening.UNGROUNDED_FACTOR, bridge.legs().get(8 + quarter).perPeak(), 1e-6);
        }
        holds(
                openings(bank(Connection.BRIDGE_GROUNDED), false).getFirst(),
                1.0,
                1.0,
                1.0,
                1.0,
                1.0,
                1.0,
                1.0,
                1.0,
                -1.0);
    }

    /** One unit a leg and the one in A gone: B and C in series on the line voltage, half of it each. */
    @Test
    void unlikeLegsAreReckonedAsTheyAre() {
        BankSketch sketch = new BankSketch().stage("s", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 1), unit());
        Bank bank = sketch.known("s/A", "", 1e-12)
                .known("s/B", "", 12e-6)
                .known("s/C", "", 12e-6)
                .build();
        PoleOpening b = openings(bank, false).get(1);
        assertEquals(Math.sqrt(3.0) / 2.0, Math.abs(b.legs().get(1).perPeak()), 1e-5);
        assertEquals(Math.sqrt(3.0) / 2.0, Math.abs(b.legs().get(2).perPeak()), 1e-5);
        assertTrue(openings(bank, false).get(0).highestPerPeak() < 1.6);
    }
}
