package org.varwright.unbalance;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.varwright.bank.Protection;

/**
 * Of the failures over the continuous limit that a sensor is not set for, the one that it shows least of (UNB-8): sections shorted behind a fuse that has
 * not operated, say.
 *
 * @param row the failure
 * @param signal largest change that it makes at any place of the sensor [V] or [A]
 */
record FaintFailure(FailureRow row, double signal) {
    /** Empty where no failure of another kind passes the limit. */
    static Optional<FaintFailure> of(Protection protection, List<FailureRow> rows, String kind) {
        return rows.stream()
                .filter(r -> r.verdict() == RunVerdict.TAKE_OUT
                        && r.effect().isPresent()
                        && !r.kind().equals(kind))
                .map(r -> new FaintFailure(
                        r, SettingsStudy.signal(protection, r.effect().orElseThrow())))
                .min(Comparator.comparingDouble(FaintFailure::signal));
    }

    /** Such as {@code sections-shorted, 1 in one unit}. */
    String name() {
        return row.kind() + ", " + row.count() + (row.kind().equals("unit-out") ? "" : " in one unit");
    }

    /** How far it is over the limit, such as {@code 1.26 of rated}. */
    String stress() {
        return String.format(
                Locale.ROOT, "%.2f of rated", row.effect().orElseThrow().highestPerRated());
    }
}
