package org.varwright.comtrade;

/**
 * Ratio of the instrument transformer in front of a channel, and the side to which the channel's values belong.
 *
 * @param side as the record says
 * @param primary as written, in the unit that the recorder's maker chose; NaN where missing
 * @param secondary as written; NaN where missing
 */
public record Ratio(Side side, double primary, double secondary) {
    /** Side of an instrument transformer. */
    public enum Side {
        PRIMARY,
        SECONDARY,
        /** The record doesn't say; 1991 has no place for it. */
        UNKNOWN
    }

    public static final Ratio UNKNOWN = new Ratio(Side.UNKNOWN, Double.NaN, Double.NaN);

    /** Times so many a value becomes one of the primary side; NaN where the record doesn't say. */
    public double toPrimary() {
        return switch (side) {
            case PRIMARY -> 1.0;
            case SECONDARY -> quotient();
            case UNKNOWN -> Double.NaN;
        };
    }

    /** Times so many a value becomes one of the secondary side; NaN where the record doesn't say. */
    public double toSecondary() {
        return switch (side) {
            case PRIMARY -> 1.0 / quotient();
            case SECONDARY -> 1.0;
            case UNKNOWN -> Double.NaN;
        };
    }

    /** Whether it is written as 1 to 1, as recorders do whose real ratio nobody entered. */
    public boolean isOneToOne() {
        return primary == 1.0 && secondary == 1.0;
    }

    private double quotient() {
        return primary > 0.0 && secondary > 0.0 && primary / secondary <= Double.MAX_VALUE
                ? primary / secondary
                : Double.NaN;
    }
}
