package org.varwright.transients;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Small circuits whose answer is known by hand. */
class TransientTest {
    private static final double OMEGA = 2.0 * Math.PI * 50.0;

    /**
     * <pre>
     *   ground ──(e)──L── 1 ──[pole]── 2 ──┤├── ground        closed with the source at its peak
     * </pre>
     */
    private static SwitchedCircuit single(double ohms, double henries, double farads) {
        return new SwitchedCircuit(
                3,
                List.of(
                        Branch.source("source", 1, ohms, henries, new Emf(1000.0, 0.0)),
                        Branch.line("pole", 1, 2, 0.0, 0.0),
                        Branch.capacitor("leg", 2, 0, 0.0, 0.0, farads)),
                OMEGA);
    }

    private static Outcome close(SwitchedCircuit circuit, double degrees, double seconds) {
        return Transient.run(
                Setting.discharged(circuit, List.of(1)),
                degrees,
                List.of(new Act.Close(1, 0.0)),
                List.of(Probe.amperes("i", 1), Probe.capacitorVolts("u", 2), Probe.nodeVolts("bus", 1)),
                seconds,
                true);
    }

    /** Without resistance the answer is two sinusoids: {@code u = V·(cos ωt − cos ω₀t)·ω₀²/(ω₀² − ω²)} at the peak. */
    @Test
    void losslessClosingAtThePeakIsTwoSinusoids() {
        double l = 1e-3;
        double c = 20e-6;
        double natural = 1.0 / Math.sqrt(l * c);
        Outcome outcome = close(single(0.0, l, c), 90.0, 0.01);
        double factor = 1000.0 * natural * natural / (natural * natural - OMEGA * OMEGA);
        Wave wave = outcome.wave().orElseThrow();
        for (int i = 0; i < wave.seconds().length; i++) {
            double t = wave.seconds()[i];
            assertEquals(factor * (Math.cos(OMEGA * t) - Math.cos(natural * t)), wave.values()[1][i], 1e-8 * factor);
        }
    }

    @Test
    void frequency() {
        Outcome outcome = close(single(0.1, 1e-3, 20e-6), 90.0, 0.005);
        assertEquals(1.0 / (2.0 * Math.PI * Math.sqrt(1e-3 * 20e-6)), outcome.hertz(0), 1e-6);
        assertEquals(0.0, outcome.hertz(1));
    }

    /** The bus falls to nothing when a bare capacitor is joined to it. */
    @Test
    void theBusDropsToTheCapacitor() {
        Happening closing =
                close(single(0.1, 1e-3, 20e-6), 90.0, 1e-4).happenings().getFirst();
        assertEquals(1000.0, closing.before().get(2), 1e-9);
        assertEquals(0.0, closing.after().get(2), 1e-9);
    }

    /** Closed at the angle of its settled state with the charge of it, nothing swings. */
    @Test
    void openingAtTheZeroOfTheCurrentLeavesThePeak() {
        SwitchedCircuit circuit = single(0.0, 1e-3, 20e-6);
        Outcome outcome = Transient.run(
                Setting.discharged(circuit, List.of()),
                10.0,
                List.of(new Act.Open(1, 0.0)),
                List.of(Probe.amperes("i", 1), Probe.capacitorVolts("u", 2), Probe.between("across", 1, 2)),
                0.03,
                true);
        Happening opening = outcome.happenings().getFirst();
        assertEquals(Happening.Kind.OPENED, opening.kind());
        // the current leads the voltage by 90 degrees: its zero is at the peak of the voltage, 80 degrees later
        assertEquals(80.0 / 360.0 / 50.0, opening.seconds(), 1e-12);
        assertEquals(0.0, opening.before().getFirst(), 1e-9);
        double held = 1000.0 / (1.0 - OMEGA * OMEGA * 1e-3 * 20e-6);
        double[] volts = outcome.wave().orElseThrow().values()[1];
        assertEquals(held, volts[volts.length - 1], 1e-6);
        assertEquals(1000.0 + held, outcome.swings().get(2).magnitude(), 1e-6);
    }

