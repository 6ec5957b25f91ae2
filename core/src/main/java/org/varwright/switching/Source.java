package org.varwright.switching;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SystemGrounding;

/**
 * The system behind the bus: a sinusoidal voltage behind resistance and inductance, the same in the zero sequence (SWI-4).
 *
 * @param lineVolts line to line, highest sustained where the file gives it, else nominal [V rms]
 * @param behind what stands between it and the bus; empty where the file gives no short-circuit level
 * @param radiansPerSecond angular frequency
 * @param gaps what the file doesn't say
 */
record Source(double lineVolts, Optional<Behind> behind, double radiansPerSecond, List<Gap> gaps) {
    Source {
        gaps = List.copyOf(gaps);
    }

    /**
     * Impedance of one phase.
     *
     * @param ohms resistance [Ω]
     * @param henries inductance [H]
     * @param amperes short-circuit current at {@code lineVolts} [A rms]
     */
    record Behind(double ohms, double henries, double amperes) {}

    static Source of(SupplySystem system) {
        List<Gap> gaps = new ArrayList<>();
        double volts = Math.max(system.nominalVolts(), system.maximumVolts().orElse(0.0));
        if (system.maximumVolts().isEmpty()) {
            gaps.add(Gap.of(
                    "system",
                    "highest sustained voltage (maximum-voltage)",
                    "the nominal voltage is taken; every current and voltage here grows in proportion"));
        }
        double omega = system.angularFrequency();
        Optional<Behind> behind = Optional.empty();
        if (system.shortCircuitVoltAmperes().isPresent()) {
            // The level is given at nominal voltage; the impedance doesn't change with the voltage.
            double z = system.nominalVolts()
                    * system.nominalVolts()
                    / system.shortCircuitVoltAmperes().getAsDouble();
            double r = 0.0;
            double x = z;
            if (system.xOverR().isPresent()) {
                double ratio = system.xOverR().getAsDouble();
                r = z / Math.hypot(1.0, ratio);
                x = r * ratio;
            } else {
                gaps.add(Gap.of(
                        "system",
                        "ratio of reactance to resistance (x-over-r)",
                        "the source damps nothing here: I²t and later peaks come out too high as a rule"));
            }
            behind = Optional.of(new Behind(r, x / omega, volts / Math.sqrt(3.0) / z));
        } else {
            gaps.add(Gap.of(
                    "system",
                    "short-circuit level (short-circuit)",
                    "closing with no other on is not answered, and nothing is simulated: only the formula for those that feed"
                            + " each other holds without it"));
        }
        if (system.grounding() != SystemGrounding.SOLID) {
            gaps.add(
                    Gap.of(
                            "system",
                            "impedance of its neutral",
                            "the source's neutral is taken as tied down: while a fault shifts it, voltages reach 1.73 times as much"));
        }
        return new Source(volts, behind, omega, gaps);
    }

    /** Peak of the voltage to neutral [V]. */
    double peakVolts() {
        return Math.sqrt(2.0 / 3.0) * lineVolts;
    }

    double hertz() {
        return radiansPerSecond / (2.0 * Math.PI);
    }
}
