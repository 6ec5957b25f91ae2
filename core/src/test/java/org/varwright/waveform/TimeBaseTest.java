package org.varwright.waveform;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Times, pieces of one pace, and values between samples, against naive twins and by hand. */
class TimeBaseTest {
    private static List<String> pieces(double... t) {
        List<String> said = new ArrayList<>();
        for (Piece p : TimeBase.of(t).pieces()) {
            said.add(p.from() + "-" + p.to());
        }
        return said;
    }

    /** A step of one and a half times the one before is still the same pace, a longer or shorter one is another. */
    @Test
    void piecesAreCutWhereThePaceChanges() {
        assertEquals(List.of("0-4"), pieces(0, 1, 2, 3));
        assertEquals(List.of("0-4"), pieces(0, 2, 4, 7));
        assertEquals(List.of("0-3", "3-4"), pieces(0, 2, 4, 7.1));
        assertEquals(List.of("0-4"), pieces(0, 3, 6, 8));
        assertEquals(List.of("0-3", "3-4"), pieces(0, 3, 6, 7.9));
        assertEquals(List.of("0-3", "3-6"), pieces(0, 1, 2, 12, 13, 14));
        assertEquals(List.of("0-2", "2-5"), pieces(0, 1, 1, 2, 3));
        assertEquals(List.of("0-3", "3-5"), pieces(0, 1, 2, 0.5, 1.5));
        assertEquals(List.of("0-1"), pieces(5));
        assertEquals(List.of(), pieces());
    }

    @Test
    void thePaceOfAPieceIsTheMeanOfItsSteps() {
        List<Piece> pieces =
                TimeBase.of(new double[] {0, 1, 2.1, 3, 13, 13.5, 14}).pieces();
        assertEquals(1.0, pieces.get(0).stepSeconds(), 1e-15);
        assertEquals(1.0, pieces.get(0).rate(), 1e-15);
        assertEquals(4, pieces.get(0).size());
        assertEquals(0.5, pieces.get(1).stepSeconds(), 1e-15);
        assertEquals(2.0, pieces.get(1).rate(), 1e-15);
        assertEquals(0.0, TimeBase.of(new double[] {7}).pieces().getFirst().stepSeconds());
    }

    @Test
    void indicesAreThoseOfANaiveSearch() {
        for (long seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            double[] t = new double[1 + random.nextInt(12)];
            double at = random.nextDouble();
            for (int i = 0; i < t.length; i++) {
                t[i] = at;
                at += random.nextInt(4) == 0 ? 5.0 : 1.0;
            }
            TimeBase base = TimeBase.of(t);
            double asked = random.nextBoolean() ? t[random.nextInt(t.length)] : 30.0 * random.nextDouble() - 2.0;
            int due = 0;
            while (due < t.length && t[due] < asked) {
                due++;
            }
            assertEquals(due, base.indexAt(asked), "seed " + seed);
            for (int i = 0; i < t.length; i++) {
                int index = i;
                Piece own = base.pieces().stream()
                        .filter(p -> p.from() <= index && index < p.to())
                        .findFirst()
                        .orElseThrow();
                assertEquals(own, base.pieceAt(i), "seed " + seed + " " + i);
            }
            assertEquals(t[0], base.first());
            assertEquals(t[t.length - 1], base.last());
        }
        assertEquals(0.0, TimeBase.of(new double[0]).first());
        assertEquals(0.0, TimeBase.of(new double[0]).last());
    }

    /** Between samples a straight line; nothing outside, across a gap, beside a missing value; a delay moves it all. */
    @Test
    void valuesBetweenSamples() {
        TimeBase base = TimeBase.of(new double[] {0, 1, 2, 12, 13});
        Signal x = Signal.of(base, new double[] {0, 10, 30, 5, Double.NaN});
        assertEquals(0.0, x.at(0.0));
        assertEquals(30.0, x.at(2.0));
        assertEquals(5.0, x.at(0.5), 1e-15);
        assertEquals(25.0, x.at(1.75), 1e-15);
        assertEquals(5.0, x.at(12.0));
        for (double nowhere : new double[] {-0.1, 5.0, 12.5, 13.1}) {
            assertTrue(Double.isNaN(x.at(nowhere)), "at " + nowhere);
        }
        Signal late = Signal.of(base, 0.25, new double[] {0, 10, 30, 5, 6});
        assertEquals(5.0, late.at(0.75), 1e-15);
        assertEquals(1.25, late.seconds(1));
        assertEquals(1, late.indexAt(1.25));
        assertEquals(2, late.indexAt(1.26));
        assertEquals(0.25, late.skewSeconds());
        assertEquals(-15.0, late.times(-1.5).value(1));
        assertEquals(0.25, late.times(-1.5).skewSeconds());
        assertThrows(IllegalArgumentException.class, () -> Signal.of(base, new double[4]));
    }

    @Test
    void theLargestMagnitudeAndItsPlace() {
        TimeBase base = TimeBase.of(new double[] {0, 1, 2, 3, 4});
        Signal x = Signal.of(base, new double[] {1, -7, Double.NaN, 7, 9});
        assertEquals(9.0, x.largest(0, 5));
        assertEquals(7.0, x.largest(0, 4));
        assertEquals(1.0, x.largest(-3, 1));
        assertEquals(9.0, x.largest(2, 99));
        assertEquals(0.0, x.largest(2, 3));
        assertEquals(1, x.largestAt(0, 4), "the first of equals");
        assertEquals(4, x.largestAt(0, 99));
        assertEquals(2, x.largestAt(2, 3), "from, where all are missing");
        assertEquals(0, x.largestAt(0, 1));
    }
}
