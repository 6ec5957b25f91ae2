package org.varwright.discharge;

import static org.junit.jupiter.api.Assertions.assertAll;
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
import org.varwright.bank.Standard;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;

/** Values from outside. "Independent calculation" means first principles, worked out by another program than this one. */
class DischargeReferenceTest {
    private static final double PER_MILLE = 1e-3;
    private static final double HALF_PERCENT = 5e-3;

    private static void close(double expected, double actual, double relative) {
        assertEquals(expected, actual, Math.abs(expected) * relative);
    }

    private static UnitType type(double vars, double volts, double hertz) {
        return BankSketch.type("T", vars, volts, hertz, new Tolerance(0.0, 0.0), 0, 0, false, Optional.empty());
    }

    /** Source: independent calculation; the limits 50 V in 5 min are those of IEEE Std 18, 75 V in 10 min of IEC 60871-1. */
    @Test
    void tableOfFourUnits() {
        record Row(
                double vars,
                double volts,
                double hertz,
                double micro,
                double peak,
                double r5,
                double r10,
                double joules) {}
        List<Row> rows = List.of(
                new Row(100e3, 7200, 60, 5.1169, 10182.3, 11.028, 23.877, 265.3),
                new Row(200e3, 7960, 60, 8.3728, 11257.1, 6.6147, 14.300, 530.5),
                new Row(400e3, 13280, 60, 6.0163, 18780.8, 8.4108, 18.057, 1061.0),
                new Row(400e3, 6600, 50, 29.2296, 9333.8, 1.9627, 4.2553, 1273.2));
        for (Row row : rows) {
            double c = type(row.vars, row.volts, row.hertz).capacitanceFarads();
            double peak = Math.sqrt(2.0) * row.volts;
            assertAll(
                    () -> close(row.micro * 1e-6, c, PER_MILLE),
                    () -> close(row.peak, peak, PER_MILLE),
                    () -> close(row.r5 * 1e6, Decay.resistanceFor(c, peak, 50.0, 300.0), PER_MILLE),
                    () -> close(row.r10 * 1e6, Decay.resistanceFor(c, peak, 75.0, 600.0), PER_MILLE),
                    () -> close(row.joules, Decay.energyJoules(c, peak), PER_MILLE));
        }
    }

    /** Source: independent calculation. Energy per kvar at the peak is 1000/ω. */
    @Test
    void energyPerKilovar() {
        double peak = Math.sqrt(2.0) * 7200;
        close(2.653, Decay.energyJoules(type(1e3, 7200, 60).capacitanceFarads(), peak), PER_MILLE);
        close(3.183, Decay.energyJoules(type(1e3, 7200, 50).capacitanceFarads(), peak), PER_MILLE);
    }

    /** Source: independent calculation (200 kvar, 7.2 kV, 60 Hz). */
    @Test
    void dis001LargestResistanceFor50VoltsIn5Minutes() {
        double c = type(200e3, 7200, 60).capacitanceFarads();
        double r = Decay.resistanceFor(c, Math.sqrt(2.0) * 7200, 50.0, 300.0);
        close(10.2337e-6, c, HALF_PERCENT);
        close(5.51405e6, r, HALF_PERCENT);
        close(56.4293, r * c, HALF_PERCENT);
        close(9.40144, 7200.0 * 7200.0 / r, HALF_PERCENT);
    }

    /** Source: independent calculation. */
    @Test
    void dis003ApproachingEarlyOnAFiveMinuteUnit() {
        double c = type(100e3, 7200, 60).capacitanceFarads();
        double[] seconds = {60, 120, 180, 240, 300};
        double[] volts = {3516.19, 1214.22, 419.296, 144.792, 50.0};
        for (int i = 0; i < seconds.length; i++) {
            close(volts[i], Decay.voltsAfter(c, 11.028e6, Math.sqrt(2.0) * 7200, seconds[i]), HALF_PERCENT);
        }
    }

    /** Source: independent calculation. A 75 V/10 min unit waited for 5 min only. */
    @Test
    void dis004TenMinuteUnitAfterFive() {
        double c = type(200e3, 7200, 60).capacitanceFarads();
        double peak = Math.sqrt(2.0) * 7200;
        double r = Decay.resistanceFor(c, peak, 75.0, 600.0);
        double left = Decay.voltsAfter(c, r, peak, 300.0);
        close(122.177, r * c, HALF_PERCENT);
        close(873.885, left, HALF_PERCENT);
        close(3.90762, Decay.energyJoules(c, left), HALF_PERCENT);
        close(2333.52, Decay.voltsAfter(c, r, peak, 180.0), HALF_PERCENT);
    }

