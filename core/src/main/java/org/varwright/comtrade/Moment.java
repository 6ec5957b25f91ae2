package org.varwright.comtrade;

import java.util.Optional;

/**
 * A date with time as written, and what it means.
 *
 * @param written as in the record
 * @param instant what it means; empty where it can't be read
 */
public record Moment(String written, Optional<Instant> instant) {
    public static final Moment UNKNOWN = new Moment("", Optional.empty());

    /** In ISO 8601, or as written where it can't be read. */
    public String print() {
        return instant.map(Instant::print).orElse(written);
    }
}
