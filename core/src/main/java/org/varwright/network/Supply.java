package org.varwright.network;

import java.util.List;
import org.varwright.bank.SupplySystem;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Complex;
import org.varwright.quantity.Dimension;

/** The three voltages to ground that feed the bank. Phase sequence A-B-C. */
public sealed interface Supply {
    /**
     * Equal voltages 120° apart behind no impedance.
     *
     * @param lineVolts line to line [V], above 0
     */
    record Balanced(double lineVolts) implements Supply {}

    /**
     * Phasors to ground as measured, behind no impedance [V].
     *
     * @param a phase A
     * @param b phase B
     * @param c phase C
     */
    record Measured(Complex a, Complex b, Complex c) implements Supply {}

    /**
     * Equal voltages 120° apart behind an impedance {@code Z = V²/S} with {@code X/R} as given, the same in the zero sequence.
     *
     * @param lineVolts line to line [V], above 0
     * @param shortCircuitVoltAmperes three-phase short-circuit level [VA], above 0
     * @param xOverR reactance over resistance, above 0
     */
    record Thevenin(double lineVolts, double shortCircuitVoltAmperes, double xOverR) implements Supply {}

    /** The nominal voltage of the system, balanced, behind no impedance. */
    static Supply nominal(SupplySystem system) {
        return new Balanced(system.nominalVolts());
    }

    /**
     * Three line-to-line voltages (magnitudes) as phasors to ground without a zero sequence (NET-2).
     *
     * <p><b>Model.</b> The three magnitudes close a triangle; ground is taken to stand at its centroid; phase A is turned to 0°.
     * <p><b>Not modelled.</b> A shift of the system's neutral against ground: line-to-line voltages don't show it.
     * <p><b>Source.</b> First principles (law of cosines).
     *
     * @param ab line A to B [V], above 0
     * @param bc line B to C [V], above 0
     * @param ca line C to A [V], above 0
     * @throws VarwrightException {@code SUPPLY_TRIANGLE} where no triangle has such sides
     */
    static Supply ofLineVolts(double ab, double bc, double ca) {
        double cosine = (ab * ab + ca * ca - bc * bc) / (2.0 * ab * ca);
        if (!(ab > 0.0 && bc > 0.0 && ca > 0.0) || !(Math.abs(cosine) < 1.0)) {
            throw new VarwrightException(
                    Message.SUPPLY_TRIANGLE,
                    Place.NOWHERE,
                    Dimension.VOLTAGE.format(ab),
                    Dimension.VOLTAGE.format(bc),
                    Dimension.VOLTAGE.format(ca));
        }
        // A at the origin, B on the negative real axis, C above it: V_AB = ab, then turned so that A stands at 0
        // degrees.
        Complex b = new Complex(-ab, 0.0);
        Complex c = new Complex(-ca * cosine, ca * Math.sqrt(1.0 - cosine * cosine));
        Complex centre = b.plus(c).times(1.0 / 3.0);
        Complex a = centre.negated();
        Complex turn = new Complex(a.re(), -a.im()).times(1.0 / a.magnitude());
        return new Measured(
                a.times(turn), b.minus(centre).times(turn), c.minus(centre).times(turn));
    }

    /** Voltages to ground behind the impedance, phases A, B, C [V]. */
    default List<Complex> phaseVolts() {
        return switch (this) {
            case Balanced s -> balanced(s.lineVolts());
            case Measured s -> List.of(s.a(), s.b(), s.c());
            case Thevenin s -> balanced(s.lineVolts());
        };
    }

    /** Impedance behind each phase [Ω]; zero for the stiff kinds. */
    default Complex ohms() {
        return switch (this) {
            case Balanced s -> Complex.ZERO;
            case Measured s -> Complex.ZERO;
            case Thevenin s -> {
                double z = s.lineVolts() * s.lineVolts() / s.shortCircuitVoltAmperes();
                double r = z / Math.sqrt(1.0 + s.xOverR() * s.xOverR());
                yield new Complex(r, r * s.xOverR());
            }
        };
    }

    private static List<Complex> balanced(double lineVolts) {
        double v = lineVolts / Math.sqrt(3.0);
        double half = 0.5 * v;
        double height = 0.5 * lineVolts;
        return List.of(new Complex(v, 0.0), new Complex(-half, -height), new Complex(-half, height));
    }
}
