package org.varwright.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Standard;
import org.varwright.basis.Standing;
import org.varwright.basis.Verdict;

/** Tables and formulas against published values, source beside each. */
class LimitReferenceTest {
    /** DUT-1, first principles: 105 % fundamental, 10 % fifth, 5 % seventh. */
    @Test
    void stressByThreeOrders() {
        Stress stress = Stress.of(
                List.of(new Stress.Component(1, 1.05), new Stress.Component(5, 0.10), new Stress.Component(7, 0.05)),
                1.0);
        assertEquals(1.0559, stress.voltage(), 5e-5);
        assertEquals(1.200, stress.crest(), 1e-12);
        assertEquals(1.2145, stress.current(), 5e-5);
        assertEquals(1.170, stress.reactivePower(), 1e-12);
    }

    /** DUT-1, first principles: the same with 10 % more capacitance at 50 instead of 60 Hz, c = 1.1·50/60: current and reactive power follow, voltage and crest don't. */
    @Test
    void stressFollowsTheSusceptance() {
        List<Stress.Component> components =
                List.of(new Stress.Component(1, 1.05), new Stress.Component(5, 0.10), new Stress.Component(7, 0.05));
        double c = 1.1 * 50.0 / 60.0;
        Stress stress = Stress.of(components, c);
        assertEquals(1.0559, stress.voltage(), 5e-5);
        assertEquals(1.200, stress.crest(), 1e-12);
        assertEquals(c * 1.2145, stress.current(), 5e-5);
        assertEquals(c * 1.170, stress.reactivePower(), 1e-12);
        assertEquals(
                c * 1.2145 / 1.35,
                ContinuousLimits.of(Standard.IEEE).judge(stress).get(2).use(),
                5e-5);
    }

    /** IEEE Std 18: 110 % rms, 120 % crest, 135 % current, 135 % reactive power. */
    @Test
    void continuousLimitsOfIeee() {
        ContinuousLimits limits = ContinuousLimits.of(Standard.IEEE);
        assertEquals(Verdict.PASS, limits.verdict(new Stress(1.10, 1.20, 1.35, 1.35)));
        assertEquals(Verdict.FAIL, limits.verdict(new Stress(1.101, 1.0, 1.0, 1.0)));
        assertEquals(Verdict.FAIL, limits.verdict(new Stress(1.0, 1.201, 1.0, 1.0)));
        assertEquals(Verdict.FAIL, limits.verdict(new Stress(1.0, 1.0, 1.351, 1.0)));
        assertEquals(Verdict.FAIL, limits.verdict(new Stress(1.0, 1.0, 1.0, 1.351)));
    }

    /** IEC 60871-1: 1.10 U_N, 1.30 I_N; from memory, unchecked, and said so. Crest and reactive power only warn. */
    @Test
    void continuousLimitsOfIec() {
        ContinuousLimits limits = ContinuousLimits.of(Standard.IEC);
        assertEquals(Verdict.PASS, limits.verdict(new Stress(1.10, 1.20, 1.30, 1.35)));
        assertEquals(Verdict.FAIL, limits.verdict(new Stress(1.0, 1.0, 1.31, 1.0)));
        assertEquals(Verdict.WARN, limits.verdict(new Stress(1.0, 1.25, 1.0, 1.0)));
        assertEquals(Standing.UNCHECKED, limits.current().source().standing());
    }

    /** IEEE Std 1036: 6 cycles 2.20, 15 cycles 2.00, 1 s 1.70, 15 s 1.40, 1 min 1.30, 30 min 1.25. */
    @Test
    void shortTimeOfIeee() {
        ShortTimeTable table = ShortTimeTable.of(Standard.IEEE, 60.0);
        double[][] rows = {{0.1, 2.20}, {0.25, 2.00}, {1, 1.70}, {15, 1.40}, {60, 1.30}, {1800, 1.25}};
        for (double[] row : rows) {
            assertEquals(new ShortTimeTable.Allowance.AtMost(row[0]), table.allowed(row[1]));
            assertEquals(row[1], table.highest(row[0]));
            assertTrue(table.within(row[1], row[0]));
            assertFalse(table.within(row[1], row[0] * 1.01));
            assertFalse(table.within(row[1] * 1.01, row[0]));
        }
        assertTrue(table.within(1.4, 10.0));
        assertEquals(new ShortTimeTable.Allowance.Never(), table.allowed(2.21));
        assertEquals(new ShortTimeTable.Allowance.ForGood(), table.allowed(1.10));
        assertEquals(new ShortTimeTable.Allowance.AtMost(1800), table.allowed(1.11));
        // Cycles are those of the bank's own frequency.
        assertEquals(
                0.12, ShortTimeTable.of(Standard.IEEE, 50.0).rows().getFirst().seconds(), 1e-12);
    }

    /** IEC 60871-1: 30 min 1.15, 5 min 1.20, 1 min 1.30. */
    @Test
    void shortTimeOfIec() {
        ShortTimeTable table = ShortTimeTable.of(Standard.IEC, 50.0);
        assertEquals(new ShortTimeTable.Allowance.AtMost(1800), table.allowed(1.15));
        assertEquals(new ShortTimeTable.Allowance.AtMost(300), table.allowed(1.20));
        assertEquals(new ShortTimeTable.Allowance.AtMost(60), table.allowed(1.30));
        assertEquals(new ShortTimeTable.Allowance.Never(), table.allowed(1.31));
        assertEquals(1.30, table.highest(10.0));
        assertEquals(1.10, table.highest(3600.0));
    }

    /** IEEE Std 519-2014 table 1: up to 1 kV 5 and 8 %, up to 69 kV 3 and 5 %, up to 161 kV 1.5 and 2.5 %. */
    @Test
    void distortion() {
        assertEquals(0.05, DistortionLimits.of(480).single());
        assertEquals(0.08, DistortionLimits.of(1e3).total());
        assertEquals(0.03, DistortionLimits.of(13.8e3).single());
        assertEquals(0.05, DistortionLimits.of(69e3).total());
        assertEquals(0.015, DistortionLimits.of(115e3).single());
        assertEquals(0.025, DistortionLimits.of(161e3).total());
        assertEquals(Standing.UNCHECKED, DistortionLimits.of(230e3).source().standing());
    }
}