    /** A restrike at the full recovery voltage drives the capacitor to three times the peak the other way. */
    @Test
    void aRestrikeAtTwiceThePeakDrivesToThreeTimes() {
        SwitchedCircuit circuit = single(0.0, 1e-3, 1e-6);
        Outcome outcome = Transient.run(
                Setting.discharged(circuit, List.of()),
                10.0,
                List.of(new Act.Open(1, 0.0), new Act.Restrike(1, 1999.0)),
                List.of(Probe.amperes("i", 1), Probe.capacitorVolts("u", 2)),
                0.03,
                false);
        assertEquals(Happening.Kind.RESTRUCK, outcome.happenings().get(1).kind());
        assertEquals(3000.0, outcome.swings().get(1).magnitude(), 20.0);
    }

    /** What is never reached never happens. */
    @Test
    void aRestrikeOutOfReachDoesNotHappen() {
        SwitchedCircuit circuit = single(0.0, 1e-3, 1e-6);
        Outcome outcome = Transient.run(
                Setting.discharged(circuit, List.of()),
                10.0,
                List.of(new Act.Open(1, 0.0), new Act.Restrike(1, 2100.0)),
                List.of(Probe.amperes("i", 1)),
                0.03,
                false);
        assertEquals(1, outcome.happenings().size());
    }

    /** Capacitors side by side with nothing between would carry an impulse: refused, not answered. */
    @Test
    void aLoopOfCapacitorsAloneIsRefused() {
        SwitchedCircuit circuit = new SwitchedCircuit(
                2,
                List.of(
                        Branch.source("source", 1, 0.1, 1e-3, new Emf(1000.0, 0.0)),
                        Branch.capacitor("one", 1, 0, 0.0, 0.0, 1e-6),
                        Branch.capacitor("two", 1, 0, 0.0, 0.0, 1e-6)),
                OMEGA);
        IllegalArgumentException e = assertThrows(
                IllegalArgumentException.class,
                () -> Transient.run(
                        Setting.discharged(circuit, List.of()),
                        0.0,
                        List.of(),
                        List.of(Probe.amperes("i", 1)),
                        0.01,
                        false));
        assertTrue(String.valueOf(e.getMessage()).contains("no inductance"), e.toString());
    }

    /** Trapped charge against the source is swung through: {@code u = two sinusoids + u0·cos ω₀t}; with its sign. */
    @Test
    void trappedChargeSwingsRoundTheSource() {
        double l = 1e-3;
        double c = 20e-6;
        double natural = 1.0 / Math.sqrt(l * c);
        double factor = 1000.0 * natural * natural / (natural * natural - OMEGA * OMEGA);
        for (double trapped : new double[] {-500.0, 400.0}) {
            Wave wave = Transient.run(
                            new Setting(single(0.0, l, c), List.of(1), List.of(0.0, 0.0, trapped)),
                            90.0,
                            List.of(new Act.Close(1, 0.0)),
                            List.of(Probe.capacitorVolts("u", 2)),
                            0.004,
                            true)
                    .wave()
                    .orElseThrow();
            for (int i = 0; i < wave.seconds().length; i++) {
                double t = wave.seconds()[i];
                double expected =
                        factor * (Math.cos(OMEGA * t) - Math.cos(natural * t)) + trapped * Math.cos(natural * t);
                assertEquals(expected, wave.values()[0][i], 1e-6);
            }
        }
    }

