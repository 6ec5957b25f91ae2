package org.varwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SystemGrounding;
import org.varwright.isolation.GroundCable;

/**
 * Portable grounds: copper cable by ASTM F855, grades 1 to 7 and 1H to 7H (quoted). For 3/0 AWG it has 34 kA; UFC 3-560-01 table 7-1 prints 36 kA, a
 * misprint. Not below #2 AWG: 29 CFR 1910.269(n)(4).
 */
class GroundingReferenceTest {
    private static String size(double kiloamperes, double xOverR, int cycles) {
        return GroundCable.smallest(kiloamperes * 1e3, xOverR, cycles)
                .map(GroundCable::size)
                .orElse("none");
    }

    /** Each size carries its own withstand, and the next one is needed just above it. */
    @ParameterizedTest
    @CsvSource({
        "14, 10, #2 AWG, 1/0 AWG",
        "21, 15, 1/0 AWG, 2/0 AWG",
        "27, 20, 2/0 AWG, 3/0 AWG",
        "34, 25, 3/0 AWG, 4/0 AWG",
        "43, 30, 4/0 AWG, 250 kcmil",
        "54, 39, 250 kcmil, 350 kcmil",
        "74, 54, 350 kcmil, none"
    })
    void withstandAtLowRatio(double fifteenCycles, double thirtyCycles, String size, String next) {
        assertEquals(size, size(fifteenCycles, 1.8, 15));
        assertEquals(next, size(fifteenCycles + 0.01, 1.8, 15));
        assertEquals(size, size(thirtyCycles, 1.8, 30));
        assertEquals(next, size(thirtyCycles + 0.01, 1.8, 30));
    }

    /** H grades at X/R = 30, 15 cycles: 15, 25, 31, 39, 47, 55, 68 kA; the lower value of both grades is used, here the H grade's for 350 kcmil only. */
    @Test
    void theLowerOfBothGradesCountsAboveTheLowRatio() {
        double[] low = {14, 21, 27, 34, 43, 54, 74};
        double[] high = {15, 25, 31, 39, 47, 55, 68};
        for (int i = 0; i < low.length; i++) {
            double expected = Math.min(low[i], high[i]) * 1e3;
            GroundCable cable = GroundCable.smallest(expected, 30.0, 15).orElseThrow();
            assertEquals(expected, cable.amperes());
            assertEquals((i + 1) + "H", cable.grade());
        }
        assertEquals("none", size(68.01, 30.0, 15));
    }

    /** Beyond the table nothing is promised. */
    @Test
    void nothingIsNamedBeyondTheTable() {
        assertEquals("none", size(1, 31.0, 15));
        assertEquals("none", size(1, 1.8, 31));
        assertEquals("none", size(1, 11.0, 30));
        assertEquals("#2 AWG", size(0.001, 1.0, 15));
    }

    /** 210 MVA at 12.47 kV: 9.72 kA (first principles); the ratio not known counts as the table's highest. */
    @Test
    void theFaultCurrentOfTheBusDecides() {
        assertEquals(
                "#2 AWG", atBus(210e6, OptionalDouble.of(9.0)).orElseThrow().size());
        assertEquals(
                "2/0 AWG", atBus(500e6, OptionalDouble.empty()).orElseThrow().size());
        assertEquals("2H", atBus(450e6, OptionalDouble.empty()).orElseThrow().grade());
        assertEquals(Optional.empty(), atBus(5e9, OptionalDouble.empty()));
    }

    private static Optional<GroundCable> atBus(double voltAmperes, OptionalDouble xOverR) {
        return GroundCable.smallest(new SupplySystem(
                12470.0, OptionalDouble.empty(), 60.0, OptionalDouble.of(voltAmperes), xOverR, SystemGrounding.SOLID));
    }
}
