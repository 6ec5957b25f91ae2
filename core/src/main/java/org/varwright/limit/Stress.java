package org.varwright.limit;

import java.util.List;

/**
 * What a unit bears, each as a multiple of its own rated value.
 *
 * @param voltage rms voltage
 * @param crest highest crest that any phase angles of the harmonics can make, as a multiple of √2 times rated voltage
 * @param current rms current
 * @param reactivePower sum over the orders
 */
public record Stress(double voltage, double crest, double current, double reactivePower) {
    /**
     * Voltage of one order across the unit.
     *
     * @param order multiple of the system's frequency, 1 for the fundamental
     * @param perRated rms voltage over rated voltage
     */
    public record Component(double order, double perRated) {}

    /**
     * Stress of a unit by the voltages of all orders across it.
     *
     * <p><b>Model.</b> {@code V = √ΣV_h²}, crest {@code ΣV_h}, {@code I = √Σ(h·c·V_h)²}, {@code Q = Σh·c·V_h²}, {@code c = C/C_rated·f/f_rated} (DUT-1).
     * <p><b>Not modelled.</b> Phase angles: the crest is the arithmetic sum, which no angles exceed. Losses.
     * <p><b>Source.</b> First principles.
     *
     * @param components fundamental and harmonics
     * @param susceptanceRatio {@code c}: susceptance at the system's frequency over that at rated capacitance and frequency, above 0
     */
    public static Stress of(List<Component> components, double susceptanceRatio) {
        double squares = 0.0;
        double crest = 0.0;
        double currents = 0.0;
        double vars = 0.0;
        for (Component c : components) {
            double v = c.perRated();
            squares += v * v;
            crest += v;
            currents += c.order() * susceptanceRatio * v * c.order() * susceptanceRatio * v;
            vars += c.order() * susceptanceRatio * v * v;
        }
        return new Stress(Math.sqrt(squares), crest, Math.sqrt(currents), vars);
    }
}