    /**
     * A capacitor cut off at both ends at the zero of its current keeps its charge, and its terminals the potentials that they had then: nothing ties it down.
     *
     * <pre>
     *   ground ──(e)──L── 1 ──[pole]── 2 ──┤├── 3 ──[pole]── ground
     * </pre>
     */
    @Test
    void anIslandKeepsItsPotential() {
        SwitchedCircuit circuit = new SwitchedCircuit(
                4,
                List.of(
                        Branch.source("source", 1, 0.0, 1e-3, new Emf(1000.0, 0.0)),
                        Branch.line("upper", 1, 2, 0.0, 0.0),
                        Branch.capacitor("leg", 2, 3, 0.0, 0.0, 20e-6),
                        Branch.line("lower", 3, 0, 0.0, 0.0)),
                OMEGA);
        Outcome outcome = Transient.run(
                Setting.discharged(circuit, List.of()),
                10.0,
                List.of(new Act.Open(1, 0.0), new Act.Open(3, 0.0)),
                List.of(Probe.nodeVolts("2", 2), Probe.nodeVolts("3", 3), Probe.nodeVolts("bus", 1)),
                0.02,
                true);
        assertEquals(2, outcome.happenings().size());
        double held = 1000.0 / (1.0 - OMEGA * OMEGA * 1e-3 * 20e-6);
        double[][] values = outcome.wave().orElseThrow().values();
        int last = values[0].length - 1;
        assertEquals(held, values[0][last], 1e-6);
        assertEquals(0.0, values[1][last], 1e-6);
        // the bus is the source's alone by then: 10° + 360°
        assertEquals(1000.0 * Math.sin(Math.toRadians(10.0)), values[2][last], 1e-6);
        // the times of the wave rise, and stand twice where something changed
        double[] seconds = outcome.wave().orElseThrow().seconds();
        for (int i = 1; i < seconds.length; i++) {
            assertTrue(seconds[i] >= seconds[i - 1]);
        }
        assertEquals(0.0, seconds[0]);
        assertEquals(0.02, seconds[last]);
    }

    /**
     * Two capacitors swing in two ways; the exact frequencies by the quadratic formula of
     * {@code C1·u1'' = −u1/L − (u1 − u2)/l}, {@code C2·u2'' = (u1 − u2)/l}. What closes hears the quick one most, the source the slow one.
     */
    @Test
    void theStrongestOfTwoOscillationsIsTold() {
        double big = 2e-3;
        double small = 40e-6;
        double c1 = 30e-6;
        double c2 = 20e-6;
        SwitchedCircuit circuit = new SwitchedCircuit(
                4,
                List.of(
                        Branch.source("source", 1, 0.0, big, new Emf(1000.0, 0.0)),
                        Branch.capacitor("on", 1, 0, 0.0, 0.0, c1),
                        Branch.line("pole", 1, 2, 0.0, small),
                        Branch.capacitor("closing", 2, 0, 0.0, 0.0, c2)),
                OMEGA);
        Outcome outcome = Transient.run(
                Setting.discharged(circuit, List.of(2)),
                90.0,
                List.of(new Act.Close(2, 0.0)),
                List.of(Probe.amperes("pole", 2), Probe.amperes("source", 0)),
                0.01,
                false);
        double trace = (1.0 / big + 1.0 / small) / c1 + 1.0 / (small * c2);
        double product = 1.0 / (big * c1 * small * c2);
        double root = Math.sqrt(trace * trace / 4.0 - product);
        assertEquals(Math.sqrt(trace / 2.0 + root) / (2.0 * Math.PI), outcome.hertz(0), 1e-4);
        assertEquals(Math.sqrt(trace / 2.0 - root) / (2.0 * Math.PI), outcome.hertz(1), 1e-4);
    }