    /** Source: independent calculation. Residual after 3 min and wait for 10 % of peak, of 5 min and 10 min units. */
    @Test
    void dis006ThreeMinuteReclosing() {
        double c = type(200e3, 7200, 60).capacitanceFarads();
        double peak = Math.sqrt(2.0) * 7200;
        double five = Decay.resistanceFor(c, peak, 50.0, 300.0);
        double ten = Decay.resistanceFor(c, peak, 75.0, 600.0);
        close(4.11788, 100.0 * Decay.voltsAfter(c, five, peak, 180.0) / peak, 1e-2);
        close(22.9173, 100.0 * Decay.voltsAfter(c, ten, peak, 180.0) / peak, 1e-2);
        close(129.933, Decay.secondsTo(c, five, peak, 0.1 * peak), 1e-2);
        close(281.322, Decay.secondsTo(c, ten, peak, 0.1 * peak), 1e-2);
    }

    /** Source: independent calculation for the energy; 29 CFR 1910.269(w)(1)(ii) for the short on every unit. */
    @Test
    void dis008OperatedFuseAndOpenResistor() {
        UnitType type = BankSketch.type(
                "T",
                200e3,
                7200,
                60,
                new Tolerance(0.0, 0.0),
                0,
                0,
                false,
                Optional.of(new DischargeDevice.Rated(50.0, 300.0)));
        Bank bank = new BankSketch()
                .system(12.47e3 / 1.1, 60, SystemGrounding.SOLID)
                .stage("s", Connection.WYE_GROUNDED, new LegLayout(1, 1, 4), type, Optional.of(BankSketch.fuse("F")))
                .build();
        StageDischarge stage = Discharge.of(bank, Optional.empty()).stages().getFirst();
        close(530.516, stage.unitPeakJoules(), 1e-2);
        close(Math.sqrt(2.0) * 7200, stage.openResistorVolts(), HALF_PERCENT);
        assertTrue(Discharge.waitOf(bank, "s").notes().stream()
                .anyMatch(note ->
                        note.contains("behind an operated fuse") && note.contains("Every unit gets the stick")));
    }

    /** Source: independent calculation. Five time constants leave 69 V on 7.2 kV. */
    @Test
    void fiveTimeConstants() {
        double c = type(100e3, 7200, 60).capacitanceFarads();
        assertEquals(69.0, Decay.voltsAfter(c, 11.028e6, Math.sqrt(2.0) * 7200, 5.0 * 11.028e6 * c), 0.5);
    }

    /** Source: independent calculation. The third pole of an ungrounded wye at 1.366. */
    @Test
    void thirdPoleOfAnUngroundedWye() {
        double c = type(100e3, 7200, 60).capacitanceFarads();
        double v0 = Opening.UNGROUNDED_FACTOR * Math.sqrt(2.0) * 7200;
        close(1.366, Opening.UNGROUNDED_FACTOR, PER_MILLE);
        close(68.3, Decay.voltsAfter(c, 11.028e6, v0, 300.0), PER_MILLE);
        close(317.6, Decay.secondsTo(c, 11.028e6, v0, 50.0), PER_MILLE);
    }

    /** Source: IEEE Std 18 (and California Title 8 §2893(a)); IEC 60871-1; IEC 60831-1; 29 CFR 1910.269(w)(1)(i). */
    @Test
    void limitsOfTheStandards() {
        assertEquals("50 V in 5 min", DischargeRule.of(Standard.IEEE, 601.0).print());
        assertEquals("50 V in 1 min", DischargeRule.of(Standard.IEEE, 600.0).print());
        assertEquals("75 V in 10 min", DischargeRule.of(Standard.IEC, 1001.0).print());
        assertEquals("75 V in 3 min", DischargeRule.of(Standard.IEC, 1000.0).print());
        assertEquals(300.0, DischargeRule.FLOOR_SECONDS);
    }

    /** Source: handbook figure quoted for polypropylene, 0.05 to 0.10 %: 5 to 10 V back on 10 kV; the upper end is used. */
    @Test
    void dielectricAbsorption() {
        close(10.0, Discharge.ABSORPTION * 10e3, PER_MILLE);
    }
}
