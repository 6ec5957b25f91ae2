package org.varwright.waveform;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** REC-7. */
class RingingTest {
    @Test
    void frequencyAmplitudeAndDampingAreThoseThatWerePutIn() {
        for (long seed = 1; seed <= 40; seed++) {
            Random random = new Random(seed);
            double hertz = 250.0 + 1500.0 * random.nextDouble();
            double tau = 1e-3 + 8e-3 * random.nextDouble();
            double start = 0.05 + 0.01 * random.nextDouble();
            Signal i = Waves.of(
                    15360.0,
                    0.2,
                    t -> t < start
                            ? 0.0
                            : Waves.wave(50.0, 60.0, 40.0, t)
                                    + 700.0
                                            * Math.exp(-(t - start) / tau)
                                            * Math.sin(2.0 * Math.PI * hertz * (t - start)));
            Ringing.Rang rang = assertInstanceOf(
                    Ringing.Rang.class, Ringing.of(i, start, 0.2, 60.0), "seed " + seed + " " + hertz + " " + tau);
            assertEquals(hertz, rang.hertz(), 1e-3 * hertz, "seed " + seed);
            assertEquals(700.0, rang.amplitude(), 7.0, "seed " + seed);
            assertEquals(tau, rang.decaySeconds(), 0.03 * tau, "seed " + seed);
            assertTrue(rang.explained() > 0.99, "seed " + seed);
        }
    }

    @Test
    void tooFewSamplesAreSaid() {
        Signal i = Waves.of(
                1200.0,
                0.2,
                t -> t < 0.05
                        ? 0.0
                        : Waves.wave(50.0, 60.0, 40.0, t)
                                + 700.0 * Math.exp(-(t - 0.05) / 3e-3) * Math.sin(2.0 * Math.PI * 470.0 * (t - 0.05)));
        Ringing.TooSlow slow = assertInstanceOf(Ringing.TooSlow.class, Ringing.of(i, 0.05, 0.2, 60.0));
        assertEquals(300.0, slow.highestHertz(), 1e-6);
    }

    @Test
    void aPlainWaveDoesNotRing() {
        Signal i = Waves.of(7680.0, 0.2, t -> Waves.wave(50.0, 60.0, 40.0, t));
        assertInstanceOf(Ringing.Quiet.class, Ringing.of(i, 0.05, 0.2, 60.0));
    }
}
