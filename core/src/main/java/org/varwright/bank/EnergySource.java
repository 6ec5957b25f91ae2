package org.varwright.bank;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Something that makes a conductor live.
 *
 * @param name unique among sources
 * @param at conductor
 * @param volts [V]; empty means the system's voltage
 * @param note free text
 */
public record EnergySource(String name, String at, OptionalDouble volts, Optional<String> note) {
    /** Below 1 kV: raises only {@code exposed-low-voltage} and charges no stage. */
    public boolean isLowVoltage() {
        return volts.isPresent() && volts.getAsDouble() < 1000.0;
    }
}
