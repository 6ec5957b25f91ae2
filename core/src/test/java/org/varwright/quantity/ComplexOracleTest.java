package org.varwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.ejml.data.Complex_F64;
import org.ejml.ops.ComplexMath_F64;
import org.junit.jupiter.api.Test;

/** Against the complex numbers of EJML, a general library. */
class ComplexOracleTest {
    private static final double ROUNDING = 1e-13;

    @Test
    void everyOperationAgrees() {
        for (long seed = 1; seed <= 500; seed++) {
            Random random = new Random(seed);
            // Parts from 1e-9 to 1e9, so that either part may be the larger by far.
            Complex a = new Complex(any(random), any(random));
            Complex b = new Complex(any(random), any(random));
            Complex_F64 x = new Complex_F64(a.re(), a.im());
            Complex_F64 y = new Complex_F64(b.re(), b.im());
            String what = "seed " + seed + ": " + a + ", " + b;
            Complex_F64 result = new Complex_F64();
            ComplexMath_F64.plus(x, y, result);
            same(result, a.plus(b), what);
            ComplexMath_F64.minus(x, y, result);
            same(result, a.minus(b), what);
            ComplexMath_F64.multiply(x, y, result);
            same(result, a.times(b), what);
            ComplexMath_F64.divide(x, y, result);
            same(result, a.dividedBy(b), what);
            ComplexMath_F64.conj(x, result);
            same(result, a.conjugate(), what);
            assertEquals(x.getMagnitude(), a.magnitude(), ROUNDING * x.getMagnitude(), what);
            same(new Complex_F64(-a.re(), -a.im()), a.negated(), what);
            same(new Complex_F64(3.0 * a.re(), 3.0 * a.im()), a.times(3.0), what);
            Complex back = Complex.polar(a.magnitude(), a.degrees());
            same(x, back, what);
        }
    }

    /** Magnitude 1e-9 to 1e9, either sign. */
    private static double any(Random random) {
        return (random.nextBoolean() ? 1.0 : -1.0) * Math.pow(10.0, 18.0 * random.nextDouble() - 9.0);
    }

    private static void same(Complex_F64 expected, Complex actual, String what) {
        double allowed = ROUNDING * Math.max(expected.getMagnitude(), 1e-300);
        assertEquals(expected.getReal(), actual.re(), allowed, what);
        assertEquals(expected.getImaginary(), actual.im(), allowed, what);
    }

    @Test
    void anglesAreInDegreesAndZeroHasNone() {
        assertEquals(0.0, Complex.ZERO.degrees());
        assertEquals(90.0, Complex.J.degrees(), 1e-12);
        assertEquals(-90.0, Complex.J.negated().degrees(), 1e-12);
        assertEquals(180.0, new Complex(-1.0, 0.0).degrees(), 1e-12);
        assertEquals(0.0, Complex.ONE.degrees(), 1e-12);
        assertEquals(-30.0, Complex.polar(2.0, -30.0).degrees(), 1e-12);
        assertEquals(Math.sqrt(3.0), Complex.polar(2.0, -30.0).re(), 1e-12);
        assertEquals(-1.0, Complex.polar(2.0, -30.0).im(), 1e-12);
    }

    @Test
    void divisionByLargePartsDoesNotOverflow() {
        Complex quotient = new Complex(1e300, 1e300).dividedBy(new Complex(1e300, 1e300));
        assertEquals(1.0, quotient.re(), 1e-12);
        assertEquals(0.0, quotient.im(), 1e-12);
    }

    @Test
    void finiteMeansBothParts() {
        assertTrue(new Complex(1.0, -1.0).isFinite());
        assertFalse(new Complex(Double.NaN, 0.0).isFinite());
        assertFalse(new Complex(0.0, Double.POSITIVE_INFINITY).isFinite());
    }
}
