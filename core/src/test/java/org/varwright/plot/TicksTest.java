package org.varwright.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.varwright.quantity.Dimension;

class TicksTest {
    private static List<String> labels(List<Tick> ticks) {
        return ticks.stream().map(Tick::label).filter(l -> !l.isEmpty()).toList();
    }

    private static List<String> linear(double low, double high, int most) {
        return labels(Ticks.linear(low, high, most));
    }

    @Test
    void stepsAreOneTwoOrFive() {
        assertEquals(List.of("0", "2", "4", "6", "8", "10"), linear(0.0, 10.0, 5));
        assertEquals(List.of("0", "0.5", "1.0"), linear(0.0, 1.0, 3));
        assertEquals(List.of("\u22120.2", "\u22120.1", "0", "0.1"), linear(-0.2, 0.1, 4));
        assertEquals(List.of("\u221240", "\u221220", "0", "20", "40"), linear(-45.0, 45.0, 5));
    }

    @Test
    void tinyRangesKeepTheirDigits() {
        assertEquals(List.of("1.0000000", "1.0000001", "1.0000002", "1.0000003"), linear(1.0, 1.0000003, 4));
        assertEquals(List.of("0.002", "0.004"), linear(0.0012, 0.0047, 2));
    }

    @Test
    void aRangeOfOneValueIsWidened() {
        assertEquals(new Ticks.Ends(0.0, 1.0), Ticks.widened(0.0, 0.0));
        assertEquals(new Ticks.Ends(95.0, 105.0), Ticks.widened(100.0, 100.0));
        assertEquals(new Ticks.Ends(-105.0, -95.0), Ticks.widened(-100.0, -100.0));
    }

    @Test
    void decadesOfALogarithmicAxis() {
        List<Tick> ticks = Ticks.log(10.0, 100_000.0, true, 8);
        assertEquals(List.of("10", "100", "1 k", "10 k", "100 k"), labels(ticks));
        assertEquals(4 * 8, ticks.stream().filter(Tick::isFine).count());
        assertEquals(List.of("0.01", "0.1", "1", "10", "100", "1000"), labels(Ticks.log(0.01, 1000.0, false, 8)));
        assertEquals(List.of("1 \u00b5", "1 m", "1", "1 k"), labels(Ticks.log(1e-6, 1e5, true, 4)));
        assertEquals(List.of("10\u207b\u2076", "10\u207b\u2075"), labels(Ticks.log(9e-7, 1.05e-5, false, 2)));
    }

    @Test
    void fewDecadesGetOneTwoAndFive() {
        assertEquals(List.of("20", "50", "100", "200"), labels(Ticks.log(20.0, 200.0, true, 8)));
        assertEquals(List.of("1.10", "1.15", "1.20"), labels(Ticks.log(1.1, 1.2, true, 3)));
    }

    @Test
    void endsOfALogarithmicAxisAreRound() {
        assertEquals(new Ticks.Ends(10.0, 500.0), Ticks.roundedLog(12.0, 300.0));
        assertEquals(new Ticks.Ends(0.01, 0.05), Ticks.roundedLog(0.01, 0.05));
        Ticks.Ends one = Ticks.roundedLog(1.0, 1.0);
        assertTrue(one.low() <= 0.5 && one.high() >= 2.0, one.toString());
    }

    @Test
    void anAxisPicksItsUnit() {
        assertEquals("kV", shown(Dimension.VOLTAGE, -13_800.0, 7_000.0).symbol());
        assertEquals("ms", shown(Dimension.TIME, 0.0, 0.05).symbol());
        assertEquals("min", shown(Dimension.TIME, 0.0, 600.0).symbol());
        assertEquals("h", shown(Dimension.TIME, 0.0, 86_400.0).symbol());
        assertEquals("%", shown(Dimension.FRACTION, -0.1, 0.1).symbol());
        assertEquals(
                "\u00d710\u2076 per year",
                Shown.of(Axis.linear("n", "per year"), 0.0, 4e6).symbol());
    }

    private static Shown shown(Dimension dimension, double low, double high) {
        return Shown.of(Axis.linear("", dimension), low, high);
    }

    /** Ticks lie inside, are even, and there are never more than asked for plus one; rounded ends take in the range and are ticks. */
    @Test
    void lawOfLinearTicks() {
        long seed = 20_261_125L;
        Random random = new Random(seed);
        for (int i = 0; i < 20_000; i++) {
            double size = Math.pow(10.0, -12 + 24.0 * random.nextDouble());
            double low = size * (2.0 * random.nextDouble() - 1.0);
            double high = low + size * Math.pow(10.0, -6.0 * random.nextDouble());
            int most = 2 + random.nextInt(12);
            String about = "seed " + seed + ", case " + i + ": " + low + " to " + high + ", " + most;
            List<Tick> ticks = Ticks.linear(low, high, most);
            double slack = 1e-5 * (high - low) + 1e-12 * size;
            assertTrue(ticks.size() <= most + 1, about);
            ticks.forEach(t -> assertTrue(t.value() >= low - slack && t.value() <= high + slack, about));
            assertEquals(
                    ticks.size(),
                    ticks.stream().map(Tick::label).collect(Collectors.toSet()).size(),
                    about);
            Ticks.Ends ends = Ticks.rounded(low, high, most);
            assertTrue(ends.low() <= low + slack && ends.high() >= high - slack, about);
            List<Tick> round = Ticks.linear(ends.low(), ends.high(), most + 2);
            assertTrue(round.size() >= 2, about);
        }
    }
}
