package org.varwright.waveform;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** REC-8. */
class DecayTest {
    @Test
    void timeConstantAndChargeAreThoseThatWerePutIn() {
        for (long seed = 1; seed <= 30; seed++) {
            Random random = new Random(seed);
            double tau = 1.0 + 60.0 * random.nextDouble();
            double left = (random.nextBoolean() ? 1.0 : -1.0) * (3000.0 + 7000.0 * random.nextDouble());
            Signal v = Waves.of(
                    1920.0,
                    3.0,
                    t -> t < 0.2
                            ? Waves.wave(7200.0, 60.0, 0.0, t)
                            : left * Math.exp(-(t - 0.2) / tau) + 3.0 * random.nextGaussian());
            Cycles cycles = Cycles.of(v.base(), Optional.of(v), 60.0);
            Decay.Falls falls =
                    assertInstanceOf(Decay.Falls.class, Decay.of(v, cycles, 0.2, 3.0, 100.0), "seed " + seed);
            assertEquals(tau, falls.tauSeconds(), Math.max(0.01 * tau, 4.0 * falls.tauSigma()), "seed " + seed);
            assertEquals(left, falls.startVolts(), 0.005 * Math.abs(left), "seed " + seed);
        }
    }

    @Test
    void aVoltageThatStandsIsNotGivenATimeConstant() {
        Random random = new Random(3);
        Signal v = Waves.of(1920.0, 0.5, t -> 5000.0 + 3.0 * random.nextGaussian());
        Decay.Stands stands = assertInstanceOf(
                Decay.Stands.class, Decay.of(v, Cycles.of(v.base(), Optional.empty(), 60.0), 0.0, 0.5, 100.0));
        assertEquals(5000.0, stands.startVolts(), 5.0);
        assertTrue(stands.longerThanSeconds() > 10.0, stands.toString());
    }

    @Test
    void nothingLeftIsNothing() {
        Signal v = Waves.of(1920.0, 0.5, t -> Waves.wave(7200.0, 60.0, 0.0, t));
        assertInstanceOf(Decay.Nothing.class, Decay.of(v, Cycles.of(v.base(), Optional.of(v), 60.0), 0.0, 0.5, 100.0));
    }
}
