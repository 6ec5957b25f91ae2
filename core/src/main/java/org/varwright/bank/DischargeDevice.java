package org.varwright.bank;

/** The resistor inside a unit, as the nameplate gives it. */
public sealed interface DischargeDevice {
    /** A resistance across the unit's terminals [Ω]. */
    record Resistor(double ohms) implements DischargeDevice {}

    /** From the peak of rated voltage down to {@code volts} within {@code seconds}. */
    record Rated(double volts, double seconds) implements DischargeDevice {}
}
