package org.varwright.waveform;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** REC-4, REC-5, REC-7 and REC-8 at their thresholds: what just counts and what just doesn't, and the numbers that go with it. */
class SwitchingEdgesTest {
    private static Cycles cycles(Signal u) {
        return Cycles.of(u.base(), Optional.of(u), 60.0);
    }

    private static Cycles nominal(Signal u) {
        return Cycles.of(u.base(), Optional.empty(), 60.0);
    }

    /** 4 % of the largest fundamental is the least that counts; its size is the peak of the difference from one cycle before. */
    @Test
    void howSmallAChangeIsSeenAndHowLargeItIs() {
        for (double step : new double[] {0.03, 0.05, 0.5}) {
            Signal i = Waves.of(7680.0, 0.5, t -> (t < 0.25 ? 1.0 : 1.0 - step) * Waves.wave(100.0, 60.0, 30.0, t));
            List<Changes.Change> changes = Changes.of(i, cycles(i));
            assertEquals(step < 0.04 ? 0 : 1, changes.size(), step + " " + changes);
            if (step > 0.04) {
                assertEquals(step * 100.0 * Math.sqrt(2.0), changes.getFirst().size(), 0.3, "" + step);
                assertEquals(0.25, changes.getFirst().seconds(), 0.004, "" + step);
            }
        }
    }

    /** Two changes four cycles apart are two, half a cycle apart one; a dip comes and goes. */
    @Test
    void changesOneAfterTheOther() {
        for (double apart : new double[] {0.5, 4.0}) {
            Signal i = Waves.of(
                    7680.0,
                    0.6,
                    t -> (t >= 0.2 && t < 0.2 + apart / 60.0 ? 0.5 : 1.0) * Waves.wave(100.0, 60.0, 30.0, t));
            List<Changes.Change> changes = Changes.of(i, cycles(i));
            assertEquals(apart < 1.0 ? 1 : 2, changes.size(), apart + " " + changes);
            assertEquals(0.2, changes.getFirst().seconds(), 0.002);
            assertEquals(
                    0.2 + apart / 60.0,
                    apart < 1.0
                            ? changes.getFirst().settledSeconds()
                            : changes.get(1).seconds(),
                    0.004);
        }
    }

    /** What still changes when the record ends is settled nowhere before its end. */
    @Test
    void aChangeThatTheRecordCutsOff() {
        Signal i = Waves.of(7680.0, 0.21, t -> (t < 0.2 ? 1.0 : 0.5) * Waves.wave(100.0, 60.0, 30.0, t));
        List<Changes.Change> changes = Changes.of(i, cycles(i));
        assertEquals(1, changes.size());
        assertEquals(i.seconds(i.size() - 1), changes.getFirst().settledSeconds(), 1e-12);
        assertEquals(List.of(), Changes.of(Waves.of(7680.0, 0.01, t -> t), nominal(Waves.of(7680.0, 0.01, t -> t))));
    }

    /** One sample that is far off is a change; one a little off is noise. */
    @Test
    void oneSampleAlone() {
        for (double spike : new double[] {8.0, 40.0}) {
            Signal u = Waves.of(
                    7680.0, 0.5, t -> Waves.wave(100.0, 60.0, 30.0, t) + (Math.abs(t - 0.25) < 1e-5 ? spike : 0.0));
            assertEquals(spike > 20.0, !Changes.of(u, cycles(u)).isEmpty(), "" + spike);
        }
    }

    /** A pause of 0.06 cycles is a zero of the wave, a longer one a pause; a current below 3 % of the usual is none. */
    @Test
    void pausesAndSmallCurrents() {
        double cycle = 1.0 / 60.0;
        for (double pause : new double[] {0.03, 0.4}) {
            double from = 8.0 * cycle + 0.25 * cycle;
            Signal i = Waves.of(
                    15360.0, 0.3, t -> t >= from && t < from + pause * cycle ? 0.0 : Waves.wave(50.0, 60.0, 0.0, t));
            assertEquals(pause < 0.06 ? 1 : 2, Conduction.of(i, nominal(i), 0.5).size(), "" + pause);
        }
        // a remainder is told from the noise of the channel where it is above a fifth
        for (double rest : new double[] {0.02, 0.1, 0.25}) {
            Signal i = Waves.of(15360.0, 0.3, t -> (t < 0.15 ? 1.0 : rest) * Waves.wave(50.0, 60.0, 0.0, t));
            List<Conduction.Run> runs = Conduction.of(i, nominal(i), 0.5);
            assertEquals(rest > 0.2, runs.getLast().toEnd(), rest + " " + runs);
        }
    }

