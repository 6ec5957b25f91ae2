package org.varwright.comtrade;

/**
 * How the numbers in the data become values: {@code multiplier·x + offset}, in the channel's unit (C37.111, analog channel information: a and b).
 *
 * @param multiplier a
 * @param offset b
 * @param least declared least number in the data; NaN where missing
 * @param largest declared largest number in the data; NaN where missing
 */
public record Scale(double multiplier, double offset, double least, double largest) {
    public static Scale of(double multiplier, double offset) {
        return new Scale(multiplier, offset, Double.NaN, Double.NaN);
    }

    public double value(double number) {
        return multiplier * number + offset;
    }
}