    /** Acts need not be told in their order; a pole that closes later closes later. */
    @Test
    void actsComeInTheOrderOfTheirTimes() {
        SwitchedCircuit circuit = new SwitchedCircuit(
                4,
                List.of(
                        Branch.source("source", 1, 0.1, 1e-3, new Emf(1000.0, 0.0)),
                        Branch.line("late", 1, 2, 0.0, 1e-4),
                        Branch.capacitor("one", 2, 0, 0.0, 0.0, 1e-6),
                        Branch.line("early", 1, 3, 0.0, 1e-4),
                        Branch.capacitor("two", 3, 0, 0.0, 0.0, 1e-6)),
                OMEGA);
        Outcome outcome = Transient.run(
                Setting.discharged(circuit, List.of(1, 3)),
                0.0,
                List.of(new Act.Close(1, 0.0031), new Act.Close(3, 0.0012)),
                List.of(Probe.amperes("i", 1)),
                0.005,
                false);
        assertEquals(
                List.of(3, 1),
                outcome.happenings().stream().map(Happening::branch).toList());
        assertEquals(0.0012, outcome.happenings().get(0).seconds(), 1e-15);
        assertEquals(0.0031, outcome.happenings().get(1).seconds(), 1e-15);
        // before the first ring nothing swings
        assertEquals(
                0.0,
                Transient.run(
                                Setting.discharged(circuit, List.of(1, 3)),
                                0.0,
                                List.of(),
                                List.of(Probe.amperes("i", 0)),
                                0.005,
                                false)
                        .hertz(0));
    }

    /** Resistance damps: {@code i = U/(ωL)·e^(−αt)·sin ωt}, {@code α = R/2L}, {@code ω² = 1/LC − α²}, R shared by two branches. */
    @Test
    void resistanceDampsTheRing() {
        double l = 1e-3;
        double c = 10e-6;
        SwitchedCircuit circuit = new SwitchedCircuit(
                3,
                List.of(
                        Branch.capacitor("charged", 1, 0, 0.5, 0.0, c),
                        Branch.line("pole", 1, 2, 0.0, 0.0),
                        Branch.line("coil", 2, 0, 1.5, l)),
                OMEGA);
        Wave wave = Transient.run(
                        new Setting(circuit, List.of(1), List.of(1000.0, 0.0, 0.0)),
                        0.0,
                        List.of(new Act.Close(1, 0.0)),
                        List.of(Probe.amperes("i", 1), Probe.nodeVolts("terminal", 1)),
                        0.003,
                        true)
                .wave()
                .orElseThrow();
        double alpha = 2.0 / (2.0 * l);
        double w = Math.sqrt(1.0 / (l * c) - alpha * alpha);
        double crest = 1000.0 / (w * l);
        // the first line was written down before the pole closed
        for (int i = 1; i < wave.seconds().length; i++) {
            double t = wave.seconds()[i];
            double amperes = crest * Math.exp(-alpha * t) * Math.sin(w * t);
            assertEquals(amperes, wave.values()[0][i], 1e-9 * crest);
            // what the coil and its resistance take
            double slope = crest * Math.exp(-alpha * t) * (w * Math.cos(w * t) - alpha * Math.sin(w * t));
            assertEquals(1.5 * amperes + l * slope, wave.values()[1][i], 1e-6);
        }
    }

    /** An open source's terminal stands at its own voltage, each phase at its own angle. */
    @Test
    void aSourceStandsAtItsAngle() {
        for (double ahead : new double[] {0.0, -120.0, 75.0}) {
            SwitchedCircuit circuit = new SwitchedCircuit(
                    3,
                    List.of(
                            Branch.source("source", 1, 0.1, 1e-3, new Emf(1000.0, ahead)),
                            Branch.line("pole", 1, 2, 0.0, 0.0),
                            Branch.capacitor("leg", 2, 0, 0.0, 0.0, 20e-6)),
                    OMEGA);
            Wave wave = Transient.run(
                            Setting.discharged(circuit, List.of(1)),
                            20.0,
                            List.of(),
                            List.of(Probe.nodeVolts("1", 1)),
                            0.02,
                            true)
                    .wave()
                    .orElseThrow();
            for (int i = 0; i < wave.seconds().length; i++) {
                double angle = OMEGA * wave.seconds()[i] + Math.toRadians(20.0 + ahead);
                assertEquals(1000.0 * Math.sin(angle), wave.values()[0][i], 1e-6);
            }
        }
    }
}
