package org.varwright.fuse;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.basis.Verdict;
import org.varwright.limit.ShortTimeTable;

/**
 * How long the units that are left bear their voltage while a shorted unit hangs on its fuse (FUS-13).
 *
 * @param perRated highest voltage on a unit in service over rated
 * @param strictSeconds by the table's next higher row; infinite where it is borne for good [s]
 * @param betweenSeconds by log-log interpolation between the rows; as the strict one where no interpolation is possible [s]
 */
record Overvoltage(double perRated, double strictSeconds, double betweenSeconds) {
    /** Empty where the table has no row so high. */
    static Optional<Overvoltage> of(ShortTimeTable table, double perRated) {
        return switch (table.allowed(perRated)) {
            case ShortTimeTable.Allowance.ForGood good ->
                Optional.of(new Overvoltage(perRated, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY));
            case ShortTimeTable.Allowance.AtMost(double most) ->
                Optional.of(new Overvoltage(
                        perRated, most, between(table.rows(), perRated).orElse(most)));
            case ShortTimeTable.Allowance.Never never -> Optional.empty();
        };
    }

    /** PASS by the stricter row, WARN between two rows, FAIL beyond. */
    Verdict judge(double seconds) {
        if (seconds <= strictSeconds * (1.0 + 1e-9)) {
            return Verdict.PASS;
        }
        return seconds <= betweenSeconds * (1.0 + 1e-9) ? Verdict.WARN : Verdict.FAIL;
    }

    private static OptionalDouble between(List<ShortTimeTable.Row> rows, double perRated) {
        for (int r = 1; r < rows.size(); r++) {
            ShortTimeTable.Row high = rows.get(r - 1);
            ShortTimeTable.Row low = rows.get(r);
            if (perRated <= high.multiple() && perRated > low.multiple()) {
                double part = Math.log(high.multiple() / perRated) / Math.log(high.multiple() / low.multiple());
                return OptionalDouble.of(high.seconds() * Math.pow(low.seconds() / high.seconds(), part));
            }
        }
        return OptionalDouble.empty();
    }
}
