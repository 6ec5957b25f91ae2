package org.varwright.duty;

import org.varwright.quantity.Complex;
import org.varwright.resonance.SourceImpedance;

/**
 * How much a stage lifts the voltage of the bus.
 *
 * @param name of the stage, or of what is switched
 * @param vars that it gives at nominal voltage [var]
 * @param byRule {@code Q/S_sc}
 * @param exact with the source's resistance and the square of the voltage counted
 */
public record VoltageRise(String name, double vars, double byRule, double exact) {
    /**
     * The rise that reactive power makes behind a source.
     *
     * <p><b>Model.</b> {@code ΔV/V = Q/S_sc} by rule; exact {@code 1/|1 + Z·jQ/V²| − 1}, {@code Z} of the source (DUT-7).
     * <p><b>Not modelled.</b> Load, tap changers and regulators, which answer within a minute.
     * <p><b>Accuracy.</b> Exact for a constant source; the rule is low by about the rise itself, squared.
     * <p><b>Source.</b> First principles.
     *
     * @param name for messages
     * @param vars at nominal voltage [var]
     * @param source impedance at the bus
     * @param nominalVolts line to line [V]
     */
    public static VoltageRise of(String name, double vars, SourceImpedance source, double nominalVolts) {
        Complex z = new Complex(source.resistanceOhms(), source.reactanceOhms());
        double square = nominalVolts * nominalVolts;
        Complex divider = Complex.ONE.plus(z.times(new Complex(0.0, vars / square)));
        return new VoltageRise(name, vars, vars * z.magnitude() / square, 1.0 / divider.magnitude() - 1.0);
    }
}
