package org.varwright.waveform;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.quantity.Complex;

/** REC-3. */
class SequenceComponentsTest {
    @Test
    void oneConductorOfThreeOpen() {
        // lines A and B carry 10 A at 0° and 180°, C is open: 5.78∠−30°, 5.78∠30° and 0. W. D. Stevenson, Elements of
        // Power System Analysis, chapter on
        // symmetrical components, the example of a line to a delta with one conductor open; follows from the definition
        // as 10/√3.
        SequenceComponents s =
                SequenceComponents.of(Complex.polar(10.0, 0.0), Complex.polar(10.0, 180.0), Complex.ZERO);
        CyclesTest.near(Complex.polar(10.0 / Math.sqrt(3.0), -30.0), s.positive(), 1e-12);
        CyclesTest.near(Complex.polar(10.0 / Math.sqrt(3.0), 30.0), s.negative(), 1e-12);
        CyclesTest.near(Complex.ZERO, s.zero(), 1e-12);
        assertEquals(5.78, s.positive().magnitude(), 0.01);
    }

    @Test
    void lawPhasesComeBack() {
        for (long seed = 1; seed <= 50; seed++) {
            Random random = new Random(seed);
            Complex a = Complex.polar(random.nextDouble(), 360.0 * random.nextDouble());
            Complex b = Complex.polar(random.nextDouble(), 360.0 * random.nextDouble());
            Complex c = Complex.polar(random.nextDouble(), 360.0 * random.nextDouble());
            List<Complex> back = SequenceComponents.of(a, b, c).phases();
            CyclesTest.near(a, back.get(0), 1e-12);
            CyclesTest.near(b, back.get(1), 1e-12);
            CyclesTest.near(c, back.get(2), 1e-12);
        }
    }
}