    /** A channel whose fundamental never reaches the least peak carries nothing: 50 A are a peak of 70.7 A. */
    @Test
    void theLeastPeakThatCounts() {
        Signal i = Waves.of(7680.0, 0.3, t -> Waves.wave(50.0, 60.0, 0.0, t));
        assertEquals(1, Conduction.of(i, nominal(i), 70.0).size());
        assertEquals(0, Conduction.of(i, nominal(i), 71.0).size());
        Conduction.Run run = Conduction.of(i, nominal(i), 70.0).getFirst();
        assertEquals(0, run.from(), 8);
        assertEquals(i.size(), run.to(), 8);
        assertEquals(0.3, run.seconds(), 0.002);
    }

    /** What a current transformer gives back has one sign and lasts; a last half-wave of the same sign is still current. */
    @Test
    void aTailOfTheSameSignAsTheLastHalfWave() {
        double cycle = 1.0 / 60.0;
        // cos rises through zero at 8.75 cycles; the half-wave up to 9.25 is positive, and so is the tail
        double stop = 9.25 * cycle;
        Signal i = Waves.of(
                15360.0, 0.35, t -> t < stop ? Waves.wave(50.0, 60.0, 0.0, t) : 12.0 * Math.exp(-(t - stop) / 0.05));
        List<Conduction.Run> runs = Conduction.of(i, nominal(i), 0.5);
        assertEquals(1, runs.size());
        assertEquals(stop, runs.getFirst().stopSeconds(), 0.05 * cycle);
        // a tail that is over within 0.6 cycles is taken for current: it can't be told from a last half-wave
        Signal brief = Waves.of(
                15360.0, 0.35, t -> t < stop ? Waves.wave(50.0, 60.0, 0.0, t) : t < stop + 0.2 * cycle ? -12.0 : 0.0);
        assertEquals(
                stop + 0.2 * cycle,
                Conduction.of(brief, nominal(brief), 0.5).getFirst().stopSeconds(),
                0.03 * cycle);
    }

    /** Means of ten cycles by hand: from 8000 V with 2 s; only what lies between the times counts. */
    @Test
    void aDecayBetweenItsTimes() {
        Signal v =
                Waves.of(1920.0, 1.0, t -> t < 0.3 ? 500.0 : t > 0.7 ? -500.0 : -8000.0 * Math.exp(-(t - 0.3) / 2.0));
        Decay.Falls falls = assertInstanceOf(Decay.Falls.class, Decay.of(v, nominal(v), 0.3, 0.7, 100.0));
        assertEquals(2.0, falls.tauSeconds(), 1e-3);
        assertEquals(-8000.0, falls.startVolts(), 1.0);
        assertEquals(0.4, falls.seconds(), 3.0 / 60.0);
        assertTrue(falls.tauSigma() < 1e-3);
        // three cycles are the fewest
        assertInstanceOf(Decay.Nothing.class, Decay.of(v, nominal(v), 0.3, 0.3 + 2.9 / 60.0, 100.0));
        assertFalse(Decay.of(v, nominal(v), 0.3, 0.3 + 5.1 / 60.0, 100.0) instanceof Decay.Nothing);
        // what falls under the least, or turns its sign, ends it
        Signal fast = Waves.of(1920.0, 1.0, t -> 1000.0 * Math.exp(-t / 0.1));
        Decay.Falls under = assertInstanceOf(Decay.Falls.class, Decay.of(fast, nominal(fast), 0.0, 1.0, 100.0));
        assertEquals(0.1, under.tauSeconds(), 1e-3);
        assertEquals(0.1 * Math.log(10.0), under.seconds(), 2.0 / 60.0, "1000 V to 100 V");
    }

