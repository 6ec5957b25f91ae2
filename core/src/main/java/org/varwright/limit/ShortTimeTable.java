package org.varwright.limit;

import java.util.List;
import org.varwright.bank.Standard;
import org.varwright.basis.Source;

/**
 * How long a power-frequency voltage above the continuous limit is borne.
 *
 * <p>Between two rows the stricter one counts: a voltage is allowed as long as the next higher one in the table.
 *
 * @param rows by falling voltage
 * @param continuous multiple of rated voltage that is allowed for good
 * @param source of the rows
 */
public record ShortTimeTable(List<Row> rows, double continuous, Source source) {
    public ShortTimeTable {
        rows = List.copyOf(rows);
    }

    /**
     * One row.
     *
     * @param seconds longest time [s]
     * @param multiple rms voltage over rated voltage
     * @param label as the standard writes the time
     */
    public record Row(double seconds, double multiple, String label) {}

    /** How long a voltage is borne. */
    public sealed interface Allowance {
        /** Without end. */
        record ForGood() implements Allowance {}

        /** At most so long each time [s]. */
        record AtMost(double seconds) implements Allowance {}

        /** Not at all: above every row. */
        record Never() implements Allowance {}
    }

    /**
     * The table of a standard.
     *
     * @param standard IEEE Std 1036 or IEC 60871-1
     * @param frequencyHertz at which the cycles of IEEE Std 1036 are counted, above 0
     */
    public static ShortTimeTable of(Standard standard, double frequencyHertz) {
        return switch (standard) {
            // IEEE Std 1036: maximum permissible power-frequency overvoltage.
            case IEEE ->
                new ShortTimeTable(
                        List.of(
                                new Row(6.0 / frequencyHertz, 2.20, "6 cycles"),
                                new Row(15.0 / frequencyHertz, 2.00, "15 cycles"),
                                new Row(1.0, 1.70, "1 s"),
                                new Row(15.0, 1.40, "15 s"),
                                new Row(60.0, 1.30, "1 min"),
                                new Row(1800.0, 1.25, "30 min")),
                        1.10,
                        Source.published("IEEE Std 1036, short-time power-frequency overvoltage"));
            // IEC 60871-1: admissible voltage levels in service.
            case IEC ->
                new ShortTimeTable(
                        List.of(
                                new Row(60.0, 1.30, "1 min"),
                                new Row(300.0, 1.20, "5 min"),
                                new Row(1800.0, 1.15, "30 min")),
                        1.10,
                        Source.published("IEC 60871-1, admissible voltage levels"));
        };
    }

    /** How long a multiple of rated voltage is borne; at a row's value, to rounding, the row counts. */
    public Allowance allowed(double multiple) {
        if (multiple <= continuous * (1.0 + 1e-9)) {
            return new Allowance.ForGood();
        }
        for (Row row : rows.reversed()) {
            if (multiple <= row.multiple() * (1.0 + 1e-9)) {
                return new Allowance.AtMost(row.seconds());
            }
        }
        return new Allowance.Never();
    }

    /** Whether a multiple of rated voltage is borne for a time [s]. */
    public boolean within(double multiple, double seconds) {
        return switch (allowed(multiple)) {
            case Allowance.ForGood good -> true;
            case Allowance.AtMost(double most) -> seconds <= most * (1.0 + 1e-9);
            case Allowance.Never never -> false;
        };
    }

    /** Highest multiple of rated voltage that is borne for a time [s]. */
    public double highest(double seconds) {
        for (Row row : rows) {
            if (seconds <= row.seconds() * (1.0 + 1e-9)) {
                return row.multiple();
            }
        }
        return continuous;
    }
}
