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
}