    /** A fall of less than 0.2 % in all is none that a recorder tells: the time constant is only longer than 500 times the time watched. */
    @Test
    void aDecayTooSlowForTheRecord() {
        for (double tau : new double[] {100.0, 2000.0}) {
            Signal v = Waves.of(1920.0, 1.0, t -> 5000.0 * Math.exp(-t / tau));
            Decay decay = Decay.of(v, nominal(v), 0.0, 1.0, 100.0);
            if (tau < 500.0) {
                assertEquals(tau, assertInstanceOf(Decay.Falls.class, decay).tauSeconds(), 0.01 * tau);
            } else {
                Decay.Stands stands = assertInstanceOf(Decay.Stands.class, decay);
                assertEquals(5000.0, stands.startVolts(), 1.0);
                assertTrue(stands.longerThanSeconds() > 400.0 && stands.longerThanSeconds() <= tau, stands.toString());
                assertEquals(1.0, stands.seconds(), 2.0 / 60.0);
            }
        }
        // a voltage that rises does not fall
        Signal rises = Waves.of(1920.0, 1.0, t -> 5000.0 * Math.exp(t / 3.0));
        assertInstanceOf(Decay.Stands.class, Decay.of(rises, nominal(rises), 0.0, 1.0, 100.0));
    }

    /** An oscillation that doesn't fall, one below 5 % of the loudest, one above what the samples tell. */
    @Test
    void ringingAtItsEdges() {
        Signal lasts = ring(7680.0, 20.0, 600.0, Double.POSITIVE_INFINITY);
        Ringing.Rang rang = assertInstanceOf(Ringing.Rang.class, Ringing.of(lasts, 0.05, 0.2, 60.0));
        assertEquals(600.0, rang.hertz(), 1.0);
        assertEquals(20.0, rang.amplitude(), 0.3);
        assertTrue(rang.decaySeconds() > 0.2, rang.toString());
        assertEquals(7680.0 / rang.hertz(), rang.samplesInOne(), 1e-9);
        // 12.8 samples in one: the highest lies at most 1 − cos(π/12.8) = 3 % below the peak
        assertEquals(1.0 - Math.cos(Math.PI / 12.8), rang.peakMayBeMissedBy(), 2e-4);
        assertInstanceOf(Ringing.Quiet.class, Ringing.of(ring(7680.0, 2.0, 600.0, 5e-3), 0.05, 0.2, 60.0));
        // four samples in one oscillation are the fewest: 1920 Hz at 7680 a second
        assertInstanceOf(Ringing.Rang.class, Ringing.of(ring(7680.0, 100.0, 1800.0, 3e-3), 0.05, 0.2, 60.0));
        Ringing.TooSlow fast =
                assertInstanceOf(Ringing.TooSlow.class, Ringing.of(ring(7680.0, 100.0, 2400.0, 3e-3), 0.05, 0.2, 60.0));
        assertEquals(7680.0, fast.rate(), 1e-6);
        assertEquals(1920.0, fast.highestHertz(), 1e-6);
        // ten samples up to the limit are too few
        assertInstanceOf(
                Ringing.TooSlow.class, Ringing.of(ring(7680.0, 100.0, 600.0, 3e-3), 0.05, 0.05 + 10.0 / 7680.0, 60.0));
        assertInstanceOf(Ringing.TooSlow.class, Ringing.of(lasts, 9.0, 10.0, 60.0));
    }

    private static Signal ring(double rate, double amplitude, double hertz, double tau) {
        return Waves.of(
                rate,
                0.2,
                t -> t < 0.05
                        ? 0.0
                        : Waves.wave(50.0, 60.0, 40.0, t)
                                + amplitude
                                        * Math.exp(-(t - 0.05) / tau)
                                        * Math.cos(2.0 * Math.PI * hertz * (t - 0.05)));
    }
}
