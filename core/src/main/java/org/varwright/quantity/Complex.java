package org.varwright.quantity;

/**
 * An immutable complex number, for phasors and impedances.
 *
 * @param re real part
 * @param im imaginary part
 */
public record Complex(double re, double im) {
    public static final Complex ZERO = new Complex(0.0, 0.0);
    public static final Complex ONE = new Complex(1.0, 0.0);
    public static final Complex J = new Complex(0.0, 1.0);

    /** The number with this magnitude and angle in degrees. */
    public static Complex polar(double magnitude, double degrees) {
        double radians = Math.toRadians(degrees);
        return new Complex(magnitude * Math.cos(radians), magnitude * Math.sin(radians));
    }

    public Complex plus(Complex other) {
        return new Complex(re + other.re, im + other.im);
    }

    public Complex minus(Complex other) {
        return new Complex(re - other.re, im - other.im);
    }

    public Complex times(Complex other) {
        return new Complex(re * other.re - im * other.im, re * other.im + im * other.re);
    }

    public Complex times(double factor) {
        return new Complex(re * factor, im * factor);
    }

    /** Quotient by Smith's method, which does not overflow for large parts. */
    public Complex dividedBy(Complex other) {
        if (Math.abs(other.re) >= Math.abs(other.im)) {
            double ratio = other.im / other.re;
            double denominator = other.re + other.im * ratio;
            return new Complex((re + im * ratio) / denominator, (im - re * ratio) / denominator);
        }
        double ratio = other.re / other.im;
        double denominator = other.re * ratio + other.im;
        return new Complex((re * ratio + im) / denominator, (im * ratio - re) / denominator);
    }

    public Complex negated() {
        return new Complex(-re, -im);
    }

    public Complex conjugate() {
        return new Complex(re, -im);
    }

    public double magnitude() {
        return Math.hypot(re, im);
    }

    /** Angle in degrees, −180 to 180; 0 for zero. */
    public double degrees() {
        return re == 0.0 && im == 0.0 ? 0.0 : Math.toDegrees(Math.atan2(im, re));
    }

    public boolean isFinite() {
        return Double.isFinite(re) && Double.isFinite(im);
    }
}
