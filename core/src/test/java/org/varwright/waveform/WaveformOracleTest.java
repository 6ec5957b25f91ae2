package org.varwright.waveform;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** REC-1 to REC-8 against waveforms that ngspice computes from circuits with known answers. */
class WaveformOracleTest {
    /**
     * <pre>
     *   (e 60.2 Hz)──R──L──[closes at 50 ms]──C──ground
     * </pre>
     *
     * Closed at the peak: {@code Î ≈ E·√(C/L)} on top of the fundamental, {@code f = 1/(2π√(LC))}, decay {@code 2L/R}.
     */
    @Test
    void inrushOfOneCapacitor() throws Exception {
        double l = 2.4e-3;
        double c = 30e-6;
        double r = 1.5;
        double closes = 50.0e-3;
        double peak = 10000.0;
        double omega = 2.0 * Math.PI * 60.2;
        String circuit = "inrush\nBe e 0 V=" + text(peak) + "*cos(" + text(omega) + "*(time-" + text(closes)
                + "))\nRs e a " + text(r) + "\nLs a b " + text(l)
                + "\nSw b d g 0 pole off\n.model pole sw(vt=0.5 vh=0.1 ron=1e-3 roff=1e9)\nVg g 0 PWL(0 0 "
                + text(closes - 1e-7) + " 0 "
                + text(closes) + " 1)\nVm d f 0\nC1 f 0 " + text(c) + "\nRx b 0 1e5\n.options reltol=1e-5\n";
        Map<String, String> vectors = new LinkedHashMap<>();
        vectors.put("i", "i(vm)");
        vectors.put("u", "v(e)");
        Map<String, Signal> waves = SpiceWaves.run(circuit, 15360.0, 0.0, 0.25, 2e-6, vectors);
        Signal i = Objects.requireNonNull(waves.get("i"));
        Signal u = Objects.requireNonNull(waves.get("u"));
        Cycles cycles = Cycles.of(i.base(), Optional.of(u), 60.0);
        assertEquals(60.2, cycles.hertz(), 1e-3);
        Conduction.Run run = Conduction.of(i, cycles, 1.0).getFirst();
        assertEquals(closes, run.startSeconds(), 1.0 / 15360.0);
        assertTrue(run.toEnd());
        Ringing.Rang rang = assertInstanceOf(Ringing.Rang.class, Ringing.of(i, run.startSeconds(), 0.25, 60.2));
        double alpha = r / (2.0 * l);
        double hertz = Math.sqrt(1.0 / (l * c) - alpha * alpha) / (2.0 * Math.PI);
        assertEquals(hertz, rang.hertz(), 0.005 * hertz);
        assertEquals(1.0 / alpha, rang.decaySeconds(), 0.05 / alpha);
        // the settled current: E/|Z|
        Window last = cycles.windows().getLast();
        double z = Math.hypot(r, 1.0 / (omega * c) - omega * l);
        assertEquals(peak / z / Math.sqrt(2.0), last.phasor(i).orElseThrow().magnitude(), 0.003 * peak / z);
        double degrees = last.phasor(i)
                .orElseThrow()
                .dividedBy(last.phasor(u).orElseThrow())
                .degrees();
        assertEquals(Math.toDegrees(Math.atan2(1.0 / (omega * c) - omega * l, r)), degrees, 0.5);
    }

    /** <pre>
     *   C charged to 8 kV ──┬── R 2 MΩ ── ground
     * </pre> */
    @Test
    void decayOfOneCapacitor() throws Exception {
        String circuit = "decay\nC1 a 0 1e-6 ic=8000\nR1 a 0 2e6\n";
        Signal v = Objects.requireNonNull(SpiceWaves.run(circuit, 1920.0, 0.0, 2.0, 1e-3, Map.of("v", "v(a)"))
                .get("v"));
        Decay.Falls falls = assertInstanceOf(
                Decay.Falls.class, Decay.of(v, Cycles.of(v.base(), Optional.empty(), 60.0), 0.0, 2.0, 50.0));
        assertEquals(2.0, falls.tauSeconds(), 0.01);
        assertEquals(8000.0, falls.startVolts(), 8.0);
    }

    private static String text(double value) {
        return String.format(Locale.ROOT, "%.12e", value);
    }
}
