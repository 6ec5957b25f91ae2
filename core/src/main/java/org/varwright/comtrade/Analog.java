package org.varwright.comtrade;

/**
 * One analog channel.
 *
 * @param number its place among the analog channels, from 1
 * @param name as in the record
 * @param phase as in the record; empty where it says nothing
 * @param component circuit component, as in the record; empty where it says nothing
 * @param unit as in the record
 * @param scale how its numbers became values
 * @param ratio of its instrument transformer, with the side of the values
 * @param skewSeconds so much later than its sample's time it was converted [s]
 * @param values in {@code unit} at the side of {@code ratio}, NaN where missing
 */
public record Analog(
        int number,
        String name,
        String phase,
        String component,
        String unit,
        Scale scale,
        Ratio ratio,
        double skewSeconds,
        Samples values) {
    public Measure measure() {
        return Measure.of(unit);
    }

    /** Times so many a value becomes volts or amperes at its own side; NaN where it is neither. */
    public double toSi() {
        return Measure.factor(unit);
    }

    /** Times so many a value becomes volts or amperes at the primary side; NaN where side, ratio or unit are not known. */
    public double toPrimarySi() {
        return toSi() * ratio.toPrimary();
    }

    /** The name, or its number where it has none. */
    public String title() {
        return name.isBlank() ? "analog channel " + number : name.strip();
    }
}
