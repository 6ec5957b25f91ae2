package org.varwright.discharge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Decay and opening against ngspice, which knows nothing of the closed forms. */
class DischargeOracleTest {
    private static final double C = 5.1169e-6;
    private static final double R = 11.028e6;

    /**
     * <pre>
     *   1 ──┬──┬──   one unit at 10182.3 V, left to itself
     *       C  R
     *   0 ──┴──┴──
     * </pre>
     */
    @Test
    void aUnitDecaysAsNgspiceSays() throws IOException, InterruptedException {
        Ngspice.Measured spice = Ngspice.measure(String.format(Locale.ROOT, """
                decay
                C1 1 0 %.6e IC=10182.3
                R1 1 0 %.6e
                .tran 0.05 400 0 0.05 UIC
                .options reltol=1e-6
                .meas tran v60 FIND v(1) AT=60
                .meas tran v180 FIND v(1) AT=180
                .meas tran v300 FIND v(1) AT=300
                .meas tran t50 WHEN v(1)=50
                .end
                """, C, R));
        assertEquals(spice.get("v60"), Decay.voltsAfter(C, R, 10182.3, 60.0), 0.5);
        assertEquals(spice.get("v180"), Decay.voltsAfter(C, R, 10182.3, 180.0), 0.2);
        assertEquals(spice.get("v300"), Decay.voltsAfter(C, R, 10182.3, 300.0), 0.05);
        assertEquals(spice.get("t50"), Decay.secondsTo(C, R, 10182.3, 50.0), 0.1);
    }

    /**
     * <pre>
     *   VA ──/SA──┬── CA ──┐
     *   VB ──/SB──┼── CB ──┼── n (floats)      A opens at its current zero, B and C together
     *   VC ──/SC──┴── CC ──┘                   at the next one, a quarter cycle later
     * </pre>
     */
    @Test
    void theThirdPoleOfAnUngroundedWyeHolds1366() throws IOException, InterruptedException {
        Ngspice.Measured spice = Ngspice.measure(opening("""
                CA a n 10u
                CB b n 10u
                CC c n 10u
                RN n 0 1e12
                EX x 0 a n 1
                EY y 0 b n 1
                EZ z 0 c n 1
                """));
        currentsWereZero(spice);
        assertEquals(1.0, Math.abs(spice.get("va")), 2e-3);
        assertEquals(0.366, Math.abs(spice.get("vb")), 2e-3);
        assertEquals(Opening.UNGROUNDED_FACTOR, Math.abs(spice.get("vc")), 2e-3);
        // the energy of the three legs is that of three legs at the peak
        double squares = Math.pow(spice.get("va"), 2) + Math.pow(spice.get("vb"), 2) + Math.pow(spice.get("vc"), 2);
        assertEquals(3.0, squares, 1e-2);
        assertEquals(1.0 + Opening.UNGROUNDED_FACTOR, Math.abs(spice.get("va") - spice.get("vc")), 4e-3);
    }

    /** The same poles on a delta: one leg is left with 1.366 of the line to line peak. */
    @Test
    void aDeltaLegHolds1366OfTheLineToLinePeak() throws IOException, InterruptedException {
        Ngspice.Measured spice = Ngspice.measure(opening("""
                CA a b 10u
                CB b c 10u
                CC c a 10u
                RA a 0 1e12
                EX x 0 a b 1
                EY y 0 b c 1
                EZ z 0 c a 1
                """));
        currentsWereZero(spice);
        double peak = Math.sqrt(3.0);
        double highest =
                Math.max(Math.abs(spice.get("va")), Math.max(Math.abs(spice.get("vb")), Math.abs(spice.get("vc"))));
        assertEquals(Opening.UNGROUNDED_FACTOR, highest / peak, 2e-3);
        double squares = Math.pow(spice.get("va"), 2) + Math.pow(spice.get("vb"), 2) + Math.pow(spice.get("vc"), 2);
        assertEquals(3.0, squares / 3.0, 1e-2);
    }

    /**
     * <pre>
     *   1 ──┬──┬── 2 ──┬──    two groups in series, resistor of the upper one open;
     *      C1 (R1)    C2 R2   after 300 s the ends are joined: both still hold ± half
     *   2 ──┴──┴── 0 ──┴──
     * </pre>
     */
    @Test
    void aStringWithOneOpenResistorHidesItsVoltage() throws IOException, InterruptedException {
        Ngspice.Measured spice = Ngspice.measure("""
                string
                C1 1 2 10u IC=5000
                C2 2 0 10u IC=5000
                R1 1 2 1e15
                R2 2 0 3meg
                S1 1 0 g 0 sw
                EX 3 0 1 2 1
                VG g 0 PWL(0 0 300 0 300.01 1)
                .model sw SW(VT=0.5 VH=0 RON=100 ROFF=1e15)
                .tran 0.05 301 0 0.02 UIC
                .options reltol=1e-6 gmin=1e-18
                .meas tran before FIND v(2) AT=299.9
                .meas tran ends FIND v(1) AT=300.5
                .meas tran upper FIND v(3) AT=300.5
                .meas tran lower FIND v(2) AT=300.5
                .end
                """);
        assertEquals(0.0, spice.get("before"), 1.0);
        assertEquals(0.0, spice.get("ends"), 1.0);
        assertEquals(5000.0 / 2.0, spice.get("upper"), 50.0);
        assertEquals(-5000.0 / 2.0, spice.get("lower"), 50.0);
    }

    private static void currentsWereZero(Ngspice.Measured spice) {
        // peak of a pole's current is ω·C·1 V = 3.77 mA
        assertTrue(Math.abs(spice.get("ia")) < 1e-4, "pole A opened away from its current zero: " + spice);
        assertTrue(Math.abs(spice.get("ib")) < 1e-4, "pole B opened away from its current zero: " + spice);
        assertTrue(Math.abs(spice.get("ic")) < 1e-4, "pole C opened away from its current zero: " + spice);
    }

    private static String opening(String legs) {
        double cycle = 1.0 / 60.0;
        double firstOpens = 3.0 * cycle;
        double othersOpen = firstOpens + cycle / 4.0;
        return String.format(Locale.ROOT, """
                opening
                VA sa 0 SIN(0 1 60 0 0 90)
                VB sb 0 SIN(0 1 60 0 0 -30)
                VC sc 0 SIN(0 1 60 0 0 210)
                SA sa a g1 0 sw
                SB sb b g2 0 sw
                SC sc c g2 0 sw
                VG1 g1 0 PWL(0 1 %1$.9f 1 %2$.9f 0)
                VG2 g2 0 PWL(0 1 %3$.9f 1 %4$.9f 0)
                .model sw SW(VT=0.5 VH=0 RON=1e-2 ROFF=1e13)
                %5$s
                .tran 1e-6 0.07 0 2e-6
                .options reltol=1e-6 gmin=1e-18 abstol=1e-15
                .meas tran ia FIND i(VA) AT=%1$.9f
                .meas tran ib FIND i(VB) AT=%3$.9f
                .meas tran ic FIND i(VC) AT=%3$.9f
                .meas tran va FIND v(x) AT=0.069
                .meas tran vb FIND v(y) AT=0.069
                .meas tran vc FIND v(z) AT=0.069
                .end
                """, firstOpens, firstOpens + 1e-6, othersOpen, othersOpen + 1e-6, legs);
    }
}
