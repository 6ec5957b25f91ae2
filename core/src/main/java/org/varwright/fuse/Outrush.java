package org.varwright.fuse;

import java.util.OptionalDouble;

/**
 * What flows out of the neighbours when a unit shorts (FUS-9).
 *
 * <pre>
 *      ┌──R─L──┬── …  n neighbours, each ½CV²
 *      │  R  R      every branch: fuse and leads, R and L
 *      │  L  L
 *      C  C  short
 *      └──┴──┴──
 * </pre>
 *
 * <p><b>Model.</b> {@code n} equal branches at {@code V} discharge through their own R, L and that of the shorted unit: one series circuit with {@code nC},
 * {@code R(1 + 1/n)}, {@code L(1 + 1/n)}. All of {@code n·½CV²} ends in the resistances, so
 * {@code ∫i²dt = n·½CV²/(R(1 + 1/n))} in the shorted unit's fuse and {@code 1/n²} of that in each neighbour's, whatever the inductance.
 * <p><b>Not modelled.</b> The fuse's resistance rising as it heats, its arc, the current of the supply, resistance of the short: all of them lower the I²t.
 * <p><b>Source.</b> First principles.
 *
 * @param neighbours units that discharge into the shorted one
 * @param joules what they hold together [J]
 * @param failedAmpereSquaredSeconds I²t through the fuse of the shorted unit; empty where the resistance isn't known [A²s]
 * @param neighbourAmpereSquaredSeconds I²t through the fuse of each neighbour [A²s]
 * @param peakAmperes peak through the fuse of the shorted unit; empty where R or L isn't known [A]
 * @param hertz ringing frequency; empty where R or L isn't known or nothing rings [Hz]
 */
public record Outrush(
        int neighbours,
        double joules,
        OptionalDouble failedAmpereSquaredSeconds,
        OptionalDouble neighbourAmpereSquaredSeconds,
        OptionalDouble peakAmperes,
        OptionalDouble hertz) {
    /**
     * The outrush of equal neighbours.
     *
     * @param neighbours 0 or more
     * @param farads of each [F], above 0
     * @param volts on each at the instant of the short, a peak value [V]
     * @param ohms of one branch: fuse and leads [Ω], above 0 where given
     * @param henries of one branch [H], above 0 where given
     */
    static Outrush compute(int neighbours, double farads, double volts, OptionalDouble ohms, OptionalDouble henries) {
        double joules = neighbours * 0.5 * farads * volts * volts;
        if (neighbours == 0 || ohms.isEmpty()) {
            OptionalDouble nothing = neighbours == 0 ? OptionalDouble.of(0.0) : OptionalDouble.empty();
            return new Outrush(neighbours, joules, nothing, nothing, nothing, OptionalDouble.empty());
        }
        double n = neighbours;
        double r = ohms.getAsDouble() * (1.0 + 1.0 / n);
        double failed = joules / r;
        OptionalDouble peak = OptionalDouble.empty();
        OptionalDouble hertz = OptionalDouble.empty();
        if (henries.isPresent()) {
            double l = henries.getAsDouble() * (1.0 + 1.0 / n);
            double decay = r / (2.0 * l);
            double square = 1.0 / (l * n * farads) - decay * decay;
            peak = OptionalDouble.of(peak(volts, l, decay, square));
            hertz = square > 0.0 ? OptionalDouble.of(Math.sqrt(square) / (2.0 * Math.PI)) : OptionalDouble.empty();
        }
        return new Outrush(
                neighbours, joules, OptionalDouble.of(failed), OptionalDouble.of(failed / (n * n)), peak, hertz);
    }

    /** Peak of {@code V/L·t·e^(−at)·f(bt)} with {@code square = ±b²}. */
    private static double peak(double volts, double henries, double decay, double square) {
        double b = Math.sqrt(Math.abs(square));
        if (b < 1e-6 * decay) {
            return volts / henries / (decay * Math.E);
        }
        if (square > 0.0) {
            double t = Math.atan2(b, decay) / b;
            return volts / (henries * b) * Math.exp(-decay * t) * Math.sin(b * t);
        }
        double t = 0.5 * Math.log((decay + b) / (decay - b)) / b;
        return volts / (henries * b) * Math.exp(-decay * t) * Math.sinh(b * t);
    }
}
